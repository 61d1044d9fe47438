/**
 * Around a cell and back: leave the track by an angle, fly along it at an offset, rejoin by an angle. The cell is the
 * box that its echo fills on the radar, moving; the aircraft keeps the clearance wanted from its edge all the way.
 * Geometry only: no fuel is claimed, no cell is forecast, and what grows is not in here.
 */
import type { Position } from '../air/geodesy.ts';
import type { Wind } from '../air/wind.ts';
import { assert } from '../base/assert.ts';
import { err, ok, type Result } from '../base/result.ts';
import type { Degrees } from '../units/quantity.ts';
import { type Box, closest } from './deviation-clear.ts';
import { added, heldCourse, type Piece, type Point, placed, straight, turn, windOn } from './lateral.ts';

/** Distances NM, speeds kt, angles °, true; `lead` s: what crew and controller need before the turn. */
export type Plan = {
  readonly from: Position;
  readonly course: Degrees;
  /** Now: to its near edge along the track, how deep it is, its edges to the right of the track (left ones negative), and where it goes. */
  readonly cell: {
    readonly ahead: number;
    readonly depth: number;
    readonly left: number;
    readonly right: number;
    readonly toward: number;
    readonly speed: number;
  };
  readonly side: 'left' | 'right';
  readonly clearance: number;
  readonly leave: number;
  readonly rejoin: number;
  readonly tas: number;
  readonly bank: number;
  readonly wind: Wind;
  readonly lead: number;
};
export type PathPoint = Point & { readonly name: string; readonly at: Position; readonly minutes: number };
export type Deviated = {
  /** Of the parallel leg beside the track, NM. */
  readonly offset: number;
  /** `begin` first: the latest point at which the turn begins. */
  readonly points: readonly PathPoint[];
  readonly headings: { readonly leave: number; readonly along: number; readonly rejoin: number };
  /** From the near edge of the cell when the turn begins at the latest. */
  readonly toCell: number;
  /** What the step names: `toCell` and what the lead uses up, up to the next 5 NM. */
  readonly stepNames: number;
  /** Flown from the latest point to the track again, and how much more that is than the track. */
  readonly miles: number;
  readonly milesAdded: number;
  readonly minutesAdded: number;
  /** Nearest to the cell's edge on the whole path. */
  readonly closest: number;
  /** The latest point is behind already. */
  readonly tooLate: boolean;
};

/** Rings of a radar picture are read to this, NM. */
const RING = 5;
/** A latest point further behind than this is not searched for, NM. */
const FURTHEST = 500;
/** NM: near enough for a point that is searched for. */
const NEAR = 1e-7;

/** What the deviation takes, or a sentence why this one can't be flown. Angles above 0° and below 90°, clearance above nil. */
export function deviate(plan: Plan): Result<Deviated, string> {
  assert(plan.leave > 0 && plan.leave < 90 && plan.rejoin > 0 && plan.rejoin < 90, 'angles are above 0° and below 90°');
  assert(plan.clearance > 0 && plan.cell.depth >= 0 && plan.cell.left <= plan.cell.right, 'a cell has an inside');
  const sign = plan.side === 'right' ? 1 : -1;
  const legs = legsOf(plan, sign);
  if (!legs.ok) return legs;
  const found = searched(plan, sign, legs.value);
  if (!found.ok) return found;
  const { begin, path, offset } = found.value;
  const { cell, course, from, lead } = plan;
  const drift = driftOf(plan);
  const trackSpeed = legs.value.track.speed;
  const hoursTo = begin / trackSpeed;
  const toCell = cell.ahead + drift.along * hoursTo - begin;
  const end = path.points.at(-1)!;
  const miles = path.pieces.reduce((sum, piece) => sum + piece.miles, 0);
  const hours = path.pieces.reduce((sum, piece) => sum + piece.hours, 0);
  return ok({
    offset,
    points: path.points.map((point) => ({ ...point, at: placed(from, course, point) })),
    headings: { leave: legs.value.out.heading, along: legs.value.track.heading, rejoin: legs.value.back.heading },
    toCell,
    stepNames: Math.ceil((toCell + ((trackSpeed - drift.along) * lead) / 3_600) / RING - NEAR) * RING,
    miles,
    milesAdded: miles - (end.along - begin),
    minutesAdded: (hours - (end.along - begin) / trackSpeed) * 60,
    closest: nearest(plan, path),
    tooLate: begin < 0,
  });
}

type Held = { readonly heading: number; readonly speed: number };
type Legs = Readonly<Record<'track' | 'out' | 'back', Held>> & {
  readonly turns: Readonly<Record<'leave' | 'along' | 'rejoin' | 'home', Piece>>;
};

function legsOf(plan: Plan, sign: number): Result<Legs, string> {
  const { course } = plan;
  const track = heldCourse(plan, course);
  const out = heldCourse(plan, course + sign * plan.leave);
  const back = heldCourse(plan, course - sign * plan.rejoin);
  if (!track.ok) return track;
  if (!out.ok) return out;
  if (!back.ok) return back;
  const [on, leave, rejoin] = [track.value.heading, out.value.heading, back.value.heading];
  const turns = {
    leave: turn(course, plan, on, leave),
    along: turn(course, plan, leave, on),
    rejoin: turn(course, plan, on, rejoin),
    home: turn(course, plan, rejoin, on),
  };
  return ok({ track: track.value, out: out.value, back: back.value, turns });
}

