import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coldAltitude, coldCorrection, roundUp } from '../../lib/air/cold.ts';
import { altitudeMsl, celsius, feet } from '../../lib/units/quantity.ts';

const SEA = altitudeMsl(0);

describe('cold temperature correction', () => {
  it.each([
    [500, 88],
    [1000, 176],
    [1500, 265],
    [3000, 533],
  ])('of %i ft at sea level and -28 °C is %i ft, as in the reference study', (height, want) => {
    expect(Math.round(coldCorrection(feet(height), SEA, celsius(-28)))).toBe(want);
  });
  it('is nil in air warmer than standard, at any elevation', () => {
    expect(coldCorrection(feet(3000), SEA, celsius(15))).toBe(0);
    expect(coldCorrection(feet(3000), altitudeMsl(5430), celsius(15))).toBe(0);
  });
  it('is never negative, and grows with height and cold', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 10_000, noNaN: true }),
        fc.double({ min: -60, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 9000, noNaN: true }),
        (height, air, elevation) => {
          const of = (h: number, t: number) => coldCorrection(feet(h), altitudeMsl(elevation), celsius(t));
          expect(of(height, air)).toBeGreaterThanOrEqual(0);
          expect(of(height + 100, air)).toBeGreaterThanOrEqual(of(height, air));
          expect(of(height, air - 1)).toBeGreaterThanOrEqual(of(height, air));
        },
      ),
    );
  });
  it('takes 4 % for each 10 °C below standard, roughly', () => {
    expect(coldCorrection(feet(1000), SEA, celsius(-15)) / 1000).toBeCloseTo(0.12, 1);
  });
  it('raises a charted altitude to what can be set', () => {
    expect(coldAltitude(altitudeMsl(1500), altitudeMsl(120), celsius(-28), 100)).toBe(1800);
    expect(coldAltitude(altitudeMsl(620), altitudeMsl(120), celsius(-28), 10)).toBe(710);
  });
  it.each([
    ['final approach fix', 1500, 242, 100, 1800],
    ['step-down', 900, 137, 100, 1100],
    ['decision altitude', 420, 52, 10, 480],
    ['missed approach', 3000, 508, 100, 3600],
  ] as const)('of the %s of a scenario at 120 ft and -28 °C: %i ft + %i', (_, charted, added, step, set) => {
    const [field, air] = [altitudeMsl(120), celsius(-28)];
    expect(Math.round(coldCorrection(feet(charted - 120), field, air))).toBe(added);
    expect(coldAltitude(altitudeMsl(charted), field, air, step)).toBe(set);
  });
  it('rounds up, but not over a step for a last bit', () => {
    expect(roundUp(0.1 * 3 * 1000, 100)).toBe(300);
    expect(roundUp(301, 100)).toBe(400);
    expect(roundUp(-1, 10)).toBe(0);
  });
  it('refuses a place below the source, and one without air', () => {
    expect(() => coldCorrection(feet(-1), SEA, celsius(0))).toThrow('below the altimeter source');
    expect(() => coldCorrection(feet(300_000), SEA, celsius(0))).toThrow('too high');
  });
});
