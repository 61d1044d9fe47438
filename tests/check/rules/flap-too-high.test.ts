import { flapTooHigh } from '../../../lib/check/rules/flap-too-high.ts';
import { testRule } from '../../kit/rule-tester.ts';

const select = (cue: string, detent = 'F6') =>
  ({ cue, who: 'PM', verb: 'select', object: 'flap lever', value: detent }) as const;
const level = (to: number) => ({ level: { from: 6_000, to } });

testRule(flapTooHigh, {
  valid: [
    { phases: ['holding'], envelope: level(20_000), steps: [select('speed <= 230 kt')] },
    { phases: ['holding'], envelope: level(34_000), steps: [select('altitude <= 20 000 ft MSL and speed <= 230 kt')] },
    { phases: ['approach'], steps: [select('speed <= 230 kt')] },
    {
      why: 'a retraction',
      procedure: { phases: ['climb'], entry: { flaps: ['F12'] }, steps: [select('speed >= VMM F6')] },
    },
  ],
  invalid: [
    {
      why: 'scenario 1: the hold at FL 220',
      procedure: { phases: ['holding'], envelope: level(22_000), steps: [select('speed <= 230 kt')] },
      findings: [
        {
          at: 's1 cue',
          message: 'high',
          says: 'the limit for flap is 20 000 ft',
          witness: { quote: 'speed <= 230 kt' },
        },
      ],
    },
    {
      procedure: { phases: ['descent'], envelope: level(20_000), steps: [select('altitude >= 21 000 ft MSL')] },
      findings: [{ at: 's1 cue', message: 'high', says: '21 000 ft or above', witness: { kind: 'text' } }],
    },
    {
      procedure: { phases: ['holding'], envelope: level(34_000), steps: [select('altitude <= 25 000 ft MSL')] },
      findings: [{ at: 's1 cue', message: 'high', says: '34 000 ft', witness: { kind: 'text' } }],
    },
  ],
  missing: [
    { procedure: { phases: ['holding'], steps: [select('speed <= 230 kt')] }, because: 'up to which altitude' },
  ],
});
