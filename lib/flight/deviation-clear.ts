// How near a path comes to a moving box: seen from the box, it stands still and the path is bent by its movement.
import type { Piece, Point } from './lateral.ts';

/** Along the track and to the right of it, NM, at time nil. */
export type Box = { readonly near: number; readonly far: number; readonly left: number; readonly right: number };
type Flown = { readonly begin: Point; readonly hours: number; readonly pieces: readonly Piece[] };

/** Least distance over the pieces `from` up to, not including, `to`; nil where the path enters the box. */
export function closest(box: Box, drift: Point, flown: Flown, from: number, to: number): number {
  let start = flown.begin;
  let hours = flown.hours;
  let least = Number.POSITIVE_INFINITY;
  for (const [index, piece] of flown.pieces.entries()) {
    let last = seen(start, hours, drift);
    for (const point of piece.through) {
      const next = seen(
        { along: start.along + point.along, right: start.right + point.right },
        hours + point.hours,
        drift,
      );
      if (index >= from && index < to) least = Math.min(least, apart(last, next, box));
      last = next;
    }
    start = { along: start.along + piece.to.along, right: start.right + piece.to.right };
    hours += piece.hours;
  }
  return least;
}

const seen = (at: Point, hours: number, drift: Point): Point => ({
  along: at.along - drift.along * hours,
  right: at.right - drift.right * hours,
});

/** Of a stretch from a box that stands still: between an end and the box, or between a corner and the stretch. */
function apart(a: Point, b: Point, box: Box): number {
  if (enters(a, b, box)) return 0;
  const corners = [box.near, box.far].flatMap((along) => [box.left, box.right].map((right) => ({ along, right })));
  return Math.min(toBox(a, box), toBox(b, box), ...corners.map((corner) => toStretch(corner, a, b)));
}

const toBox = ({ along, right }: Point, box: Box): number =>
  Math.hypot(Math.max(box.near - along, along - box.far, 0), Math.max(box.left - right, right - box.right, 0));

function toStretch(point: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.along - a.along, b.right - a.right];
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : ((point.along - a.along) * dx + (point.right - a.right) * dy) / square;
  const at = Math.min(1, Math.max(0, share));
  return Math.hypot(a.along + at * dx - point.along, a.right + at * dy - point.right);
}

/** Clips the stretch to the box along each axis in turn. */
function enters(a: Point, b: Point, box: Box): boolean {
  let [low, high] = [0, 1];
  const axes = [
    [a.along, b.along, box.near, box.far],
    [a.right, b.right, box.left, box.right],
  ] as const;
  for (const [from, to, least, most] of axes) {
    const change = to - from;
    if (change === 0) {
      if (from < least || from > most) return false;
      continue;
    }
    const [one, other] = [(least - from) / change, (most - from) / change];
    low = Math.max(low, Math.min(one, other));
    high = Math.min(high, Math.max(one, other));
  }
  return low <= high;
}
