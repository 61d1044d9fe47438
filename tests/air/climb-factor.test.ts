import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { casToTas, machToTas } from '../../lib/air/airspeed.ts';
import { airAt, GRAVITY, STRATOSPHERE_TEMPERATURE } from '../../lib/air/atmosphere.ts';
import { climbFactorAtCas, climbFactorAtMach } from '../../lib/air/climb-factor.ts';
import { feetToMetres, knotsToMetresPerSecond } from '../../lib/units/convert.ts';
import {
  cas,
  deviation,
  feet,
  type Knots,
  mach,
  type PressureAltitude,
  pressureAltitude,
} from '../../lib/units/quantity.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Either side of the tropopause, at 36 089 ft, with room for the step. */
const heights = fc.oneof(number(0, 35_900), number(36_300, 45_000)).map(pressureAltitude);
const days = number(-30, 30).map(deviation);
const STEP = 20;

/** 1 + (V/g) dV/dh by the difference quotient; a true foot is more than an indicated one on a warm day. */
function quotient(speedAt: (altitude: PressureAltitude) => Knots, altitude: PressureAltitude, off: number): number {
  const [low, high] = [-STEP, STEP].map((step) => knotsToMetresPerSecond(speedAt(pressureAltitude(altitude + step))));
  const day = airAt(altitude, deviation(off)).temperature;
  const stretch = day / (day - off);
  const rise = feetToMetres(feet(2 * STEP)) * stretch;
  return 1 + (knotsToMetresPerSecond(speedAt(altitude)) * ((high ?? 0) - (low ?? 0))) / (rise * GRAVITY);
}

describe('climb factor', () => {
  it('at constant CAS is what the difference quotient says', () => {
    fc.assert(
      fc.property(number(150, 260).map(cas), heights, days, (speed, altitude, off) => {
        const ought = quotient((at) => casToTas(speed, at, off), altitude, off);
        expect(climbFactorAtCas(speed, altitude, off)).toBeCloseTo(ought, 5);
      }),
    );
  });
  it('at constant Mach is what the difference quotient says', () => {
    fc.assert(
      fc.property(number(0.3, 0.9).map(mach), heights, days, (m, altitude, off) => {
        const ought = quotient((at) => machToTas(m, at, off), altitude, off);
        expect(climbFactorAtMach(m, altitude, off)).toBeCloseTo(ought, 5);
      }),
    );
  });
  it('is 1 at a constant Mach number where temperature does not change', () => {
    const high = pressureAltitude(38_000);
    expect(airAt(high).temperature).toBe(STRATOSPHERE_TEMPERATURE);
    expect(climbFactorAtMach(mach(0.8), high, deviation(0))).toBe(1);
  });
});
