/**
 * Wind on a course and on a runway. Directions are from where it blows, courses where one goes, all from one north.
 * The triangle is the law of sines: sin(drift) = (wind/TAS) sin(angle), ground speed = TAS cos(drift) − wind cos(angle).
 */
import { assert } from '../base/assert.ts';
import { err, ok, type Result } from '../base/result.ts';
import { degreesToRadians, radiansToDegrees } from '../units/convert.ts';
import {
  type Degrees,
  degrees,
  type GroundSpeed,
  groundSpeed,
  type Knots,
  knots,
  radians,
  type Tas,
} from '../units/quantity.ts';

export interface Wind {
  readonly from: Degrees;
  readonly speed: Knots;
}

/** 0° up to but not including 360°. */
export const normalise = (angle: Degrees): Degrees => {
  const turned = ((angle % 360) + 360) % 360;
  // A hair below north rounds up to a whole turn.
  return degrees(turned === 360 ? 0 : turned + 0);
};

/** The way from one direction to another, more than −180° and up to 180°; right is positive. */
export const turnTo = (from: Degrees, to: Degrees): Degrees => {
  const right = normalise(degrees(to - from));
  return degrees(right > 180 ? right - 360 : right);
};

const sine = (angle: number): number => Math.sin(degreesToRadians(degrees(angle)));
const cosine = (angle: number): number => Math.cos(degreesToRadians(degrees(angle)));

/** Wind against a course; a tailwind is negative. */
export const headwind = (wind: Wind, course: Degrees): Knots => knots(wind.speed * cosine(wind.from - course));
/** Wind along a course; a headwind is negative. */
export const tailwind = (wind: Wind, course: Degrees): Knots => knots(0 - headwind(wind, course));
/** Wind across a course; from the right is positive. */
export const crosswind = (wind: Wind, course: Degrees): Knots => knots(wind.speed * sine(wind.from - course));

/** Strongest wind from this direction whose part across the course is within a limit; infinite along the course. */
export const windForCrosswind = (limit: Knots, from: Degrees, course: Degrees): number =>
  limit / Math.abs(sine(from - course));
/** Weakest wind from this direction that has this part against the course; fails when it can't have any. */
export function windForHeadwind(wanted: Knots, from: Degrees, course: Degrees): Result<Knots, string> {
  const share = cosine(from - course);
  if (share <= 1e-12) return err(`A wind from ${from}° is never against a course of ${course}°.`);
  return ok(knots(wanted / share));
}

export interface Triangle {
  readonly heading: Degrees;
  /** Heading less course: right is positive. */
  readonly correction: Degrees;
  readonly groundSpeed: GroundSpeed;
}

/** Heading and ground speed that hold a course. Fails when the wind is stronger than the aircraft. */
export function holdCourse(course: Degrees, speed: Tas, wind: Wind): Result<Triangle, string> {
  assert(speed > 0, `an aircraft at ${speed} kt holds no course`);
  const across = crosswind(wind, course) / speed;
  if (Math.abs(across) > 1)
    return err(`A course of ${course}° can't be held at ${speed} kt: the crosswind is stronger.`);
  const correction = radiansToDegrees(radians(Math.asin(across)));
  const made = speed * cosine(correction) - headwind(wind, course);
  if (made <= 0) return err(`A course of ${course}° can't be flown at ${speed} kt: the headwind is stronger.`);
  return ok({ heading: normalise(degrees(course + correction)), correction, groundSpeed: groundSpeed(made) });
}

/** The wind met, from what is flown and what is made good. */
export function windMet(heading: Degrees, speed: Tas, track: Degrees, made: GroundSpeed): Wind {
  const north = speed * cosine(heading) - made * cosine(track);
  const east = speed * sine(heading) - made * sine(track);
  return {
    from: normalise(radiansToDegrees(radians(Math.atan2(east, north)))),
    speed: knots(Math.hypot(north, east)),
  };
}

/** Speed over ground along a path: true speed × cos γ less the wind against it (D2 of the project's reference). */
export const speedOverGround = (speed: Tas, path: Degrees, against: Knots): GroundSpeed =>
  groundSpeed(speed * cosine(path) - against);
