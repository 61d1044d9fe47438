/**
 * Level, co-ordinated turns: radius r = V²/(g tan φ), rate ω = g tan φ/V, load factor n = 1/cos φ (textbook point mass),
 * and where to begin a turn that flies by a point: r tan(½ change), after RTCA DO-236 geometry (from memory).
 * The speed is what the turn is flown at over the ground that matters: true speed in still air, ground speed with wind.
 */
import { assert } from '../base/assert.ts';
import { degreesToRadians, knotsToMetresPerSecond, metresToMiles, radiansToDegrees } from '../units/convert.ts';
import {
  type Degrees,
  type DegreesPerSecond,
  degreesPerSecond,
  type Knots,
  type LoadFactor,
  loadFactor,
  type Metres,
  metres,
  type NauticalMiles,
  nauticalMiles,
  radians,
  type Seconds,
  seconds,
} from '../units/quantity.ts';
import { GRAVITY } from './atmosphere.ts';

const tangent = (angle: Degrees): number => Math.tan(degreesToRadians(angle));
const banked = (bank: Degrees): void =>
  assert(bank > 0 && bank < 90, `a bank of ${bank}° makes no level turn: above 0° and below 90°`);
const moving = (speed: Knots): void => assert(speed > 0, `a turn at ${speed} kt has no radius`);

/** Radius of a turn at a speed and a bank above 0° and below 90°. */
export function turnRadius(speed: Knots, bank: Degrees): Metres {
  banked(bank);
  return metres(knotsToMetresPerSecond(speed) ** 2 / (GRAVITY * tangent(bank)));
}

/** How fast the heading changes. */
export function turnRate(speed: Knots, bank: Degrees): DegreesPerSecond {
  banked(bank);
  moving(speed);
  const omega = (GRAVITY * tangent(bank)) / knotsToMetresPerSecond(speed);
  return degreesPerSecond(radiansToDegrees(radians(omega)));
}

/** Bank that gives a rate of turn. */
export const bankForRate = (speed: Knots, rate: DegreesPerSecond): Degrees =>
  radiansToDegrees(radians(Math.atan((rate * (Math.PI / 180) * knotsToMetresPerSecond(speed)) / GRAVITY)));

/** Bank that gives a radius above nil. */
export function bankForRadius(speed: Knots, radius: Metres): Degrees {
  assert(radius > 0, `a turn of radius ${radius} m can't be flown`);
  return radiansToDegrees(radians(Math.atan(knotsToMetresPerSecond(speed) ** 2 / (GRAVITY * radius))));
}

/** Time for a change of heading at this speed and bank. */
export const turnTime = (speed: Knots, bank: Degrees, change: Degrees): Seconds =>
  seconds(Math.abs(change) / turnRate(speed, bank));

/** Lift over weight in a level turn, bank below 90°. */
export function loadFactorOf(bank: Degrees): LoadFactor {
  assert(Math.abs(bank) < 90, `a bank of ${bank}° holds no level: below 90°`);
  return loadFactor(1 / Math.cos(degreesToRadians(bank)));
}

/** Bank at which a level turn has this load factor, 1 or more. */
export function bankForLoadFactor(n: LoadFactor): Degrees {
  assert(n >= 1, `no level turn has a load factor of ${n}`);
  return radiansToDegrees(radians(Math.acos(1 / n)));
}

/** By how much a stall or manoeuvring speed grows with load factor: √n, speeds being calibrated and slow. */
export const speedFactor = (n: LoadFactor): number => Math.sqrt(n);

/**
 * Distance before a point at which a turn that flies by it begins, for a change of track below 180°. The time to
 * establish the bank is flown straight on at the same speed.
 */
export function turnAnticipation(
  speed: Knots,
  bank: Degrees,
  change: Degrees,
  establish: Seconds = seconds(0),
): NauticalMiles {
  assert(Math.abs(change) < 180, `a turn of ${change}° has no place where it begins: below 180°`);
  const half = Math.tan((Math.abs(change) * Math.PI) / 360);
  const straight = knotsToMetresPerSecond(speed) * establish;
  return nauticalMiles(metresToMiles(metres(turnRadius(speed, bank) * half + straight)));
}
