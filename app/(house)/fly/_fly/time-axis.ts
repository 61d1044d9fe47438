// The axes that the charts of a flight share: all that runs over time lies on one scale, so that one line crosses them all.
// Pure numbers to pure places, the same on every machine.
import { scaleLinear } from 'd3-scale';

/** Pixels: what stays free for names at the left, and at the right. */
export const LEFT = 52;
export const RIGHT = 14;

export type Tick = { readonly at: number; readonly says: string };
export type Axis = {
  readonly from: number;
  readonly to: number;
  /** Where a value stands, px; beyond the ends where it lies beyond them. */
  readonly place: (value: number) => number;
  /** Which value stands at a place. */
  readonly value: (place: number) => number;
  readonly ticks: readonly Tick[];
};

const tenth = (value: number): number => Math.round(value * 10) / 10;

export function axis(domain: readonly [number, number], range: readonly [number, number], count: number): Axis {
  const [from, to] = domain[1] > domain[0] ? domain : [domain[0], domain[0] + 1];
  const scale = scaleLinear([from, to], range);
  return {
    from,
    to,
    place: (value) => tenth(scale(value)),
    value: (place) => Math.min(to, Math.max(from, scale.invert(place))),
    ticks: scale.ticks(count).map((value) => ({ at: tenth(scale(value)), says: thousands(value) })),
  };
}

const thousands = (value: number): string =>
  String(Math.round(value * 10) / 10)
    .replace(/^-/, '−')
    .replace(/\B(?=(\d{3})+$)/g, '\u202f');

/** Seconds across the width of a chart. */
export const timeAxis = (from: number, to: number, width: number): Axis =>
  axis(
    [from, Math.max(from + 1, to)],
    [LEFT, Math.max(LEFT + 40, width - RIGHT)],
    Math.max(3, Math.round(width / 110)),
  );

/** A scale of values that is rounded outwards to whole steps. */
export function around(values: Iterable<number>, step: number, least: number): readonly [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  if (low > high) return [0, least];
  const from = Math.floor((low - step * 0.3) / step) * step;
  return [from, Math.max(from + least, Math.ceil((high + step * 0.3) / step) * step)];
}

/** A stretch of so many seconds that holds a moment: the one before while it still does. `span` null: the whole flight. */
export function stretchAround(moment: number, span: number | null, end: number, before: number): number {
  if (span === null || span >= end) return 0;
  const inside = moment >= before && moment <= before + span;
  return Math.max(0, Math.min(end - span, inside ? before : moment - span / 4));
}
