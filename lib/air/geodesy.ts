/**
 * Distance, course and cross-track on the ellipsoid WGS 84, by Karney's geodesics (`geographiclib-geodesic`), or on a
 * sphere where a published figure was made for one. Positions are geographic; courses are true, 0° up to 360°.
 */
import * as geographic from 'geographiclib-geodesic';
import { assert } from '../base/assert.ts';
import { metresToMiles, milesToMetres } from '../units/convert.ts';
import { type Degrees, degrees, type Metres, metres, type NauticalMiles } from '../units/quantity.ts';
import { normalise } from './wind.ts';

// The library is one object: bundlers hand out its parts, Node hands out the object as a default.
const library = ((geographic as { readonly default?: typeof geographic }).default ?? geographic).Geodesic;

/** North and east are positive. */
export interface Position {
  readonly latitude: Degrees;
  readonly longitude: Degrees;
}

/** The shape of the earth that is measured on. */
export type Figure = InstanceType<typeof library.Geodesic>;
export const WGS84: Figure = library.WGS84;
export const sphere = (radius: Metres): Figure => new library.Geodesic(radius, 0);

/** Latitude −90° to 90°; a longitude may go round, it is brought to −180° to 180°. */
export function position(latitude: number, longitude: number): Position {
  assert(Math.abs(latitude) <= 90, `${latitude}° is no latitude`);
  const round = normalise(degrees(longitude));
  return { latitude: degrees(latitude), longitude: degrees(round > 180 ? round - 360 : round) };
}

export interface Leg {
  readonly distance: Metres;
  /** True course where the leg begins, and where it ends. */
  readonly course: Degrees;
  readonly arriving: Degrees;
}

/** The shortest way between two positions. Where there are several (opposite points) one of them; between equal ones course 180°. */
export function leg(from: Position, to: Position, on: Figure = WGS84): Leg {
  const found = on.Inverse(from.latitude, from.longitude, to.latitude, to.longitude);
  return {
    distance: metres(found.s12 ?? 0),
    course: normalise(degrees(found.azi1 ?? 0)),
    arriving: normalise(degrees(found.azi2 ?? 0)),
  };
}

export const distance = (from: Position, to: Position): NauticalMiles => metresToMiles(leg(from, to).distance);
export const course = (from: Position, to: Position): Degrees => leg(from, to).course;

export interface Arrival {
  readonly at: Position;
  readonly arriving: Degrees;
}

/** Where one comes to on a course over a distance; a negative distance goes back. */
export function travel(from: Position, along: Degrees, length: Metres, on: Figure = WGS84): Arrival {
  const found = on.Direct(from.latitude, from.longitude, along, length);
  return {
    at: position(found.lat2 ?? 0, found.lon2 ?? 0),
    arriving: normalise(degrees(found.azi2 ?? 0)),
  };
}

export const travelMiles = (from: Position, along: Degrees, length: NauticalMiles): Position =>
  travel(from, along, milesToMetres(length)).at;

export interface Offset {
  /** How far beside the course: right is positive. */
  readonly cross: Metres;
  /** How far along it from the start to the point abeam; behind is negative. */
  readonly along: Metres;
  readonly abeam: Position;
}

/** Rounds after which an offset counts as found; two or three do for any distance of a flight. */
const ROUNDS = 12;
/** Metres of remaining along-track distance at which the point abeam is found. */
const CLOSE = 1e-6;

/**
 * Cross-track and along-track of a position against a course from a start. The point abeam is found by repeating the
 * spherical solution on the ellipsoid from each better start; undefined only beyond a quarter of the earth, which throws.
 */
export function offset(start: Position, along: Degrees, point: Position, on: Figure = WGS84): Offset {
  let gone = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const base = travel(start, along, metres(gone), on);
    const to = leg(base.at, point, on);
    const aside = ((to.course - base.arriving) * Math.PI) / 180;
    const arc = to.distance / on.a;
    assert(arc < Math.PI / 2, 'a cross-track distance is not measured beyond a quarter of the earth');
    const step = on.a * Math.atan2(Math.sin(arc) * Math.cos(aside), Math.cos(arc));
    if (Math.abs(step) < CLOSE) {
      return { cross: metres(Math.sign(Math.sin(aside)) * to.distance + 0), along: metres(gone), abeam: base.at };
    }
    gone += step;
  }
  throw new Error(`the point abeam was not found in ${ROUNDS} rounds`);
}
