/**
 * Direct to a waypoint: the turn from the present track by the shorter side, then the geodesic to it. What the route
 * would have been is told beside it. No fuel is claimed; limits of the waypoints left out are not judged here.
 */
import { course, distance, type Position } from '../air/geodesy.ts';
import { normalise, turnTo, type Wind } from '../air/wind.ts';
import { err, ok, type Result } from '../base/result.ts';
import { type Degrees, degrees } from '../units/quantity.ts';
import { heldCourse, placed, turn } from './lateral.ts';

/** `track` flown now, ° true; `route` the waypoints up to and with the one cleared to, in order; kt, °. */
export type DirectPlan = {
  readonly from: Position;
  readonly track: Degrees;
  readonly route: readonly Position[];
  readonly tas: number;
  readonly bank: number;
  readonly wind: Wind;
};
export type Direct = {
  readonly turn: 'left' | 'right';
  /** Of track, °, without a sign. */
  readonly change: number;
  /** Where the turn ends, and the course, heading and ground speed from there. */
  readonly out: Position;
  readonly course: number;
  readonly heading: number;
  readonly groundSpeed: number;
  /** Of the turn, of the leg behind it, and both. NM and minutes. */
  readonly turnMiles: number;
  readonly legMiles: number;
  readonly miles: number;
  readonly minutes: number;
  /** By the route from here, and what the direct leg saves; negative where it is longer. */
  readonly routeMiles: number;
  readonly routeMinutes: number;
  readonly milesSaved: number;
  readonly minutesSaved: number;
};

/** Rounds in which the course behind the turn settles; each is many times nearer than the one before. */
const ROUNDS = 60;
/** Degrees: a course this near is the same. */
const SAME = 1e-9;

/** The way to the last waypoint of the route; a sentence where it can't be flown so. */
export function directTo(plan: DirectPlan): Result<Direct, string> {
  const { from, track, route } = plan;
  const to = route.at(-1);
  if (to === undefined) return err('No waypoint is named.');
  const held = heldCourse(plan, track);
  if (!held.ok) return held;
  let leg = course(from, to);
  const side = turnTo(track, leg) < 0 ? 'left' : 'right';
  for (let round = 0; round < ROUNDS; round += 1) {
    const behind = heldCourse(plan, leg);
    if (!behind.ok) return behind;
    const arc = turn(track, plan, held.value.heading, behind.value.heading);
    const out = placed(from, track, arc.to);
    const next = course(out, to);
    if (Math.abs(turnTo(leg, next)) > SAME) {
      leg = next;
      continue;
    }
    const rest = distance(out, to);
    if (distance(from, to) < rest && arc.miles > rest + distance(from, to)) break;
    const byRoute = alongRoute(plan);
    if (!byRoute.ok) return byRoute;
    const minutes = (arc.hours + rest / behind.value.speed) * 60;
    const miles = arc.miles + rest;
    return ok({
      turn: side,
      change: Math.abs(turnTo(track, leg)),
      out,
      course: normalise(degrees(leg)),
      heading: behind.value.heading,
      groundSpeed: behind.value.speed,
      turnMiles: arc.miles,
      legMiles: rest,
      miles,
      minutes,
      routeMiles: byRoute.value.miles,
      routeMinutes: byRoute.value.minutes,
      milesSaved: byRoute.value.miles - miles,
      minutesSaved: byRoute.value.minutes - minutes,
    });
  }
  return err('The waypoint lies inside the turn: it is reached only by turning away first.');
}

/** Geodesic legs, each at its own ground speed; corners are flown by within the legs. */
function alongRoute({ from, route, ...flying }: DirectPlan): Result<{ miles: number; minutes: number }, string> {
  let [at, miles, minutes] = [from, 0, 0];
  for (const next of route) {
    const leg = distance(at, next);
    if (leg > 0) {
      const held = heldCourse(flying, course(at, next));
      if (!held.ok) return held;
      minutes += (leg / held.value.speed) * 60;
    }
    miles += leg;
    at = next;
  }
  return ok({ miles, minutes });
}
