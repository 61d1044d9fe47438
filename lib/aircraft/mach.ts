import { calibratedOfMach, machOfCalibrated } from '../air/airspeed.ts';
import { pressureRatio } from '../air/atmosphere.ts';
import { type Expression, min, mul, number, symbolic } from '../base/expression.ts';
import type { Sheet } from './sheet.ts';

const FOOT = 0.3048;
const KNOT = 1852 / 3600;

const pressureOf = (altitude: Expression): Expression => pressureRatio(symbolic, mul(altitude, number(FOOT)));

/** Calibrated speed, kt, of a Mach number at a pressure altitude, ft. */
export const speedOfMach = (mach: Expression, altitude: Expression): Expression =>
  mul(number(1 / KNOT), calibratedOfMach(symbolic, mach, pressureOf(altitude)));

/** Mach number of a calibrated speed, kt, at a pressure altitude, ft. */
export const machOfSpeed = (speed: Expression, altitude: Expression): Expression =>
  machOfCalibrated(symbolic, mul(number(KNOT), speed), pressureOf(altitude));

/** The limit of the aircraft, kt, at a pressure altitude, ft: VMO, above the crossover MMO. */
export function aircraftLimit(sheet: Sheet, altitude: Expression): Expression {
  return min(number(sheet.limits.vmo.value), speedOfMach(number(sheet.limits.mmo.value), altitude));
}

/** The limit with the gear extended, kt: VLE, above its crossover MLE. */
export function gearLimit(sheet: Sheet, altitude: Expression): Expression {
  const { vle, mle } = sheet.limits.gear;
  return min(number(vle.value), speedOfMach(number(mle.value), altitude));
}
