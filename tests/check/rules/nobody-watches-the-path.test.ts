import { nobodyWatchesThePath } from '../../../lib/check/rules/nobody-watches-the-path.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { seedProcedure } from '../../kit/seed.ts';

const fix = {
  cue: 'event "final approach fix passed"',
  who: 'PF',
  verb: 'select',
  object: 'path angle',
  value: '3.0°',
} as const;
const watch = {
  cue: 'then',
  who: 'PM',
  verb: 'call',
  object: 'altitude',
  value: 'each NM, against the table',
  checkBy: 'PF',
  checkSees: 'within 75 ft',
} as const;
const approach = { phases: ['approach'], entry: { vertical: ['CONTOUR'] } } as const;

testRule(nobodyWatchesThePath, {
  valid: [
    { why: 'each mile, with a tolerance', procedure: { ...approach, steps: [fix, watch] } },
    {
      why: 'twice',
      procedure: { ...approach, steps: [fix, { ...watch, value: '4 NM' }, { ...watch, value: '2 NM' }] },
    },
    { why: 'on the glide signal', procedure: { ...approach, entry: { vertical: ['GLIDE'] }, steps: [fix] } },
    { why: 'the approach of the house', procedure: seedProcedure('instrument-approach') },
    { why: 'no final approach in it', procedure: { ...approach, steps: [{ ...fix, cue: 'then' }] } },
  ],
  invalid: [
    {
      why: 'the angle alone',
      procedure: { ...approach, steps: [fix] },
      findings: [{ at: 's1 checkSees', message: 'nobody', says: 'CONTOUR', witness: { kind: 'absent' } }],
    },
    {
      why: 'compared once',
      procedure: { ...approach, steps: [fix, { ...watch, value: 'at 4 NM' }] },
      findings: [{ at: 's1 checkSees', message: 'once', witness: { second: 's2' } }],
    },
    {
      why: 'no tolerance',
      procedure: { ...approach, steps: [fix, { ...watch, checkSees: 'as the table' }] },
      findings: [{ at: 's2 checkSees', message: 'no-tolerance', witness: { kind: 'absent' } }],
    },
    {
      why: 'a comparison before the fix is none',
      procedure: { ...approach, steps: [watch, fix] },
      findings: [{ at: 's2 checkSees', message: 'nobody', witness: { kind: 'absent' } }],
    },
  ],
  missing: [
    {
      procedure: { ...approach, entry: { vertical: [] }, steps: [fix] },
      because: 'nothing says which mode flies the final path',
    },
  ],
});
