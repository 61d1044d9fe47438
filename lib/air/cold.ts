/**
 * What is added to an altitude in air colder than standard. Form of ICAO Doc 8168 (from memory; rounded up to 10 ft it
 * gives every cell of the published table, which is a test):
 *   t0 = t + L0 E        ΔH = H (15 − t0) / (273 + t0 − ½ L0 (H + E))        L0 = 0.00198 °C/ft
 * H is the height above the altimeter source, E its elevation, t the temperature there. Which altitudes are corrected is
 * the operator's and the State's to say, not this file's.
 */
import { type Arithmetic, plain } from '../base/arithmetic.ts';
import { assert } from '../base/assert.ts';
import { type AltitudeMsl, altitudeMsl, type Celsius, type Feet, feet } from '../units/quantity.ts';

/** °C lost with each foot. */
export const COLD_LAPSE = 0.00198;

/** ΔH in ft for H ft above a source at E ft where it is t °C. Nil in air warmer than standard. */
export const coldTerm = <N>(a: Arithmetic<N>, h: N, e: N, t: N): N => {
  const lapse = a.of(COLD_LAPSE);
  const t0 = a.add(t, a.mul(lapse, e));
  const below = a.max(a.sub(a.of(15), t0), a.of(0));
  const mean = a.sub(a.add(a.of(273), t0), a.mul(a.mul(a.of(0.5), lapse), a.add(h, e)));
  return a.div(a.mul(h, below), mean);
};

/**
 * Correction for a height above the altimeter source. The height is not negative; throws where the column would have
 * no temperature left (the form holds for the heights of an approach).
 */
export function coldCorrection(height: Feet, elevation: AltitudeMsl, temperature: Celsius): Feet {
  assert(height >= 0, `${height} ft is below the altimeter source`);
  const mean = 273 + temperature + COLD_LAPSE * (elevation - 0.5 * (height + elevation));
  assert(mean > 100, `${height} ft is too high for the cold temperature form`);
  return feet(coldTerm(plain, height as number, elevation as number, temperature as number));
}

/** A charted altitude with its correction, rounded up to what can be set: 100 ft in a selector, 10 ft for a minimum. */
export function coldAltitude(
  charted: AltitudeMsl,
  elevation: AltitudeMsl,
  temperature: Celsius,
  step: 10 | 100,
): AltitudeMsl {
  const corrected = charted + coldCorrection(feet(charted - elevation), elevation, temperature);
  return altitudeMsl(roundUp(corrected, step));
}

/** Up to the next whole step; what lies on a step but for the last bits stays there. */
export const roundUp = (value: number, step: number): number => Math.ceil(value / step - 1e-9) * step + 0;
