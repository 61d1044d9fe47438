/**
 * Climb and descent: gradients, angles, rates and the distance they take. A gradient is rise over run in per cent; runs
 * are over the ground, so rates go with ground speed. Angles are those of the flown path: sink = ground speed × tan γ.
 */
import { assert } from '../base/assert.ts';
import {
  degreesToRadians,
  feetPerMileToPercent,
  feetPerMinuteToMetresPerSecond,
  feetToMiles,
  knotsToMetresPerSecond,
  metresPerSecondToFeetPerMinute,
  metresToFeet,
  percentToFeetPerMile,
  radiansToDegrees,
} from '../units/convert.ts';
import {
  type Degrees,
  type Feet,
  type FeetPerMinute,
  type FeetPerNauticalMile,
  feet,
  type GroundSpeed,
  type Knots,
  type LoadFactor,
  metres,
  metresPerSecond,
  type NauticalMiles,
  nauticalMiles,
  type Percent,
  percent,
  radians,
} from '../units/quantity.ts';
import { GRAVITY } from './atmosphere.ts';

export const gradientOfAngle = (path: Degrees): Percent => percent(100 * Math.tan(degreesToRadians(path)));
export const angleOfGradient = (gradient: Percent): Degrees => radiansToDegrees(radians(Math.atan(gradient / 100)));

/** ft/min at a ground speed: 101.27 × GS × tan γ. Sign as the gradient's. */
export const rateOfGradient = (gradient: Percent, made: Knots): FeetPerMinute =>
  metresPerSecondToFeetPerMinute(metresPerSecond((knotsToMetresPerSecond(made) * gradient) / 100));
export const rateOfAngle = (path: Degrees, made: Knots): FeetPerMinute => rateOfGradient(gradientOfAngle(path), made);

/** Gradient of a rate at a ground speed above nil. */
export function gradientOfRate(rate: FeetPerMinute, made: GroundSpeed): Percent {
  assert(made > 0, `there is no gradient at ${made} kt over the ground`);
  return percent((100 * feetPerMinuteToMetresPerSecond(rate)) / knotsToMetresPerSecond(made));
}

export const rateOfFeetPerMile = (steepness: FeetPerNauticalMile, made: Knots): FeetPerMinute =>
  rateOfGradient(feetPerMileToPercent(steepness), made);
export const feetPerMileOfAngle = (path: Degrees): FeetPerNauticalMile => percentToFeetPerMile(gradientOfAngle(path));
export const angleOfFeetPerMile = (steepness: FeetPerNauticalMile): Degrees =>
  angleOfGradient(feetPerMileToPercent(steepness));

/** Distance over the ground to climb or lose a height on a path that isn't level. */
export function distanceFor(height: Feet, gradient: Percent): NauticalMiles {
  assert(gradient !== 0, 'a level path never gains or loses height');
  return nauticalMiles((feetToMiles(height) * 100) / Math.abs(gradient));
}

/** Height lost or gained over a distance. */
export const heightOver = (distance: NauticalMiles, gradient: Percent): Feet =>
  feet(distance * percentToFeetPerMile(gradient));

/**
 * Height at which a level-off begins: rate²/(2 × extra load × g), for an extra load above nil, 0.05 of weight unless said
 * (D2 of the project's reference: (ft/min)²/11 583, so 3 000 ft/min takes 777 ft).
 */
export function levelOffHeight(rate: FeetPerMinute, extra: LoadFactor = 0.05 as LoadFactor): Feet {
  assert(extra > 0, `a level-off with ${extra} g never ends`);
  return metresToFeet(metres(feetPerMinuteToMetresPerSecond(rate) ** 2 / (2 * extra * GRAVITY)));
}
