// A recording beside a computed flight: by how much they differ most, and when. What differs is said of the model, not of the crew.
import type { Recording } from '../../../../lib/flight/recording.ts';
import type { Trace } from '../../../../lib/flight/trace.ts';
import { valueAt } from './rows.ts';

export type Difference = {
  readonly what: 'speed' | 'height';
  readonly unit: 'kt' | 'ft';
  /** Recorded less computed, and when. */
  readonly by: number;
  readonly at: number;
  /** Lines that were compared. */
  readonly of: number;
};

export function differences(trace: Trace, recording: Recording, shift: number): readonly Difference[] {
  const last = trace.samples.time.at(-1) ?? Number.NEGATIVE_INFINITY;
  const inside = recording.rows.filter(({ time }) => time! + shift >= 0 && time! + shift <= last);
  const most = (
    what: Difference['what'],
    unit: Difference['unit'],
    of: (row: (typeof inside)[number]) => number | null,
  ) => {
    let worst: Difference | null = null;
    let count = 0;
    for (const row of inside) {
      const recorded = of(row);
      const at = row.time! + shift;
      const flown = valueAt(trace.samples, what, at);
      if (recorded === null || flown === null) continue;
      count += 1;
      if (worst === null || Math.abs(recorded - flown) > Math.abs(worst.by))
        worst = { what, unit, by: recorded - flown, at, of: 0 };
    }
    return worst === null ? [] : [{ ...(worst as Difference), of: count }];
  };
  const { elevation } = trace.conditions;
  return [
    ...most('speed', 'kt', (row) => row.speed),
    ...most('height', 'ft', (row) => row.height ?? (row.altitude === null ? null : row.altitude - elevation)),
  ];
}

/** `recorded 12 kt faster than computed, at 26 s (48 lines compared)` */
export function sayDifference({ what, unit, by, at, of }: Difference): string {
  const step = unit === 'ft' ? 10 : 1;
  const size = Math.round(Math.abs(by) / step) * step;
  const more = what === 'speed' ? (by < 0 ? 'slower' : 'faster') : by < 0 ? 'lower' : 'higher';
  const how =
    size === 0
      ? `${what} the same within ${step} ${unit}`
      : `at most ${size} ${unit} ${more} than computed, at ${Math.round(at)} s`;
  return `recorded ${how} (${of} ${of === 1 ? 'line' : 'lines'} compared)`;
}
