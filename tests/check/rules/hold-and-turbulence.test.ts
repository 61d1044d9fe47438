import { expect, it } from 'vitest';
import { holdAndTurbulence } from '../../../lib/check/rules/hold-and-turbulence.ts';
import { published } from '../../kit/published.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { housePolicy } from '../../kit/world.ts';

const turn = (value: string, cue = 'then') =>
  ({ cue, who: 'PF', verb: 'set', object: 'speed selector', value }) as const;
const hold = (from: number, to: number, ...steps: readonly ReturnType<typeof turn>[]) => ({
  phases: ['holding'] as const,
  envelope: { level: { from, to } },
  steps,
});

testRule(holdAndTurbulence, {
  valid: [
    hold(6_000, 14_000, turn('215 kt')),
    hold(6_000, 34_000, turn('clean speed')),
    hold(15_000, 20_000, turn('240 kt')),
    { why: 'higher by its cue', procedure: hold(4_000, 34_000, turn('260 kt', 'altitude >= 20 000 ft MSL')) },
    { why: 'no hold and no turbulence', procedure: { steps: [turn('200 kt')] } },
    { why: 'rough air has no hold limit', procedure: { steps: [turn('rough-air speed, 265 kt')] } },
  ],
  invalid: [
    {
      procedure: hold(6_000, 14_000, turn('200 kt')),
      findings: [
        { at: 's1 value', message: 'slow', says: '200 kt is below VMM F0 above 75', witness: { kind: 'envelope' } },
      ],
    },
    {
      procedure: hold(6_000, 14_000, turn('240 kt')),
      findings: [
        {
          at: 's1 value',
          message: 'fast',
          says: 'above 230 kt, the hold limit up to 14 000 ft MSL',
          witness: { kind: 'envelope' },
        },
      ],
    },
    {
      why: 'the lowest level that the envelope allows',
      procedure: hold(12_000, 20_000, turn('235 kt')),
      findings: [{ at: 's1 value', message: 'fast', says: 'up to 14 000 ft MSL', witness: { kind: 'envelope' } }],
    },
    {
      why: 'rough air too slow',
      procedure: { steps: [turn('180 kt', 'event "turbulence"')] },
      findings: [{ at: 's1 value', message: 'slow', says: 'above 61.1 t', witness: { kind: 'envelope' } }],
    },
  ],
});

it('the policy of the demo operator holds the published limits', () => {
  const { low, middle } = housePolicy.speeds.hold;
  expect(low.speed).toBe(published('hold-icao-14')[0]);
  expect(middle.speed).toBe(published('hold-icao-20')[0]);
});
