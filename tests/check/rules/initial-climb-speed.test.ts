import { expect, it } from 'vitest';
import { initialClimbSpeed } from '../../../lib/check/rules/initial-climb-speed.ts';
import { published } from '../../kit/published.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { housePolicy } from '../../kit/world.ts';

const takeOff = (speed: string, more: object = {}) => ({
  phases: ['take-off'] as const,
  entry: { flaps: ['F6'], gear: 'down' as const, speed, vertical: ['DEPART'] },
  steps: [{ cue: 'height >= 400 ft AAL', who: 'PM' as const, verb: 'read' as const, object: 'mode line' }],
  ...more,
});
const turn = (cue: string, value: string) =>
  ({ cue, who: 'PM', verb: 'set', object: 'speed selector', value }) as const;

testRule(initialClimbSpeed, {
  valid: [
    takeOff('V2 + 15 kt'),
    takeOff('V2 + 10 kt'),
    takeOff('V2 + 20 kt'),
    { why: 'with an engine out V2', procedure: takeOff('V2', { class: 'engine-out' }) },
    { why: 'with an engine out, kept', procedure: takeOff('V2 + 15 kt', { class: 'engine-out' }) },
    {
      why: 'after the acceleration altitude',
      procedure: takeOff('V2 + 15 kt', { steps: [turn('height >= acceleration altitude', '250 kt')] }),
    },
  ],
  invalid: [
    {
      procedure: takeOff('V2 + 5 kt'),
      findings: [
        {
          at: ' entry.speed',
          message: 'slow',
          says: 'below V2 F6 + 10 kt at every weight',
          witness: { kind: 'envelope' },
        },
      ],
    },
    {
      procedure: takeOff('V2 + 25 kt'),
      findings: [{ at: ' entry.speed', message: 'fast', says: 'above V2 F6 + 20 kt', witness: { kind: 'envelope' } }],
    },
    {
      why: 'a figure that fits the light aircraft only',
      procedure: takeOff('V2 + 15 kt', { steps: [turn('height >= 400 ft AAL', '155 kt')] }),
      findings: [
        { at: 's1 value', message: 'fast', says: 'below', witness: { kind: 'envelope' } },
        { at: 's1 value', message: 'slow', says: 'above', witness: { kind: 'envelope' } },
      ],
    },
    {
      why: 'faster than V2 + 15 kt with an engine out',
      procedure: takeOff('V2 + 20 kt', { class: 'engine-out' }),
      findings: [{ at: ' entry.speed', message: 'fast', witness: { kind: 'envelope' } }],
    },
  ],
});

it.each(['nadp1-speed', 'nadp2-speed'])('the policy holds the published window (%s)', (id) => {
  const { least, most } = housePolicy.speeds.initialClimb;
  expect(published(id).slice(0, 2)).toEqual([least, most]);
});
