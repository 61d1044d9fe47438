/**
 * The sheet's drag and thrust as flat numbers, for one flight: what `lib/aircraft/performance.ts` says over any arithmetic, said
 * once more for doubles alone, because a flight asks it thousands of times. A test holds the two together to the last bits.
 */
import {
  GAS,
  GRAVITY,
  LAPSE,
  PRESSURE_EXPONENT,
  SCALE_HEIGHT,
  SEA_PRESSURE,
  SEA_TEMPERATURE,
  TROPOPAUSE,
} from '../air/atmosphere.ts';
import type { Rating } from '../aircraft/performance.ts';
import type { Sheet } from '../aircraft/sheet.ts';
import { FOOT } from '../units/convert.ts';

/** What the engine may have changed to ask how sensitive a flight is: drag and thrust times so much. */
export type Factors = { readonly drag: number; readonly thrust: number };
export const AS_THE_SHEET: Factors = { drag: 1, thrust: 1 };

/** Air at one height, written over again and again. SI units; `head` is the Mach number's square that V² is times. */
export type AirNow = { delta: number; density: number; sound: number; densityPower: number };

export type Craft = {
  readonly mass: number;
  readonly weight: number;
  readonly detents: readonly string[];
  /** Fills the air at a height, m. */
  readonly airAt: (height: number, into: AirNow) => void;
  /** N at a true speed m/s, with the zero-lift and the induced factor in force, and the load factor. */
  readonly drag: (air: AirNow, speed: number, zero: number, induced: number, load: number) => number;
  /** N of all running engines at a rating; idle included. */
  readonly thrust: (air: AirNow, speed: number, height: number, rating: Rating, running: number) => number;
  /** CD0 of detent, gear, speedbrake and engines out; k of the detent. */
  readonly zeroLift: (detent: number, gear: boolean, brake: boolean, out: number) => number;
  readonly inducedOf: (detent: number) => number;
  readonly engines: number;
};

/** kg, °C from standard. */
export function craftOf(sheet: Sheet, mass: number, temperature: number, factors: Factors = AS_THE_SHEET): Craft {
  const { drag, thrust } = sheet;
  const area = drag.wingArea.value;
  const weight = mass * GRAVITY;
  const power = thrust.densityPower.value;
  const polynomial = thrust.mach.polynomial;
  const wave = drag.wave.factor;
  const from = drag.wave.fromMach;
  const left = 1 - thrust.lossPerDegree.value * Math.max(temperature - thrust.flatRatedTo.value, 0);
  const { at, gives } = thrust.climbRating;
  const fixed = {
    'take-off': thrust.goAround.value,
    'go-around': thrust.goAround.value,
    continuous: thrust.maximumContinuous.value,
  };

  const climb = (height: number): number => {
    const altitude = height / FOOT;
    let sum = gives[0]!;
    for (let i = 0; i < at.length - 1; i++) {
      const slope = (gives[i + 1]! - gives[i]!) / (at[i + 1]! - at[i]!);
      sum += slope * (Math.min(Math.max(altitude, at[i]!), at[i + 1]!) - at[i]!);
    }
    return sum;
  };

  return {
    mass,
    weight,
    detents: sheet.detents.map((detent) => detent.name),
    engines: thrust.engines,
    airAt(height, into) {
      const standard = SEA_TEMPERATURE - LAPSE * Math.min(height, TROPOPAUSE);
      // Powers of one ratio by its logarithm: the air is asked for at every stage of every step.
      const warmth = Math.log(standard / SEA_TEMPERATURE);
      let ln = warmth * PRESSURE_EXPONENT;
      if (height > TROPOPAUSE) ln += (TROPOPAUSE - height) / SCALE_HEIGHT;
      const delta = Math.exp(ln);
      const real = standard + temperature;
      into.delta = delta;
      into.density = (SEA_PRESSURE * delta) / (GAS * real);
      into.sound = Math.sqrt(1.4 * GAS * real);
      // The lapse of thrust goes by the density of the standard day.
      into.densityPower = Math.exp(power * (ln - warmth));
    },
    drag(air, speed, zero, induced, load) {
      const pressing = (area / 2) * air.density * speed * speed;
      const over = Math.max(speed / air.sound - from, 0);
      const lift = weight * load;
      return ((zero + wave * over * over) * pressing + (induced * lift * lift) / pressing) * factors.drag;
    },
    thrust(air, speed, height, rating, running) {
      const mach = speed / air.sound;
      const whole = running * thrust.static.value * air.densityPower * factors.thrust;
      if (rating === 'idle') return whole * (thrust.idle.fraction + thrust.idle.perMach * mach);
      let lapse = 0;
      for (let i = polynomial.length - 1; i >= 0; i--) lapse = lapse * mach + polynomial[i]!;
      return whole * lapse * left * (rating === 'climb' ? climb(height) : fixed[rating]);
    },
    zeroLift: (detent, gear, brake, out) =>
      drag.cd0.value +
      sheet.detents[detent]!.drag.cd0 +
      (gear ? drag.gear.value : 0) +
      (brake ? drag.speedbrake.value : 0) +
      out * drag.engineOut.value,
    inducedOf: (detent) => sheet.detents[detent]!.drag.k,
  };
}

export const newAir = (): AirNow => ({ delta: 1, density: 1.225, sound: 340, densityPower: 1 });
