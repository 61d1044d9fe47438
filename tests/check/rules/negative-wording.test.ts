import { negativeWording } from '../../../lib/check/rules/negative-wording.ts';
import { testRule } from '../../kit/rule-tester.ts';

const step = (value: string, before = '') => ({
  steps: [
    {
      cue: 'then',
      who: 'PM',
      verb: 'select',
      object: 'flap lever',
      value,
      before: before === '' ? [] : [{ kind: 'warning' as const, text: before }],
    } as const,
  ],
});

testRule(negativeWording, {
  valid: [
    step('F18'),
    { why: 'a limit', procedure: step('F26, do not exceed 178 kt') },
    { why: 'a warning', procedure: step('F26', 'Never select F35 above its limit.') },
    { why: 'part of another word', procedure: step('unavoidable drag first') },
  ],
  invalid: [
    {
      procedure: step('F18 unless the speed is too high'),
      findings: [{ at: 's1 value', message: 'negative', says: 'unless', witness: { quote: 'unless' } }],
    },
    {
      procedure: step('do not select F35'),
      findings: [{ at: 's1 value', message: 'negative', witness: { quote: 'do not' } }],
    },
    {
      procedure: step('do not select F18 unless below 190 kt'),
      findings: [{ at: 's1 value', message: 'negative', witness: { quote: 'do not' } }],
    },
  ],
});
