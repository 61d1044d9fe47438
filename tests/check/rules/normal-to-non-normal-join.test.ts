import { normalToNonNormalJoin } from '../../../lib/check/rules/normal-to-non-normal-join.ts';
import { testRule } from '../../kit/rule-tester.ts';

const steps = [{ cue: 'event "flap jammed"', who: 'PM', verb: 'check', object: 'flap indication' }] as const;
const list = { class: 'non-normal', title: 'Flap jammed', phases: ['approach'], steps } as const;
const never = { thrust: ['LATCHED'], vertical: ['LEVEL'] };

testRule(normalToNonNormalJoin, {
  valid: [
    { ...list, exit: { also: 'Landing detent: as jammed, VREF per table.' } },
    { ...list, title: 'Unreliable speed' },
    { ...list, class: 'normal' },
    { ...list, steps: [{ ...steps[0], note: 'The flap item of the landing checklist is deferred.' }] },
  ],
  invalid: [
    { procedure: list, findings: [{ at: ' exit.also', message: 'deferred', witness: { quote: 'Flap jammed' } }] },
    {
      procedure: { ...list, title: 'Generator failed' },
      findings: [{ at: ' exit.also', message: 'deferred', says: 'failed', witness: {} }],
    },
    {
      why: 'an entry that the machine does not have',
      procedure: { ...list, title: 'Unreliable speed', entry: never },
      findings: [
        { at: ' entry.vertical', message: 'entry', says: 'standard A', witness: { kind: 'absent' } },
        { at: ' entry.vertical', message: 'entry', says: 'standard B', witness: { kind: 'absent' } },
      ],
    },
  ],
});
