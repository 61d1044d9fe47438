/**
 * Forces on the aircraft as a point mass, from the drag and thrust of its sheet. Written over `Arithmetic`, so that what is
 * flown and what is proven is one text. Not for dispatch: no ground roll, no handling, no asymmetric control.
 *
 * Source of the formulas: textbook point mass, D2 of the project's reference: lift carries n W g, parabolic polar with a
 * compressibility rise, thrust lapse with density and Mach, loss above the flat-rated temperature.
 */
import { machOfCalibrated } from '../air/airspeed.ts';
import {
  densityOf,
  densityRatio,
  GRAVITY,
  pressureAt,
  pressureRatio,
  soundSpeedOf,
  temperatureAt,
} from '../air/atmosphere.ts';
import type { Arithmetic } from '../base/arithmetic.ts';
import { assert } from '../base/assert.ts';
import { detentNamed } from './limits.ts';
import type { Sheet } from './sheet.ts';

/** Metres in a foot; m/s in a knot. Exact. */
const FOOT = 0.3048;
const KNOT = 1852 / 3600;

export type Rating = 'take-off' | 'go-around' | 'climb' | 'continuous' | 'idle';

/** How the aircraft is set. `share` scales the thrust, as where engines still spool up; 1 unless said. */
export type Setting = {
  readonly detent: string;
  readonly gear: 'up' | 'down';
  readonly speedbrake?: boolean;
  readonly enginesOut?: number;
  readonly rating: Rating;
  readonly share?: number;
};

/** Where and how fast: calibrated speed kt, pressure altitude ft, °C from standard, mass kg, load factor (1 unless said). */
export type Moment<N> = {
  readonly speed: N;
  readonly altitude: N;
  readonly temperature: N;
  readonly weight: N;
  readonly loadFactor?: N;
};

/** Forces in N, true speed in m/s. `excess` is (thrust − drag)/(W g): the still-air gradient at constant true speed. */
export type Forces<N> = {
  readonly thrust: N;
  readonly drag: N;
  readonly lift: N;
  readonly trueSpeed: N;
  readonly mach: N;
  readonly excess: N;
};

/** Throws when the sheet has no such detent. */
export function forces<N>(a: Arithmetic<N>, sheet: Sheet, setting: Setting, moment: Moment<N>): Forces<N> {
  const height = a.mul(moment.altitude, a.of(FOOT));
  const delta = pressureRatio(a, height);
  const temperature = temperatureAt(a, height, moment.temperature);
  const mach = machOfCalibrated(a, a.mul(moment.speed, a.of(KNOT)), delta);
  const trueSpeed = a.mul(mach, soundSpeedOf(a, temperature));
  const density = densityOf(a, pressureAt(a, height), temperature);
  const force = a.mul(moment.weight, a.of(GRAVITY));
  const lift = moment.loadFactor === undefined ? force : a.mul(force, moment.loadFactor);
  const pressing = a.mul(a.mul(a.of(sheet.drag.wingArea.value / 2), density), a.pow(trueSpeed, 2));
  const drag = dragOf(a, sheet, setting, pressing, lift, mach);
  const thrust = thrustOf(a, sheet, setting, height, moment, mach);
  return { thrust, drag, lift, trueSpeed, mach, excess: a.div(a.sub(thrust, drag), force) };
}

/** CD = CD0 + ΔCD (detent, gear, speedbrake, engines out) + k CL² + kw (M − Mc)² above Mc; as a force, N. */
function dragOf<N>(a: Arithmetic<N>, sheet: Sheet, setting: Setting, pressing: N, lift: N, mach: N): N {
  const detent = detentNamed(sheet, setting.detent);
  assert(detent !== null, `${sheet.type} has no detent ${setting.detent}`);
  const { drag } = sheet;
  const fixed =
    drag.cd0.value +
    detent.drag.cd0 +
    (setting.gear === 'down' ? drag.gear.value : 0) +
    (setting.speedbrake ? drag.speedbrake.value : 0) +
    (setting.enginesOut ?? 0) * drag.engineOut.value;
  const over = a.max(a.sub(mach, a.of(drag.wave.fromMach)), a.of(0));
  const parasite = a.add(a.of(fixed), a.mul(a.of(drag.wave.factor), a.pow(over, 2)));
  // k CL² q S is k L²/(q S): one division, and lift enters once.
  const induced = a.div(a.mul(a.of(detent.drag.k), a.pow(lift, 2)), pressing);
  return a.add(a.mul(parasite, pressing), induced);
}

/** T = engines · static · σ^p of the standard day · polynomial of M · rating, less the loss on a hot day; N. */
function thrustOf<N>(a: Arithmetic<N>, sheet: Sheet, setting: Setting, height: N, moment: Moment<N>, mach: N): N {
  const { thrust } = sheet;
  const running = thrust.engines - (setting.enginesOut ?? 0);
  const sigma = densityRatio(a, height, a.of(0));
  const air = a.mul(
    a.of(running * thrust.static.value * (setting.share ?? 1)),
    a.pow(sigma, thrust.densityPower.value),
  );
  if (setting.rating === 'idle') {
    return a.mul(air, a.add(a.of(thrust.idle.fraction), a.mul(a.of(thrust.idle.perMach), mach)));
  }
  const [first = 0, ...higher] = thrust.mach.polynomial;
  const lapse = higher.reduce((sum, factor, i) => a.add(sum, a.mul(a.of(factor), a.pow(mach, i + 1))), a.of(first));
  const hot = a.max(a.sub(moment.temperature, a.of(thrust.flatRatedTo.value)), a.of(0));
  const left = a.sub(a.of(1), a.mul(a.of(thrust.lossPerDegree.value), hot));
  return a.mul(a.mul(a.mul(air, lapse), left), ratingOf(a, sheet, setting.rating, moment.altitude));
}

/** Share of the static thrust that a rating allows at a pressure altitude, ft. */
export function ratingOf<N>(a: Arithmetic<N>, sheet: Sheet, rating: Exclude<Rating, 'idle'>, altitude: N): N {
  const { thrust } = sheet;
  if (rating === 'continuous') return a.of(thrust.maximumContinuous.value);
  if (rating !== 'climb') return a.of(thrust.goAround.value);
  return rising(a, thrust.climbRating.at, thrust.climbRating.gives, altitude);
}

/** Linear between points and constant beyond them, said with `min` and `max` alone. */
function rising<N>(a: Arithmetic<N>, at: readonly number[], gives: readonly number[], x: N): N {
  let sum = a.of(gives[0]!);
  for (let i = 0; i < at.length - 1; i++) {
    const slope = (gives[i + 1]! - gives[i]!) / (at[i + 1]! - at[i]!);
    const inside = a.min(a.max(x, a.of(at[i]!)), a.of(at[i + 1]!));
    sum = a.add(sum, a.mul(a.of(slope), a.sub(inside, a.of(at[i]!))));
  }
  return sum;
}
