// A plan view: seen from above, the course from left to right, one scale both ways. A drawing of lengths and angles, no map.
import { type Axis, axis, LEFT, RIGHT } from './time-axis.ts';

/** NM along the course and to the right of it. */
export type PlanPoint = { readonly along: number; readonly right: number };
export type PlanFrame = {
  readonly x: Axis;
  readonly y: Axis;
  readonly height: number;
  readonly path: (points: readonly PlanPoint[]) => string;
  readonly box: (
    from: PlanPoint,
    to: PlanPoint,
  ) => { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
};

const [TOP, BOTTOM] = [22, 34];
/** Neither flatter nor taller than this, px: a long straight leg still shows its offset. */
const [FLAT, TALL] = [150, 420];

/** A frame around all points, with the same length for a mile along and across wherever the page allows it. */
export function planFrame(points: readonly PlanPoint[], width: number): PlanFrame {
  const of = (pick: (point: PlanPoint) => number): readonly [number, number] => {
    const values = points.map(pick);
    const [from, to] = [Math.min(0, ...values), Math.max(0, ...values)];
    const more = Math.max(0.5, (to - from) * 0.08);
    return [from - more, to + more];
  };
  const [along, right] = [of((point) => point.along), of((point) => point.right)];
  const inner = Math.max(40, width - LEFT - RIGHT);
  const mile = inner / (along[1] - along[0]);
  const height = Math.min(TALL, Math.max(FLAT, (right[1] - right[0]) * mile + TOP + BOTTOM));
  // Where the height is bounded, the narrower way is given the room that is there, about its middle.
  const room = (height - TOP - BOTTOM) / mile;
  const middle = (right[0] + right[1]) / 2;
  const half = Math.max(room, right[1] - right[0]) / 2;
  const x = axis(along, [LEFT, LEFT + inner], Math.max(3, Math.round(width / 120)));
  const y = axis([middle - half, middle + half], [TOP, height - BOTTOM], 4);
  const at = ({ along: a, right: r }: PlanPoint): string => `${x.place(a)} ${y.place(r)}`;
  return {
    x,
    y,
    height,
    path: (line) => (line.length === 0 ? '' : `M${line.map(at).join('L')}`),
    box(from, to) {
      const [left, top] = [x.place(Math.min(from.along, to.along)), y.place(Math.min(from.right, to.right))];
      return {
        ...{ x: left, y: top },
        width: x.place(Math.max(from.along, to.along)) - left,
        height: y.place(Math.max(from.right, to.right)) - top,
      };
    },
  };
}

/** Positions east and north of the start, turned so that the track at the start runs along. */
export function alongTrack(east: ArrayLike<number>, north: ArrayLike<number>, track: number): readonly PlanPoint[] {
  const [sin, cos] = [Math.sin((track * Math.PI) / 180), Math.cos((track * Math.PI) / 180)];
  return Array.from({ length: east.length }, (_, row) => ({
    along: east[row]! * sin + north[row]! * cos,
    right: east[row]! * cos - north[row]! * sin,
  }));
}
