/**
 * The equations of motion of a point mass and the laws that steer it (D2 of the project's reference): height, true speed, vertical
 * speed, thrust, bank, heading and place. Between two events a law is smooth; what jumps is changed from outside, between steps.
 *   dV/dt = (T − D)/m − g w/V + w dU/dh     w = what is wanted, or on the way to it at the load factor     dT/dt = (goal − T)/lag
 * U is the head wind: climbing into more of it adds air speed. Lift carries the weight over cos φ; a pull-up costs no drag.
 */
import { GRAVITY, SEA_SOUND } from '../air/atmosphere.ts';
import type { Rating } from '../aircraft/performance.ts';
import { FOOT, NAUTICAL_MILE } from '../units/convert.ts';
import { type AirNow, type Craft, newAir } from './craft.ts';

export const KNOT = NAUTICAL_MILE / 3600;
export const FPM = FOOT / 60;

/** Places in the state: m above the sea, m/s, m/s, N, m over the ground, rad, rad, m, m. */
export const H = 0;
export const V = 1;
export const W = 2;
export const T = 3;
export const X = 4;
export const HEADING = 5;
export const BANK = 6;
export const EAST = 7;
export const NORTH = 8;
export const SIZE = 9;

/** Steepest path on pitch, vertical over true speed: 12.5°, roughly 18° nose up. Most acceleration wanted of it, m/s², and the time it looks ahead, s. */
const STEEPEST = 0.218;
const MOST_ACCELERATION = 1.2;
const AHEAD = 4;
/** The same for speed on thrust, s, and for a level that is held, s. */
const AHEAD_THRUST = 6;
const AHEAD_LEVEL = 5;
/** Lag of the bank, s; bank for each radian of heading. */
const ROLLS = 1.2;
const BANK_GAIN = 1.5;

export type PathLaw = 'speed' | 'share' | 'rate' | 'capture' | 'level' | 'glide';
export type ThrustLaw = 'rating' | 'govern' | 'steady';

/** All that an event may change. SI units. */
export type Law = {
  path: PathLaw;
  /** Speed target, indicated, m/s; 0: none, the speed is left as it is. */
  target: number;
  rate: number;
  /** Level to capture or hold. */
  altitude: number;
  /** Tangent of the glide path. */
  slope: number;
  /** Of the excess power, what climbs while accelerating; and at least this rate. */
  share: number;
  least: number;
  /** Most change of vertical speed, m/s². Acceleration of a capture, m/s². */
  load: number;
  /** The way to what is wanted: up or down at the load factor; 0: the vertical speed is what is wanted. */
  slew: -1 | 0 | 1;
  capture: number;
  thrust: ThrustLaw;
  rating: Rating;
  /** Upper limit of a governed thrust. */
  limit: Rating;
  /** Time constants, s; 0: at once. */
  up: number;
  down: number;
  running: number;
  zero: number;
  induced: number;
  turning: boolean;
  heading: number;
  bankLimit: number;
  /** Head wind at the aerodrome, m/s, and for each metre of height. */
  wind: number;
  shear: number;
  elevation: number;
  /** Track of the runway, rad. */
  track: number;
  readonly trackSine: number;
  readonly trackCosine: number;
};

/** What stands between state and slope, for whoever asks. N, m/s, m/s². */
export type Balance = {
  readonly air: AirNow;
  drag: number;
  thrust: number;
  excess: number;
  wanted: number;
  /** Vertical speed, m/s, as it is: of the state, or what is wanted. */
  rise: number;
  lift: number;
  groundSpeed: number;
  ground: [east: number, north: number];
};

export const impactOf = (knots: number): number => (1 + 0.2 * ((knots * KNOT) / SEA_SOUND) ** 2) ** 3.5 - 1;

export const clamp = (x: number, low: number, high: number): number => Math.min(Math.max(x, low), high);

/** True speed, m/s, of an impact ratio in this air. */
export const trueOf = (impact: number, air: AirNow): number =>
  Math.sqrt(5 * ((impact / air.delta + 1) ** (2 / 7) - 1)) * air.sound;

