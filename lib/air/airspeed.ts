/**
 * Airspeeds below the speed of sound: calibrated, equivalent, true and Mach, each from each, with compressibility.
 * Formulas: isentropic flow of air with a ratio of heats of 1.4, as in D2 of the project's reference and NASA RP-1046.
 *   qc = p0 [(1 + 0.2 (Vc/a0)²)^3.5 − 1]     M = √(5 [(qc/p + 1)^(2/7) − 1])     V = M a     Ve = M a0 √(p/p0)
 * The core is over `Arithmetic`, in m/s, Pa and ratios of pressure; wrappers take knots and pressure altitude.
 */
import { type Arithmetic, plain } from '../base/arithmetic.ts';
import { assert } from '../base/assert.ts';
import { err, ok, type Result } from '../base/result.ts';
import { knotsToMetresPerSecond, metresPerSecondToKnots, metresToFeet } from '../units/convert.ts';
import {
  type Cas,
  cas,
  type Deviation,
  type Eas,
  eas,
  type Knots,
  type Mach,
  mach,
  metresPerSecond,
  type PressureAltitude,
  pascals,
  pressureAltitude,
  type Tas,
  tas,
} from '../units/quantity.ts';
import { heightOfPressure } from './altimeter.ts';
import { airAt, HIGHEST, heightOf, LOWEST, pressureRatio, SEA_PRESSURE, SEA_SOUND } from './atmosphere.ts';

/** (qc/p) of a Mach number: (1 + 0.2 M²)^3.5 − 1. */
export const impactRatio = <N>(a: Arithmetic<N>, m: N): N =>
  a.sub(a.pow(a.add(a.of(1), a.mul(a.of(0.2), a.pow(m, 2))), 3.5), a.of(1));

/** Mach number of an impact ratio, the inverse of `impactRatio`. */
export const machOfRatio = <N>(a: Arithmetic<N>, ratio: N): N =>
  a.sqrt(a.mul(a.of(5), a.sub(a.pow(a.add(ratio, a.of(1)), 2 / 7), a.of(1))));

/** Mach number of a calibrated speed vc m/s where the pressure is `delta` of sea level. */
export const machOfCalibrated = <N>(a: Arithmetic<N>, vc: N, delta: N): N =>
  machOfRatio(a, a.div(impactRatio(a, a.div(vc, a.of(SEA_SOUND))), delta));

/** Calibrated speed, m/s, of a Mach number where the pressure is `delta` of sea level. */
export const calibratedOfMach = <N>(a: Arithmetic<N>, m: N, delta: N): N =>
  a.mul(a.of(SEA_SOUND), machOfRatio(a, a.mul(impactRatio(a, m), delta)));

/** Equivalent speed, m/s, of a Mach number: the speed that has this dynamic pressure at sea level. */
export const equivalentOfMach = <N>(a: Arithmetic<N>, m: N, delta: N): N =>
  a.mul(a.mul(a.of(SEA_SOUND), m), a.sqrt(delta));

/** True speed, m/s, of a calibrated speed vc m/s, in air of pressure ratio `delta` and speed of sound `sound` m/s. */
export const trueOfCalibrated = <N>(a: Arithmetic<N>, vc: N, delta: N, sound: N): N =>
  a.mul(machOfCalibrated(a, vc, delta), sound);

/** Impact pressure of a calibrated speed, Pa: what the pitot tube adds to the static. */
export const impactPressure = (speed: Cas) => pascals(SEA_PRESSURE * impactRatio(plain, inMetres(speed) / SEA_SOUND));

const inMetres = (speed: Knots): number => knotsToMetresPerSecond(speed);
const inKnots = (speed: number): Knots => metresPerSecondToKnots(metresPerSecond(speed));
const deltaAt = (altitude: PressureAltitude): number => pressureRatio(plain, heightOf(altitude));

/** Speeds here are neither backward nor supersonic; a Mach number a hair over 1 by rounding passes. */
const subsonic = (m: number): Mach => {
  assert(m >= 0 && m <= 1 + 1e-9, `Mach ${m} is outside 0 to 1, where these formulas hold`);
  return mach(m);
};

/** Throws above Mach 1, as all of these do. */
export const casToMach = (speed: Cas, altitude: PressureAltitude): Mach => {
  assert(speed >= 0, `${speed} kt is no airspeed`);
  return subsonic(machOfCalibrated(plain, inMetres(speed), deltaAt(altitude)));
};
export const machToCas = (m: Mach, altitude: PressureAltitude): Cas =>
  cas(inKnots(calibratedOfMach(plain, subsonic(m), deltaAt(altitude))));

export const machToTas = (m: Mach, altitude: PressureAltitude, off?: Deviation): Tas =>
  tas(inKnots(subsonic(m) * airAt(altitude, off).soundSpeed));
export const tasToMach = (speed: Tas, altitude: PressureAltitude, off?: Deviation): Mach =>
  subsonic(inMetres(speed) / airAt(altitude, off).soundSpeed);

export const machToEas = (m: Mach, altitude: PressureAltitude): Eas =>
  eas(inKnots(equivalentOfMach(plain, subsonic(m), deltaAt(altitude))));
export const easToMach = (speed: Eas, altitude: PressureAltitude): Mach =>
  subsonic(inMetres(speed) / (SEA_SOUND * Math.sqrt(deltaAt(altitude))));

export const casToTas = (speed: Cas, altitude: PressureAltitude, off?: Deviation): Tas =>
  machToTas(casToMach(speed, altitude), altitude, off);
export const tasToCas = (speed: Tas, altitude: PressureAltitude, off?: Deviation): Cas =>
  machToCas(tasToMach(speed, altitude, off), altitude);
export const casToEas = (speed: Cas, altitude: PressureAltitude): Eas =>
  machToEas(casToMach(speed, altitude), altitude);
export const easToCas = (speed: Eas, altitude: PressureAltitude): Cas =>
  machToCas(easToMach(speed, altitude), altitude);
export const easToTas = (speed: Eas, altitude: PressureAltitude, off?: Deviation): Tas =>
  machToTas(easToMach(speed, altitude), altitude, off);
export const tasToEas = (speed: Tas, altitude: PressureAltitude, off?: Deviation): Eas =>
  machToEas(tasToMach(speed, altitude, off), altitude);

/**
 * Pressure altitude at which a calibrated speed and a Mach number are the same true speed; below it the speed is the
 * slower one. Temperature plays no part. Fails when they meet only outside the atmosphere known here.
 */
export function crossover(speed: Cas, m: Mach): Result<PressureAltitude, string> {
  assert(speed > 0 && m > 0, `no crossover of ${speed} kt and Mach ${m}: both must be above nil`);
  const delta = impactRatio(plain, inMetres(speed) / SEA_SOUND) / impactRatio(plain, subsonic(m));
  const h = heightOfPressure(pascals(delta * SEA_PRESSURE));
  if (h < LOWEST || h > HIGHEST) {
    return err(`${speed} kt and Mach ${m} don't meet between -16 400 and 65 600 ft.`);
  }
  return ok(pressureAltitude(metresToFeet(h)));
}
