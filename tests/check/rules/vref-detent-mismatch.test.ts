import { vrefDetentMismatch } from '../../../lib/check/rules/vref-detent-mismatch.ts';
import type { StepParts } from '../../../lib/procedure/build.ts';
import { item, withLists } from '../../kit/lists.ts';
import { testRule } from '../../kit/rule-tester.ts';

const flap = (value: string): StepParts => ({ cue: 'then', who: 'PM', verb: 'select', object: 'flap lever', value });
const brief = (say: string): StepParts => ({ cue: 'then', who: 'PF', verb: 'brief', object: 'approach', say });
const set = (value: string): StepParts => ({ cue: 'then', who: 'PF', verb: 'set', object: 'speed selector', value });
const list: StepParts = { cue: 'then', who: 'PM', verb: 'read', object: 'landing checklist' };
const approach = (...steps: readonly StepParts[]) => ({ phases: ['approach', 'landing'] as const, steps });

testRule(vrefDetentMismatch, {
  valid: [
    approach(brief('flap thirty-five, one three five'), flap('F26'), flap('F35'), set('VREF F35 + 5 kt'), list),
    {
      why: 'two landing detents: either is briefed',
      procedure: approach(brief('flap twenty-six'), flap('F26'), flap('F35')),
    },
    { why: 'no landing detent is selected', procedure: approach(brief('flap thirty-five'), flap('F12')) },
    approach(flap('F35'), { ...set('VAPP'), value: 'VAPP' }),
  ],
  invalid: [
    {
      why: 'briefed for another flap',
      procedure: approach(brief('flap twenty-six, one four one'), flap('F35')),
      findings: [{ at: 's1 say', message: 'mismatch', says: 'F26', witness: { first: 'F26', second: 'F35' } }],
    },
    {
      why: 'the speed of another flap',
      procedure: approach(flap('F35'), set('VREF F26 + 5 kt')),
      findings: [{ at: 's2 value', message: 'mismatch', witness: { first: 'F26' } }],
    },
    {
      why: 'the list compares nothing',
      procedure: approach(flap('F35'), list),
      facts: withLists({ title: 'Landing', items: [item('Gear', 'down'), item('Flaps', 'set')] }),
      findings: [{ at: 's2 object', message: 'no-compare', says: 'Landing', witness: { first: 'Flaps: set' } }],
    },
    {
      why: 'the list knows one flap',
      procedure: approach(flap('F35'), list),
      facts: withLists({ title: 'Landing', items: [item('Flaps', 'twenty-six, indicating twenty-six')] }),
      findings: [{ at: 's2 object', message: 'list', witness: { first: 'F26', second: 'F35' } }],
    },
  ],
});
