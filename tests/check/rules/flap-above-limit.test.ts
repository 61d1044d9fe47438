import { expect } from 'vitest';
import { flapAboveLimit } from '../../../lib/check/rules/flap-above-limit.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { withLimits } from '../../kit/world.ts';

const select = (detent: string, cue: string, more: object = {}) =>
  ({ cue, who: 'PM', verb: 'select', object: 'flap lever', value: detent, ...more }) as const;

testRule(flapAboveLimit, {
  valid: [
    {
      phases: ['approach'],
      steps: [select('F6', 'speed <= VFE F6 - 5 kt'), select('F12', 'speed <= 205 kt and flaps F6 indicated')],
    },
    { phases: ['approach'], steps: [select('F6', 'speed between VMM F0 and 230 kt')] },
    {
      why: 'the look at the speed is the upper limit of an acceleration',
      procedure: {
        entry: { flaps: ['F6'] },
        steps: [select('F0', 'speed >= VMM F0', { say: 'speed checked … zero' })],
      },
    },
    {
      why: 'either bound is enough',
      procedure: { phases: ['approach'], steps: [select('F6', 'speed <= 300 kt and speed <= 230 kt')] },
    },
    {
      why: 'the target flown is right',
      procedure: { entry: { speed: '200 kt' }, steps: [select('F6', 'heard "flap six"')] },
    },
    {
      why: 'F0 has no limit of its own',
      procedure: { phases: ['approach'], entry: { flaps: ['F6'] }, steps: [select('F0', 'speed <= 230 kt')] },
    },
  ],
  invalid: [
    {
      why: 'scenario 1: the limit of F6 falls to 220 kt',
      procedure: { phases: ['approach'], steps: [select('F6', 'speed <= 230 kt')] },
      facts: { sheet: withLimits({ F6: 220 }) },
      findings: [
        {
          at: 's1 cue',
          message: 'above',
          says: '230 kt is above VFE F6 - 5 kt at every weight',
          witness: { kind: 'envelope', says: '230 kt is above VFE F6 - 5 kt at every weight, by 15 kt' },
        },
      ],
    },
    {
      why: 'the margin of rough air is wider',
      procedure: { phases: ['approach'], steps: [select('F6', 'speed <= 230 kt', { only: 'in turbulence' })] },
      findings: [{ at: 's1 cue', message: 'above', says: 'VFE F6 - 10 kt', witness: { kind: 'envelope' } }],
    },
    {
      why: 'the detent that is left counts too',
      procedure: {
        entry: { flaps: ['F18'] },
        steps: [select('F12', 'speed >= 200 kt', { say: 'speed checked … twelve' })],
      },
      findings: [
        { at: 's1 cue', message: 'above', says: '200 kt is above VFE F18 - 5 kt', witness: { kind: 'envelope' } },
      ],
    },
    {
      why: 'only the heavy ones are too fast',
      procedure: { entry: { flaps: ['F26'] }, steps: [select('F35', 'speed <= VMM F26 + 10 kt')] },
      findings: [
        {
          at: 's1 cue',
          message: 'above',
          says: 'VMM F26 + 10 kt is above VFE F35 - 5 kt above 7',
          witness: { at: expect.objectContaining({ weight: 78_600 }) },
        },
      ],
    },
    {
      why: 'one way of the cue is too fast',
      procedure: { phases: ['approach'], steps: [select('F6', 'speed <= 230 kt or speed <= 250 kt')] },
      findings: [{ at: 's1 cue', message: 'above', says: '250 kt', witness: { kind: 'envelope' } }],
    },
    {
      why: 'the target flown is too fast, and no cue slows it',
      procedure: { entry: { speed: '250 kt' }, steps: [select('F6', 'heard "flap six"')] },
      findings: [{ at: 's1 cue', message: 'above', says: '250 kt', witness: { kind: 'envelope' } }],
    },
  ],
  missing: [
    {
      procedure: { entry: { speed: 'as cleared' }, steps: [select('F6', 'heard "flap six"')] },
      because: 'puts no upper limit on the speed',
    },
    { procedure: { steps: [select('F6', 'speed <= VREF F6')] }, because: 'gives no VREF for F6' },
  ],
});
