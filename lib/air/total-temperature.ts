/**
 * Temperature as a probe in the stream meets it: TAT = SAT (1 + 0.2 k M²) in kelvin, k the share of the ram rise that
 * the probe recovers (isentropic flow; NASA RP-1046).
 */
import { type Arithmetic, plain } from '../base/arithmetic.ts';
import { assert } from '../base/assert.ts';
import { celsiusToKelvin, kelvinToCelsius } from '../units/convert.ts';
import { type Celsius, kelvin, type Mach } from '../units/quantity.ts';

/** TAT/SAT at Mach m. */
export const ramFactor = <N>(a: Arithmetic<N>, m: N, recovery: number): N =>
  a.add(a.of(1), a.mul(a.of(0.2 * recovery), a.pow(m, 2)));

const factor = (m: Mach, recovery: number): number => {
  assert(recovery >= 0 && recovery <= 1, `a recovery of ${recovery} is outside 0 to 1`);
  return ramFactor(plain, m as number, recovery);
};

/** Total (or indicated, with a recovery below 1) from static temperature. */
export const totalTemperature = (still: Celsius, m: Mach, recovery = 1): Celsius =>
  kelvinToCelsius(kelvin(celsiusToKelvin(still) * factor(m, recovery)));

/** Static from total or indicated temperature. */
export const staticTemperature = (total: Celsius, m: Mach, recovery = 1): Celsius =>
  kelvinToCelsius(kelvin(celsiusToKelvin(total) / factor(m, recovery)));
