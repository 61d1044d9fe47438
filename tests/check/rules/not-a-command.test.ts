import { notACommand } from '../../../lib/check/rules/not-a-command.ts';
import { testRule } from '../../kit/rule-tester.ts';

const step = (object: string, value = '') => ({
  steps: [{ cue: 'then', who: 'PM', verb: 'select', object, value } as const],
});

testRule(notACommand, {
  valid: [
    step('flap lever', 'F6'),
    step('route page', 'what is left of the route'),
    step('mode line', '"flaps are set", as called'),
    { steps: [{ cue: 'then', note: 'the flaps are retracted by PM' }] },
  ],
  invalid: [
    {
      procedure: step('the flaps should be retracted'),
      findings: [
        { at: 's1 object', message: 'passive', says: 'should be retracted', witness: { quote: 'should be retracted' } },
      ],
    },
    {
      procedure: step('gear lever', 'gear is raised'),
      findings: [{ at: 's1 value', message: 'passive', witness: { quote: 'is raised' } }],
    },
    {
      procedure: { steps: [{ cue: 'then', who: 'PM', object: 'flap lever' }] },
      findings: [
        { at: 's1 verb', message: 'no-verb', says: 'what PM does', witness: { kind: 'absent', field: 'verb' } },
      ],
    },
  ],
});