/** Calibrated speed, m/s, of a true speed, m/s: what the indicator shows, as it has no error here. */
export function calibrated(speed: number, air: AirNow): number {
  const mach = speed / air.sound;
  const heat = 1 + 0.2 * mach * mach;
  const impact = (heat * heat * heat * Math.sqrt(heat) - 1) * air.delta;
  return SEA_SOUND * Math.sqrt(5 * (Math.exp((2 / 7) * Math.log(impact + 1)) - 1));
}

export const newBalance = (): Balance => ({
  air: newAir(),
  drag: 0,
  thrust: 0,
  excess: 0,
  wanted: 0,
  rise: 0,
  lift: 1,
  groundSpeed: 0,
  ground: [0, 0],
});

/** Vertical speeds that hang on no thrust, m/s; NaN for those that do. */
function pathAlone(law: Law, y: Float64Array, head: number): number {
  switch (law.path) {
    case 'rate':
      return law.rate;
    case 'capture': {
      const left = law.altitude - y[H]!;
      return Math.sign(left) * Math.sqrt(2 * law.capture * Math.abs(left));
    }
    case 'level': {
      const left = law.altitude - y[H]!;
      const most = Math.sqrt(2 * law.capture * Math.abs(left));
      return clamp(left / AHEAD_LEVEL, -most, most);
    }
    case 'glide':
      // By the true speed, as the approach study has it: a thousandth more than along the ground.
      return -(y[V]! - head) * law.slope;
    default:
      return Number.NaN;
  }
}

/** What is left of the excess power for height, m/s. */
function pathOfPower(law: Law, speed: number, b: Balance): number {
  if (law.path === 'share') {
    // At least the least rate, but never so much that the speed falls.
    const whole = speed * b.excess;
    return Math.min(Math.max(law.share * whole, Math.min(law.least, whole)), speed * STEEPEST);
  }
  let wanted = 0;
  if (law.target > 0) {
    const short = (law.target - calibrated(speed, b.air)) / AHEAD;
    wanted = clamp(short, -MOST_ACCELERATION, MOST_ACCELERATION);
  }
  const rise = (GRAVITY * b.excess - wanted) / (GRAVITY / speed - law.shear);
  return clamp(rise, -speed * STEEPEST, speed * STEEPEST);
}

/** The thrust that the law asks for at a vertical speed, N. */
function thrustGoal(craft: Craft, law: Law, y: Float64Array, b: Balance, rise: number): number {
  const speed = y[V]!;
  if (law.thrust === 'rating') return craft.thrust(b.air, speed, y[H]!, law.rating, law.running);
  let wanted = 0;
  if (law.thrust === 'govern' && law.target > 0) {
    const short = (law.target - calibrated(speed, b.air)) / AHEAD_THRUST;
    wanted = clamp(short, -MOST_ACCELERATION, MOST_ACCELERATION);
  }
  const asked = b.drag + craft.mass * ((GRAVITY * rise) / speed - law.shear * rise + wanted);
  const idle = craft.thrust(b.air, speed, y[H]!, 'idle', law.running);
  return clamp(asked, idle, craft.thrust(b.air, speed, y[H]!, law.limit, law.running));
}

