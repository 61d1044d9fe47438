/**
 * Flying over the ground in straight legs and banked turns, in a steady wind: what deviations and direct legs are built
 * from. Points are NM along a course and to the right of it; time in hours. No map, no cell and no crew in here.
 */
import { course as courseOf, type Position, travelMiles } from '../air/geodesy.ts';
import { turnRate } from '../air/turn.ts';
import { holdCourse, normalise, turnTo, type Wind } from '../air/wind.ts';
import { ok, type Result } from '../base/result.ts';
import { degreesToRadians } from '../units/convert.ts';
import { type Degrees, degrees, knots, nauticalMiles, tas } from '../units/quantity.ts';

/** True speed kt, bank above 0° and below 90°, wind from true north, held throughout. */
export type Flying = { readonly tas: number; readonly bank: number; readonly wind: Wind };
/** NM along a course from its start, and to the right of it. */
export type Point = { readonly along: number; readonly right: number };
/** A piece of a path, from its beginning: where it leads, its points on the way, how far over the ground, how long (h). */
export type Piece = {
  readonly to: Point;
  readonly through: readonly (Point & { readonly hours: number })[];
  readonly miles: number;
  readonly hours: number;
};

const sin = (angle: number): number => Math.sin(degreesToRadians(degrees(angle)));
const cos = (angle: number): number => Math.cos(degreesToRadians(degrees(angle)));

/** Degrees of turn between two points on the way: a chord this long lies within 0.0004 of the radius of the arc. */
const CHORD = 3;

/** The air mass goes this way, kt along and to the right of a course. */
export const windOn = (wind: Wind, course: number): Point => ({
  along: -wind.speed * cos(wind.from - course),
  right: -wind.speed * sin(wind.from - course),
});

/** Heading and ground speed that hold a course; fails where the wind is stronger than the aircraft. */
export function heldCourse(
  { tas: speed, wind }: Flying,
  course: number,
): Result<{ readonly heading: number; readonly speed: number }, string> {
  const held = holdCourse(degrees(course), tas(speed), wind);
  return held.ok ? ok({ heading: held.value.heading, speed: held.value.groundSpeed }) : held;
}

/** Straight on along a course held against the wind, at its ground speed. Frame: `on`, a course too. */
export function straight(on: number, course: number, speed: number, miles: number): Piece {
  const to = { along: miles * cos(course - on), right: miles * sin(course - on) };
  const hours = miles / speed;
  return { to, through: [{ ...to, hours }], miles: Math.abs(miles), hours };
}

/**
 * A turn at constant bank by the shorter way, or by the side given. In the air it is the arc of a circle,
 * r [sin ψ, cos ψ] between the headings; the wind carries it (a trochoid over the ground).
 */
export function turn(
  on: number,
  { tas: speed, bank, wind }: Flying,
  from: number,
  to: number,
  side?: 'left' | 'right',
): Piece {
  const shorter = turnTo(degrees(from), degrees(to));
  const change = side === undefined ? shorter : around(shorter, side);
  const perHour = turnRate(knots(speed), degrees(bank)) * 3_600;
  const radius = speed / degreesToRadians(degrees(perHour));
  const way = Math.sign(change);
  const drift = windOn(wind, on);
  const at = (turned: number) => {
    const hours = Math.abs(turned) / perHour;
    const [first, last] = [from - on, from - on + turned];
    return {
      along: way * radius * (sin(last) - sin(first)) + drift.along * hours,
      right: way * radius * (cos(first) - cos(last)) + drift.right * hours,
      hours,
    };
  };
  const steps = Math.max(1, Math.ceil(Math.abs(change) / CHORD));
  const through = Array.from({ length: steps }, (_, index) => at((change * (index + 1)) / steps));
  const points = [{ along: 0, right: 0 }, ...through];
  const miles = points.slice(1).reduce((sum, point, index) => sum + between(points[index]!, point), 0);
  const end = at(change);
  return { to: { along: end.along, right: end.right }, through, miles, hours: end.hours };
}

/** The change of heading by one side only, 0° up to 360°, right positive. */
function around(shorter: number, side: 'left' | 'right'): number {
  const right = normalise(degrees(shorter));
  return side === 'right' ? right : right === 0 ? 0 : right - 360;
}

export const between = (a: Point, b: Point): number => Math.hypot(a.along - b.along, a.right - b.right);
export const added = (a: Point, b: Point): Point => ({ along: a.along + b.along, right: a.right + b.right });

/** Where a point lies on the earth: along the geodesic of the course, then square to it. */
export function placed(from: Position, course: Degrees, { along, right }: Point): Position {
  const abeam = travelMiles(from, course, nauticalMiles(along));
  if (right === 0) return abeam;
  const ahead = travelMiles(from, course, nauticalMiles(along + 1));
  const square = degrees(courseOf(abeam, ahead) + (right > 0 ? 90 : -90));
  return travelMiles(abeam, normalise(square), nauticalMiles(Math.abs(right)));
}
