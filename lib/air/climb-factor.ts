/**
 * What a climb costs in acceleration: at a constant CAS true speed grows with height, at a constant Mach number it falls
 * below the tropopause. Rate of climb = excess rate / factor, factor = 1 + (V/g) dV/dh (D2 of the project's reference).
 * Closed forms of the textbooks (from memory, tested against the difference quotient):
 *   CAS   1 + 0.7 M² (φ − 0.190263 Ts/T),  φ = [(1 + 0.2 M²)^3.5 − 1] / [0.7 M² (1 + 0.2 M²)^2.5]
 *   Mach  1 − 0.133184 M² Ts/T             and without the terms in Ts/T above the tropopause
 * Ts is the standard temperature there, T the day's; heights are true heights, not indicated ones.
 */
import { plain } from '../base/arithmetic.ts';
import type { Cas, Deviation, Mach, PressureAltitude } from '../units/quantity.ts';
import { casToMach, impactRatio } from './airspeed.ts';
import { heightOf, PRESSURE_EXPONENT, standardTemperature, TROPOPAUSE } from './atmosphere.ts';

/** Lapse over the day's temperature as the forms want it: R L Ts/(g T), nil above the tropopause. */
function lapseShare(altitude: PressureAltitude, off: number): number {
  const h = heightOf(altitude);
  if (h >= TROPOPAUSE) return 0;
  const standard = standardTemperature(plain, h as number);
  return standard / ((standard + off) * PRESSURE_EXPONENT);
}

/** Factor of a climb at constant CAS, above 1: rate = excess rate / factor. */
export function climbFactorAtCas(speed: Cas, altitude: PressureAltitude, off: Deviation): number {
  const m = casToMach(speed, altitude);
  const flow = 1 + 0.2 * m ** 2;
  return 1 + impactRatio(plain, m as number) / flow ** 2.5 - 0.7 * m ** 2 * lapseShare(altitude, off);
}

/** Factor of a climb at constant Mach: below 1 under the tropopause, 1 above it. */
export const climbFactorAtMach = (m: Mach, altitude: PressureAltitude, off: Deviation): number =>
  1 - 0.7 * m ** 2 * lapseShare(altitude, off);
