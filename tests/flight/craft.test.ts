// The flat numbers of a flight beside the one text of drag and thrust that proofs use.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { forces, type Rating } from '../../lib/aircraft/performance.ts';
import { plain } from '../../lib/base/arithmetic.ts';
import { craftOf, newAir } from '../../lib/flight/craft.ts';
import { FOOT } from '../../lib/units/convert.ts';
import { tn182 } from '../kit/world.ts';

test('drag, thrust and air are those of the sheet, at any height, day, weight and setting', () => {
  const detents = tn182.detents.map((detent) => detent.name);
  const air = newAir();
  fc.assert(
    fc.property(
      fc.record({
        speed: fc.double({ min: 100, max: 340, noNaN: true }),
        altitude: fc.double({ min: -1000, max: 39_000, noNaN: true }),
        temperature: fc.double({ min: -40, max: 35, noNaN: true }),
        weight: fc.double({ min: 44_000, max: 78_600, noNaN: true }),
        loadFactor: fc.double({ min: 0.5, max: 2, noNaN: true }),
        detent: fc.nat(detents.length - 1),
        gear: fc.boolean(),
        speedbrake: fc.boolean(),
        enginesOut: fc.constantFrom(0, 1),
        rating: fc.constantFrom<Rating>('take-off', 'go-around', 'climb', 'continuous', 'idle'),
      }),
      (s) => {
        const setting = {
          detent: detents[s.detent]!,
          gear: s.gear ? ('down' as const) : ('up' as const),
          speedbrake: s.speedbrake,
          enginesOut: s.enginesOut,
          rating: s.rating,
        };
        const told = forces(plain, tn182, setting, s);
        const craft = craftOf(tn182, s.weight, s.temperature);
        craft.airAt(s.altitude * FOOT, air);
        const zero = craft.zeroLift(s.detent, s.gear, s.speedbrake, s.enginesOut);
        const drag = craft.drag(air, told.trueSpeed, zero, craft.inducedOf(s.detent), s.loadFactor);
        const thrust = craft.thrust(air, told.trueSpeed, s.altitude * FOOT, s.rating, craft.engines - s.enginesOut);
        expect(Math.abs(drag / told.drag - 1)).toBeLessThan(1e-12);
        expect(Math.abs(thrust / told.thrust - 1)).toBeLessThan(1e-12);
        expect(Math.abs((air.sound * told.mach) / told.trueSpeed - 1)).toBeLessThan(1e-12);
      },
    ),
    { numRuns: 300 },
  );
});

test('a sensitivity changes drag or thrust and nothing else', () => {
  const air = newAir();
  const base = craftOf(tn182, 60_000, 0);
  const more = craftOf(tn182, 60_000, 0, { drag: 1.05, thrust: 0.95 });
  base.airAt(1000, air);
  expect(more.drag(air, 100, 0.05, 0.04, 1) / base.drag(air, 100, 0.05, 0.04, 1)).toBeCloseTo(1.05, 12);
  const ratio = more.thrust(air, 100, 1000, 'climb', 2) / base.thrust(air, 100, 1000, 'climb', 2);
  expect(ratio).toBeCloseTo(0.95, 12);
});
