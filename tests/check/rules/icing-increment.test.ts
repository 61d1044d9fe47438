import { icingIncrement } from '../../../lib/check/rules/icing-increment.ts';
import { testRule } from '../../kit/rule-tester.ts';

const ice = (value: string, object = 'wing ice protection') =>
  ({ label: 'A-01', cue: 'judged "icing"', who: 'PM', verb: 'set', object, value }) as const;
const speed = (value: string, more: object = {}) =>
  ({ cue: 'then', who: 'PF', verb: 'set', object: 'speed selector', value, ...more }) as const;
const approach = { phases: ['approach'] as const, entry: { flaps: ['F18'] } };

testRule(icingIncrement, {
  valid: [
    { ...approach, steps: [ice('on'), speed('VREF F35 icing + 5 kt')] },
    { why: 'nothing is switched', procedure: { ...approach, steps: [speed('VREF F35 + 5 kt')] } },
    { why: 'switched off again', procedure: { ...approach, steps: [ice('on'), ice('off'), speed('VMM F18')] } },
    {
      why: 'the engine keeps its own ice, not the wing',
      procedure: { ...approach, steps: [ice('on', 'engine ice protection'), speed('VMM F18')] },
    },
    {
      why: 'V2 has no increment in the sheet',
      procedure: { ...approach, steps: [ice('on'), speed('V2 F18 + 15 kt')] },
    },
    { why: 'a figure has its increment in it', procedure: { ...approach, steps: [ice('on'), speed('180 kt')] } },
  ],
  invalid: [
    {
      procedure: { ...approach, steps: [ice('on'), speed('VREF F35 + 5 kt')] },
      findings: [
        {
          at: 's2 value',
          message: 'without',
          says: 'A-01 switched it on: 6 kt too slow',
          witness: { quote: 'VREF F35' },
          fix: 'VREF F35 icing + 5 kt',
        },
      ],
    },
    {
      why: 'in a cue, and in a branch of the same line',
      procedure: {
        ...approach,
        steps: [ice('on', 'icing increment switch'), speed('200 kt', { cue: 'speed >= VMM F18' })],
      },
      findings: [{ at: 's2 cue', message: 'without', witness: { quote: 'VMM F18' }, fix: 'speed >= VMM F18 icing' }],
    },
    {
      why: 'a step that is for icing only',
      procedure: { ...approach, steps: [speed('VMM F18 + 10 kt', { only: 'in icing' })] },
      findings: [{ at: 's1 value', message: 'without', says: 'its condition', witness: { quote: 'VMM F18' } }],
    },
    {
      why: 'with the increment where nobody switched it on',
      procedure: { ...approach, steps: [speed('VREF F35 icing + 5 kt')] },
      findings: [{ at: 's1 value', message: 'with', witness: { quote: 'VREF F35 icing' }, fix: null }],
    },
  ],
});
