// What is kept of a flight while it is flown: rows of samples that grow, events, and what moves for a while.

import type { StepId } from '../procedure/procedure.ts';
import type { Now } from './now.ts';
import {
  type EventKind,
  type FlightEvent,
  type ModeLine,
  SAMPLE_COLUMNS,
  type SampleColumn,
  type Samples,
  type Transit,
} from './trace.ts';

const WIDTH = SAMPLE_COLUMNS.length;
const PLACE = Object.fromEntries(SAMPLE_COLUMNS.map((column, place) => [column.name, place])) as Record<
  SampleColumn,
  number
>;

export type Rows = {
  /** Begins a row and gives a way to fill it. */
  readonly add: (fill: (set: (column: SampleColumn, value: number) => void) => void) => void;
  readonly finish: () => Samples;
};

export function newRows(): Rows {
  // A flight of a sweep keeps no rows: nothing is taken before the first.
  let data = new Float64Array(0);
  let count = 0;
  const set = (column: SampleColumn, value: number): void => {
    data[count * WIDTH + PLACE[column]] = value;
  };
  return {
    add(fill) {
      if ((count + 1) * WIDTH > data.length) {
        const more = new Float64Array(Math.max(WIDTH * 256, data.length * 2));
        more.set(data);
        data = more;
      }
      fill(set);
      count += 1;
    },
    finish() {
      const columns = SAMPLE_COLUMNS.map(({ name }, place) => {
        const column = new Float64Array(count);
        for (let row = 0; row < count; row++) column[row] = data[row * WIDTH + place]!;
        return [name, column] as const;
      });
      return Object.fromEntries(columns) as Samples;
    },
  };
}

export type Log = {
  readonly events: FlightEvent[];
  readonly transits: Transit[];
  readonly lines: { readonly from: number; readonly line: ModeLine }[];
  readonly note: (now: Now, kind: EventKind, says: string, more?: Partial<FlightEvent>) => void;
  /** Begins a movement; the place by which it is ended. */
  readonly begin: (what: 'flap' | 'gear', from: string, to: string, now: Now, step: StepId | null) => number;
  readonly arrive: (place: number, now: Now) => void;
};

export function newLog(): Log {
  const events: FlightEvent[] = [];
  const transits: Transit[] = [];
  return {
    events,
    transits,
    lines: [],
    note(now, kind, says, more) {
      events.push({
        time: now.time,
        kind,
        step: null,
        who: null,
        rule: '',
        says,
        height: now.height,
        speed: now.speed,
        verticalSpeed: now.verticalSpeed,
        line: null,
        ...more,
      });
    },
    begin(what, from, to, now, step) {
      return transits.push({ what, from, to, begins: now.time, ends: null, step }) - 1;
    },
    arrive(place, now) {
      transits[place] = { ...transits[place]!, ends: now.time };
    },
  };
}
