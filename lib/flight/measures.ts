// What is asked of a flight in one number: heights and times of what was marked, margins of the band. Heights are AAL, ft.
import type { Measure } from './sweep.ts';
import type { FlightEvent, Trace } from './trace.ts';

export const markOf = (trace: Trace, name: string): FlightEvent | null =>
  trace.events.find((event) => event.kind === 'mark' && event.says === name) ?? null;

/** The mark of a stable approach, as the settings of an approach watch for it. */
export const STABLE = 'stable';

/** Height at which the approach was stable first; 0: never. A refused flight tells nothing. */
export const stableHeight: Measure = {
  says: 'lowest stable height',
  unit: 'ft',
  worst: 'least',
  of: (trace) => (trace.end.reason === 'refused' ? null : (markOf(trace, STABLE)?.height ?? 0)),
};

/** Least of the limit less the speed, kt: of the flap indicated, the gear, the aircraft. */
export const ceilingMargin: Measure = {
  says: 'smallest margin below the limit',
  unit: 'kt',
  worst: 'least',
  of: (trace) => least(trace, (row) => trace.samples.ceiling[row]! - trace.samples.speed[row]!),
};

/** Least of the speed less the lowest speed of the phase, kt. */
export const floorMargin: Measure = {
  says: 'smallest margin above the lowest speed',
  unit: 'kt',
  worst: 'least',
  of: (trace) => least(trace, (row) => trace.samples.speed[row]! - trace.samples.floor[row]!),
};

/** How long the flight took to its end, s. */
export const endTime: Measure = {
  says: 'longest time',
  unit: 's',
  worst: 'most',
  of: (trace) => (trace.end.reason === 'refused' ? null : trace.end.time),
};

function least(trace: Trace, of: (row: number) => number): number | null {
  let found: number | null = null;
  for (let row = 0; row < trace.samples.time.length; row++) {
    const value = of(row);
    if (Number.isFinite(value) && (found === null || value < found)) found = value;
  }
  return found;
}