/** How the cell moves over the ground, kt along and to the right of the track. */
const driftOf = ({ cell, course }: Plan): Point =>
  windOn({ from: (cell.toward + 180) as Degrees, speed: cell.speed as Wind['speed'] }, course);

type Path = {
  readonly pieces: readonly Piece[];
  readonly points: readonly (Point & { readonly name: string; readonly minutes: number })[];
  readonly startHours: number;
};

/** The path that begins its turn at `begin` NM, lies `offset` NM beside, and flies `beside` NM along the track there. */
function pathOf(plan: Plan, sign: number, legs: Legs, begin: number, offset: number, beside: number): Path {
  const { course } = plan;
  const { turns, track, out, back } = legs;
  const lateral = (...pieces: readonly Piece[]): number =>
    pieces.reduce((sum, piece) => sum + sign * piece.to.right, 0);
  const outMiles = (offset - lateral(turns.leave, turns.along)) / Math.sin((plan.leave * Math.PI) / 180);
  const backMiles = (offset + lateral(turns.rejoin, turns.home)) / Math.sin((plan.rejoin * Math.PI) / 180);
  const pieces = [
    turns.leave,
    straight(course, course + sign * plan.leave, out.speed, outMiles),
    turns.along,
    straight(course, course, track.speed, beside),
    turns.rejoin,
    straight(course, course - sign * plan.rejoin, back.speed, backMiles),
    turns.home,
  ];
  const names = ['latest point', '', '', 'beside the cell', 'turn back', '', '', 'on the track again'];
  const startHours = begin / track.speed;
  let [at, hours]: [Point, number] = [{ along: begin, right: 0 }, startHours];
  const points = [{ ...at, name: names[0]!, minutes: hours * 60 }];
  for (const [index, piece] of pieces.entries()) {
    at = added(at, piece.to);
    hours += piece.hours;
    if (names[index + 1] !== '') points.push({ ...at, name: names[index + 1]!, minutes: hours * 60 });
  }
  return { pieces, points, startHours };
}

const boxOf = ({ cell }: Plan): Box => ({
  near: cell.ahead,
  far: cell.ahead + cell.depth,
  left: cell.left,
  right: cell.right,
});
const nearest = (plan: Plan, path: Path, from = 0, to = 7): number =>
  closest(
    boxOf(plan),
    driftOf(plan),
    { begin: path.points[0]!, hours: path.startHours, pieces: path.pieces },
    from,
    to,
  );

/** The latest point, the offset that the parallel leg needs, and the shortest stay beside the cell. */
function searched(plan: Plan, sign: number, legs: Legs): Result<{ begin: number; path: Path; offset: number }, string> {
  const { clearance, cell } = plan;
  const drift = driftOf(plan);
  const closing = legs.track.speed - drift.along;
  if (closing <= 0) return err('The cell moves along the track as fast as the aircraft: it is not passed.');
  const slant = Math.hypot(closing, drift.right) / closing;
  const outward = sign * drift.right > 0;
  const edge = sign * (plan.side === 'right' ? cell.right : cell.left);
  const corner = cell.ahead + (outward ? cell.depth : 0);
  // Abeam the corner that comes nearest; when that is depends a little on the path, so it is found by repeating.
  const offsetFor = (begin: number): number => {
    let offset = edge + clearance;
    for (let round = 0; round < 60; round += 1) {
      const path = pathOf(plan, sign, legs, begin, offset, 0);
      const { along, minutes } = path.points[1]!;
      const abeam = (corner + legs.track.speed * (minutes / 60) - along) / closing;
      const next = edge + sign * drift.right * abeam + clearance * slant;
      if (Math.abs(next - offset) < NEAR) return next;
      offset = next;
    }
    return offset;
  };
  const [least, far] = [-FURTHEST, cell.ahead + cell.depth];
  // A parallel leg that ends behind the cell, wherever it begins.
  const past = (far + FURTHEST) * Math.max(1, legs.track.speed / closing);
  const clears = (begin: number): boolean =>
    nearest(plan, pathOf(plan, sign, legs, begin, offsetFor(begin), past), 0, 4) >= clearance - 1e-6;
  if (edge + clearance <= 0) return err('The track passes the cell at this clearance already.');
  if (!clears(least)) return err('The cell moves to this side too fast to be passed on it: plan the other side.');
  // Nobody turns away from a cell beside which, or behind which, he is.
  const abeam = (cell.ahead * legs.track.speed) / closing;
  const begin = lastWhere(clears, least, Math.max(least, abeam));
  const offset = offsetFor(begin);
  const short = pathOf(plan, sign, legs, begin, offset, 0);
  if (short.pieces[1]!.hours < 0 || short.pieces[5]!.hours < 0) {
    return err('The turns alone lead further from the track than the offset: plan smaller angles.');
  }
  const returns = (beside: number): boolean =>
    nearest(plan, pathOf(plan, sign, legs, begin, offset, -beside), 3, 7) >= clearance - 1e-6;
  const beside = -lastWhere(returns, -past, 0);
  return ok({ begin, offset, path: pathOf(plan, sign, legs, begin, offset, beside) });
}

/** The last place in a range up to which something holds, to NEAR. It holds at `from`. */
function lastWhere(holds: (at: number) => boolean, from: number, to: number): number {
  if (holds(to)) return to;
  let [yes, no] = [from, to];
  while (no - yes > NEAR) {
    const middle = (yes + no) / 2;
    if (holds(middle)) yes = middle;
    else no = middle;
  }
  return yes;
}
