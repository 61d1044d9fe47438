import { shallShouldDrift } from '../../../lib/check/rules/shall-should-drift.ts';
import { testRule } from '../../kit/rule-tester.ts';

const step = (value: string, note = '') => ({
  steps: [{ cue: 'then', who: 'PF', verb: 'monitor', object: 'speed', value, note } as const],
});

testRule(shallShouldDrift, {
  valid: [
    step('maximum 245 kt'),
    { why: 'no limit', procedure: step('', 'the flap should be there by now') },
    { why: 'a possibility', procedure: step('', 'the gear may come out up to 245 kt, at most') },
    { why: 'the limit stands in another sentence', procedure: step('', 'PM should look. Maximum 245 kt.') },
  ],
  invalid: [
    {
      procedure: step('should not exceed 245 kt'),
      findings: [{ at: 's1 value', message: 'weak', says: '245 kt', witness: { quote: 'should' } }],
    },
    {
      procedure: step('', 'Speed may not be above 245 kt.'),
      findings: [{ at: 's1 note', message: 'weak', witness: { quote: 'may' } }],
    },
    {
      procedure: {
        steps: [{ cue: 'then', before: [{ kind: 'warning', text: 'Bank should be less than 15°, at most 20°.' }] }],
      },
      findings: [{ at: 's1 before.0', message: 'weak', says: '15°', witness: { quote: 'should' } }],
    },
  ],
});
