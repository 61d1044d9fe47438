/**
 * The equations of motion of a point mass and the laws that steer it (D2 of the project's reference): height, true speed, vertical
 * speed, thrust, bank, heading and place. Between two events a law is smooth; what jumps is changed from outside, between steps.
 *   dV/dt = (T − D)/m − g w/V + w dU/dh     dw/dt = (wanted − w)/τ, within a load factor     dT/dt = (goal − T)/lag
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
/** Lag of the vertical speed behind what is wanted, s; of the bank, s; bank for each radian of heading. */
const SETTLES = 0.15;
const ROLLS = 1.2;
const BANK_GAIN = 1.5;

export type PathLaw = 'speed' | 'share' | 'rate' | 'capture' | 'level' | 'glide';
export type ThrustLaw = 'rating' | 'govern' | 'hold';

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
};

/** What stands between state and slope, for whoever asks. N, m/s, m/s². */
export type Balance = {
  readonly air: AirNow;
  drag: number;
  thrust: number;
  excess: number;
  wanted: number;
  lift: number;
  acceleration: number;
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
  lift: 1,
  acceleration: 0,
  groundSpeed: 0,
  ground: [0, 0],
});

/** The forces at a state and the thrust that the law asks for; returns that goal, N. */
function weigh(craft: Craft, law: Law, y: Float64Array, b: Balance): number {
  const speed = y[V]!;
  craft.airAt(y[H]!, b.air);
  b.lift = y[BANK] === 0 ? 1 : 1 / Math.cos(y[BANK]!);
  b.drag = craft.drag(b.air, speed, law.zero, law.induced, b.lift);
  let goal: number;
  if (law.thrust === 'rating') goal = craft.thrust(b.air, speed, y[H]!, law.rating, law.running);
  else {
    let wanted = 0;
    if (law.thrust === 'govern' && law.target > 0) {
      const short = (law.target - calibrated(speed, b.air)) / AHEAD_THRUST;
      wanted = clamp(short, -MOST_ACCELERATION, MOST_ACCELERATION);
    }
    const asked = b.drag + craft.mass * ((GRAVITY * y[W]!) / speed - law.shear * y[W]! + wanted);
    const idle = craft.thrust(b.air, speed, y[H]!, 'idle', law.running);
    goal = clamp(asked, idle, craft.thrust(b.air, speed, y[H]!, law.limit, law.running));
  }
  b.thrust = law.up === 0 ? goal : y[T]!;
  b.excess = (b.thrust - b.drag) / craft.weight;
  return goal;
}

/** The vertical speed that the law asks for, m/s. */
function pathWanted(law: Law, y: Float64Array, b: Balance, along: number): number {
  const speed = y[V]!;
  switch (law.path) {
    case 'speed': {
      let wanted = 0;
      if (law.target > 0) {
        const short = (law.target - calibrated(speed, b.air)) / AHEAD;
        wanted = clamp(short, -MOST_ACCELERATION, MOST_ACCELERATION);
      }
      const rise = (GRAVITY * b.excess - wanted) / (GRAVITY / speed - law.shear);
      return clamp(rise, -speed * STEEPEST, speed * STEEPEST);
    }
    case 'share': {
      // At least the least rate, but never so much that the speed falls.
      const whole = speed * b.excess;
      return Math.min(Math.max(law.share * whole, Math.min(law.least, whole)), speed * STEEPEST);
    }
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
      return -along * law.slope;
  }
}

/** Fills the balance and, where asked, the slope of the state. */
export function move(craft: Craft, law: Law, y: Float64Array, b: Balance, into: Float64Array | null): void {
  const goal = weigh(craft, law, y, b);
  const speed = y[V]!;
  const rise = y[W]!;
  const flat = Math.sqrt(Math.max(speed * speed - rise * rise, 0));
  const head = law.wind + law.shear * (y[H]! - law.elevation);
  let along = flat - head;
  if (law.turning) {
    const east = flat * Math.sin(y[HEADING]!) - head * Math.sin(law.track);
    const north = flat * Math.cos(y[HEADING]!) - head * Math.cos(law.track);
    along = Math.hypot(east, north);
    b.ground[0] = east;
    b.ground[1] = north;
  } else {
    b.ground[0] = along * Math.sin(law.track);
    b.ground[1] = along * Math.cos(law.track);
  }
  b.groundSpeed = along;
  // The sink of a glide path goes by the true speed, as the approach study has it: a thousandth more than along the ground.
  b.wanted = pathWanted(law, y, b, along + speed - flat);
  // On the parabola of a capture the wanted rate itself falls: what is known is not left to the lag.
  const known = law.path === 'capture' && b.wanted !== 0 ? (-law.capture * rise) / Math.abs(b.wanted) : 0;
  b.acceleration = clamp((b.wanted - rise) / SETTLES + known, -law.load, law.load);
  if (into === null) return;
  into[H] = rise;
  into[V] = (b.thrust - b.drag) / craft.mass - (GRAVITY * rise) / speed + law.shear * rise;
  into[W] = b.acceleration;
  into[T] = law.up === 0 ? 0 : (goal - y[T]!) / (goal > y[T]! ? law.up : law.down);
  into[X] = along;
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
