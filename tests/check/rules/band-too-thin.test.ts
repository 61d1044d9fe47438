import { expect } from 'vitest';
import { bandTooThin } from '../../../lib/check/rules/band-too-thin.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { withLimits } from '../../kit/world.ts';

const select = (detent: string) =>
  ({ cue: 'then', who: 'PM', verb: 'select', object: 'flap lever', value: detent }) as const;
const landing = { weight: { from: 46_000, to: 66_800 } };

testRule(bandTooThin, {
  valid: [
    { phases: ['approach'], envelope: landing, entry: { flaps: ['F18'] }, steps: [select('F26'), select('F35')] },
    { phases: ['approach'], steps: [select('F6'), select('F12'), select('F18')] },
    { entry: { flaps: ['F12'] }, steps: [select('F6'), select('F0')] },
  ],
  invalid: [
    {
      why: 'D6: 11.6 kt at 78.6 t, fails above 70.2 t',
      procedure: { phases: ['approach'], entry: { flaps: ['F26'] }, steps: [select('F35')] },
      findings: [
        {
          at: 's1 value',
          message: 'thin',
          says: 'above 70.2 t',
          witness: {
            at: expect.objectContaining({ weight: 78_600 }),
            says: expect.stringMatching(/at 78\.6 t by 8\.[34] kt/),
          },
        },
      ],
    },
    {
      why: 'D6: F18 to F26 fails above 76.7 t',
      procedure: { phases: ['approach'], entry: { flaps: ['F18'] }, steps: [select('F26')] },
      findings: [{ at: 's1 value', message: 'thin', says: 'above 76.7 t', witness: { kind: 'envelope' } }],
    },
    {
      why: 'scenario 1: VFE F6 220 kt leaves less than 20 kt above 75.4 t',
      procedure: { phases: ['climb'], entry: { flaps: ['F6'] }, steps: [select('F0')] },
      facts: { sheet: withLimits({ F6: 220 }) },
      findings: [{ at: 's1 value', message: 'thin', says: 'above 75.4 t', witness: { kind: 'envelope' } }],
    },
  ],
});
