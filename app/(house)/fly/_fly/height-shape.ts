// Height against distance flown, with the gates of the steps on it.
import { line } from 'd3-shape';
import type { Recording } from '../../../../lib/flight/recording.ts';
import type { Trace } from '../../../../lib/flight/trace.ts';
import { drawnRows, valueAt } from './rows.ts';
import { type Axis, around, axis, LEFT, RIGHT } from './time-axis.ts';

export const HEIGHT_HEIGHT = 240;
const [TOP, BOTTOM] = [22, 34];
const MOST = 700;
/** Names of gates nearer than this to one another would cover each other, px. */
const APART = 46;

export type GateMark = {
  readonly time: number;
  readonly x: number;
  readonly y: number;
  /** Labels of the steps whose gates came true there; '' where the name of the one before needs the room. */
  readonly name: string;
  /** Names stand below a path that climbs and above one that does not. */
  readonly climbs: boolean;
};
export type HeightShape = {
  readonly x: Axis;
  readonly y: Axis;
  readonly path: string;
  readonly other: string;
  readonly recorded: string;
  readonly gates: readonly GateMark[];
};

/** `label`: of a step, by its id. `elevation` makes heights of recorded altitudes. */
export function heightShape(
  trace: Trace,
  width: number,
  other: Trace | null,
  recording: Recording | null,
  shift: number,
  label: (step: string) => string,
): HeightShape {
  const { samples, conditions } = trace;
  const recorded = recordedHeights(recording, conditions.elevation, shift, trace);
  const miles = [...samples.distance, ...(other?.samples.distance ?? [])];
  const far = miles.reduce((most, value) => Math.max(most, value), 0.5);
  const heights = [...samples.height, ...(other?.samples.height ?? []), ...recorded.map(([, height]) => height)];
  const x = axis([0, far], [LEFT, Math.max(LEFT + 40, width - RIGHT)], Math.max(3, Math.round(width / 120)));
  const y = axis(
    around([0, ...heights], heights.some((height) => height > 3_000) ? 1_000 : 200, 400),
    [HEIGHT_HEIGHT - BOTTOM, TOP],
    5,
  );
  const path = (of: Trace): string =>
    line<number>()
      .x((row) => x.place(of.samples.distance[row]!))
      .y((row) => y.place(of.samples.height[row]!))
      .digits(1)(drawnRows(of.samples, ['height'], MOST)) ?? '';
  return {
    x,
    y,
    path: path(trace),
    other: other === null ? '' : path(other),
    recorded:
      line()
        .x(([at]) => x.place(at))
        .y(([, height]) => y.place(height))
        .digits(1)(recorded as [number, number][]) ?? '',
    gates: gatesOf(trace, x, y, label),
  };
}

/** A recording that has no distance lies where the computed flight was at its time. */
function recordedHeights(
  recording: Recording | null,
  elevation: number,
  shift: number,
  { samples }: Trace,
): readonly (readonly [number, number])[] {
  return (recording?.rows ?? []).flatMap((row) => {
    const height = row.height ?? (row.altitude === null ? null : row.altitude - elevation);
    const time = row.time! + shift;
    if (height === null || time < 0 || time > (samples.time.at(-1) ?? 0)) return [];
    const at = row.distance ?? valueAt(samples, 'distance', time);
    return at === null ? [] : [[at, height] as const];
  });
}

function gatesOf({ events, samples }: Trace, x: Axis, y: Axis, label: (step: string) => string): readonly GateMark[] {
  const marks: GateMark[] = [];
  const moments = new Map<number, string[]>();
  for (const event of events) {
    if (event.kind !== 'gate' && event.kind !== 'mark') continue;
    const time = Math.round(event.time * 10) / 10;
    const name = event.kind === 'mark' ? event.says : label(event.step ?? '');
    moments.set(time, [...(moments.get(time) ?? []), name]);
  }
  let last = Number.NEGATIVE_INFINITY;
  for (const [time, names] of [...moments].sort(([a], [b]) => a - b)) {
    const place = x.place(valueAt(samples, 'distance', time) ?? 0);
    const height = y.place(valueAt(samples, 'height', time) ?? 0);
    const shown = place - last >= APART && place <= x.place(x.to) - APART / 2;
    if (shown) last = place;
    const first = names.filter((name) => name !== '');
    const name = first.length > 1 ? `${first[0]} +${first.length - 1}` : (first[0] ?? '');
    const climbs = (valueAt(samples, 'verticalSpeed', time) ?? 0) > 100;
    marks.push({ time, x: place, y: height, name: shown ? name : '', climbs });
  }
  return marks;
}
