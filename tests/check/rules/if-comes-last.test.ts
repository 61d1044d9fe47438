import { ifComesLast } from '../../../lib/check/rules/if-comes-last.ts';
import { testRule } from '../../kit/rule-tester.ts';

const move = (value: string, object = 'fuel lever') => ({
  steps: [{ cue: 'then', who: 'PM', verb: 'move', object, value } as const],
});

testRule(ifComesLast, {
  valid: [
    move('OFF'),
    move('below FL 100: if icing is left, OFF'),
    {
      why: 'a decision is about its own condition',
      procedure: {
        steps: [{ cue: 'then', who: 'PF', verb: 'decide', object: 'side', value: 'upwind side if there is a choice' }],
      },
    },
    {
      why: 'the condition is in its place',
      procedure: {
        steps: [
          { cue: 'then', only: 'if the fire persists', who: 'PM', verb: 'move', object: 'fuel lever', value: 'OFF' },
        ],
      },
    },
  ],
  invalid: [
    {
      procedure: move('OFF if fire persists'),
      findings: [{ at: 's1 value', message: 'last', says: 'if fire persists', witness: { quote: 'if fire persists' } }],
    },
    {
      procedure: move('OFF unless the list says otherwise'),
      findings: [{ at: 's1 value', message: 'last', witness: { field: 'value' } }],
    },
    {
      procedure: move('', 'engine in case of fire'),
      findings: [{ at: 's1 object', message: 'last', witness: { quote: 'in case of fire' } }],
    },
  ],
});