/** Fills the balance and, where asked, the slope of the state. */
export function move(craft: Craft, law: Law, y: Float64Array, b: Balance, into: Float64Array | null): void {
  const speed = y[V]!;
  craft.airAt(y[H]!, b.air);
  b.lift = y[BANK] === 0 ? 1 : 1 / Math.cos(y[BANK]!);
  b.drag = craft.drag(b.air, speed, law.zero, law.induced, b.lift);
  const head = law.wind + law.shear * (y[H]! - law.elevation);

  // A path of its own comes before the thrust that holds it; a path of the power that is left comes after.
  const ofPower = law.path === 'speed' || law.path === 'share';
  if (!ofPower) b.wanted = pathAlone(law, y, head);
  const before = law.slew === 0 && !ofPower ? b.wanted : y[W]!;
  const goal = thrustGoal(craft, law, y, b, before);
  b.thrust = law.up === 0 ? goal : y[T]!;
  b.excess = (b.thrust - b.drag) / craft.weight;
  if (ofPower) b.wanted = pathOfPower(law, speed, b);
  const rise = law.slew === 0 ? b.wanted : y[W]!;
  b.rise = rise;

  const flat = Math.sqrt(Math.max(speed * speed - rise * rise, 0));
  if (law.turning) {
    b.ground[0] = flat * Math.sin(y[HEADING]!) - head * Math.sin(law.track);
    b.ground[1] = flat * Math.cos(y[HEADING]!) - head * Math.cos(law.track);
    b.groundSpeed = Math.hypot(b.ground[0], b.ground[1]);
  } else {
    b.groundSpeed = flat - head;
    b.ground[0] = b.groundSpeed * law.trackSine;
    b.ground[1] = b.groundSpeed * law.trackCosine;
  }
  if (into === null) return;
  into[H] = rise;
  into[V] = (b.thrust - b.drag) / craft.mass - (GRAVITY * rise) / speed + law.shear * rise;
  into[W] = law.slew * law.load;
  into[T] = law.up === 0 ? 0 : (goal - y[T]!) / (goal > y[T]! ? law.up : law.down);
  into[X] = b.groundSpeed;
  into[EAST] = b.ground[0];
  into[NORTH] = b.ground[1];
  if (!law.turning) {
    into[HEADING] = 0;
    into[BANK] = 0;
    return;
  }
  const off = Math.atan2(Math.sin(law.heading - y[HEADING]!), Math.cos(law.heading - y[HEADING]!));
  into[HEADING] = (GRAVITY * Math.tan(y[BANK]!)) / speed;
  into[BANK] = (clamp(BANK_GAIN * off, -law.bankLimit, law.bankLimit) - y[BANK]!) / ROLLS;
}

/** Time over which the change of what is wanted is taken, s. */
const GLANCE = 1e-4;
const slope = new Float64Array(SIZE);
const glance = new Float64Array(SIZE);

/** How fast what is wanted changes along the flight, m/s². The balance is of a moment later afterwards. */
function wantedChange(craft: Craft, law: Law, y: Float64Array, b: Balance): number {
  // What hangs on nothing that moves needs no second look.
  if (law.path === 'rate') return 0;
  move(craft, law, y, b, slope);
  const now = b.wanted;
  for (let i = 0; i < SIZE; i++) glance[i] = y[i]! + GLANCE * slope[i]!;
  move(craft, law, glance, b, null);
  return (b.wanted - now) / GLANCE;
}

/** Change of the vertical speed, m/s². The balance is that of the state afterwards. */
export function bendOf(craft: Craft, law: Law, y: Float64Array, b: Balance): number {
  const change = law.slew === 0 ? wantedChange(craft, law, y, b) : law.slew * law.load;
  move(craft, law, y, b, null);
  return change;
}

/** A vertical speed this near to what is wanted is what is wanted, m/s. */
const THERE = 1e-6;
/** A change this much below the load factor is followed. */
const FOLLOWS = 1 - 1e-6;

/** After an event: whether the vertical speed is what is wanted, or which way it has to go. The state's is set. */
export function settleRise(craft: Craft, law: Law, y: Float64Array, b: Balance): void {
  law.slew = 1;
  move(craft, law, y, b, null);
  const off = b.wanted - y[W]!;
  if (Math.abs(off) > 2 * THERE) {
    law.slew = off > 0 ? 1 : -1;
    return;
  }
  law.slew = 0;
  const change = wantedChange(craft, law, y, b);
  if (Math.abs(change) < law.load) y[W] = b.wanted;
  else law.slew = change > 0 ? 1 : -1;
}

/** Nil or more when the vertical speed has come to what is wanted, or can't follow it any more. The balance is that of the state. */
export function riseMargin(craft: Craft, law: Law, y: Float64Array, b: Balance): number {
  if (law.slew !== 0) return -(b.wanted - y[W]!) * law.slew - THERE;
  return Math.abs(wantedChange(craft, law, y, b)) - law.load / FOLLOWS;
}
