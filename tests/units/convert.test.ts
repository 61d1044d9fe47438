import type { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as convert from '../../lib/units/convert.ts';
import { Digits, exact } from '../air/decimal-arithmetic.ts';

const PI = Digits.acos(-1);
type Convert = (value: never) => number;

/** There, back, and what there ought to be: value × over / under + plus, in exact decimals. */
interface Pair {
  readonly name: string;
  readonly there: Convert;
  readonly back: Convert;
  readonly over: Decimal.Value;
  readonly under: Decimal.Value;
  readonly plus: Decimal.Value;
}
const pair = (
  name: string,
  there: Convert,
  back: Convert,
  over: Decimal.Value,
  under: Decimal.Value,
  plus: Decimal.Value = 0,
): Pair => ({ name, there, back, over, under, plus });
const PAIRS: readonly Pair[] = [
  pair('ft to m', convert.feetToMetres, convert.metresToFeet, '0.3048', 1),
  pair('NM to m', convert.milesToMetres, convert.metresToMiles, 1852, 1),
  pair('ft to NM', convert.feetToMiles, convert.milesToFeet, '0.3048', 1852),
  pair('kt to m/s', convert.knotsToMetresPerSecond, convert.metresPerSecondToKnots, 1852, 3600),
  pair('ft/min to m/s', convert.feetPerMinuteToMetresPerSecond, convert.metresPerSecondToFeetPerMinute, '0.3048', 60),
  pair('lb to kg', convert.poundsToKilograms, convert.kilogramsToPounds, '0.45359237', 1),
  pair('t to kg', convert.tonnesToKilograms, convert.kilogramsToTonnes, 1000, 1),
  pair('°C to K', convert.celsiusToKelvin, convert.kelvinToCelsius, 1, 1, '273.15'),
  pair('°C to °F', convert.celsiusToFahrenheit, convert.fahrenheitToCelsius, 9, 5, 32),
  pair('inHg to hPa', convert.inchesToHectopascals, convert.hectopascalsToInches, '33.86389', 1),
  pair('hPa to Pa', convert.hectopascalsToPascals, convert.pascalsToHectopascals, 100, 1),
  pair('° to rad', convert.degreesToRadians, convert.radiansToDegrees, PI, 180),
  pair('min to s', convert.minutesToSeconds, convert.secondsToMinutes, 60, 1),
  pair('FL to ft', convert.levelToAltitude, convert.altitudeToLevel, 100, 1),
  pair('% to ft/NM', convert.percentToFeetPerMile, convert.feetPerMileToPercent, 1852, '30.48'),
];

/** A conversion rounds two or three times; each rounding is at most 1.2e-16 of the largest figure on the way. */
const ROUNDINGS = 5e-16;

describe('conversions against 40 digits', () => {
  it.each(PAIRS)('$name and back', ({ there, back, over, under, plus }) => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        const ought = exact(value).mul(over).div(under);
        const size = ought.abs().add(new Digits(plus).abs()).add(1e-300).toNumber();
        const got = there(value as never);
        expect(Math.abs(exact(got).sub(ought.add(plus)).toNumber())).toBeLessThanOrEqual(ROUNDINGS * size);

        const returned = exact(got).sub(plus).mul(under).div(over);
        const scale = exact(got).abs().add(new Digits(plus).abs()).mul(under).div(over).add(1e-300).toNumber();
        expect(
          Math.abs(
            exact(back(got as never))
              .sub(returned)
              .toNumber(),
          ),
        ).toBeLessThanOrEqual(ROUNDINGS * scale);
        expect(Math.abs(back(got as never) - value)).toBeLessThanOrEqual(2 * ROUNDINGS * scale);
      }),
      { numRuns: 300 },
    );
  });
});

describe('conversions by definition', () => {
  it('are exact where the figures are', () => {
    expect(convert.feetToMetres(1 as never)).toBe(0.3048);
    expect(convert.poundsToKilograms(1 as never)).toBe(0.45359237);
    expect(convert.milesToMetres(1 as never)).toBe(1852);
    expect(convert.celsiusToFahrenheit(100 as never)).toBe(212);
    expect(convert.celsiusToKelvin(-56.5 as never)).toBeCloseTo(216.65, 12);
  });
  it('set the standard altimeter to 29.92 inHg', () => {
    expect(convert.hectopascalsToInches(1013.25 as never)).toBeCloseTo(29.9213, 4);
  });
});
