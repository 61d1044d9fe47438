// Rows of a computed flight as a chart reads them: thinned to what a screen can show, and read at any moment between two.
import type { SampleColumn, Samples, Trace } from '../../../../lib/flight/trace.ts';

/**
 * Places of the rows that are drawn: of each stretch of rows the first, the last, and those where a column is least and most, so
 * that no peak is lost. All of them while there are no more than `most`.
 */
export function drawnRows(samples: Samples, columns: readonly SampleColumn[], most: number): readonly number[] {
  const count = samples.time.length;
  if (count <= most) return Array.from({ length: count }, (_, row) => row);
  const stretch = Math.ceil((count * 2 * (columns.length + 1)) / most);
  const kept = new Set<number>();
  for (let from = 0; from < count; from += stretch) {
    const to = Math.min(count, from + stretch);
    kept.add(from).add(to - 1);
    for (const name of columns) {
      const column = samples[name];
      let [low, high] = [from, from];
      for (let row = from; row < to; row += 1) {
        if (column[row]! < column[low]!) low = row;
        if (column[row]! > column[high]!) high = row;
      }
      kept.add(low).add(high);
    }
  }
  return [...kept].sort((a, b) => a - b);
}

/** The last row at or before a moment; 0 before the first. */
export function rowAt({ time }: Samples, moment: number): number {
  let [low, high] = [0, time.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (time[middle]! <= moment) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** A column at a moment, straight between two rows; null in a flight without rows. */
export function valueAt(samples: Samples, name: SampleColumn, moment: number): number | null {
  if (samples.time.length === 0) return null;
  const row = rowAt(samples, moment);
  const [a, b] = [samples[name][row]!, samples[name][row + 1]];
  const [from, to] = [samples.time[row]!, samples.time[row + 1]];
  if (b === undefined || to === undefined || to <= from || moment <= from) return a;
  return a + (b - a) * Math.min(1, (moment - from) / (to - from));
}

/** The moment at which a distance is reached, for a chart that runs over distance. */
export function momentAtDistance({ samples }: Trace, miles: number): number {
  const { distance, time } = samples;
  let [low, high] = [0, distance.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (distance[middle]! < miles) low = middle + 1;
    else high = middle;
  }
  const row = Math.max(1, low);
  const [a, b] = [distance[row - 1] ?? 0, distance[row] ?? 0];
  const [from, to] = [time[row - 1] ?? 0, time[row] ?? 0];
  return b > a ? from + (to - from) * Math.min(1, Math.max(0, (miles - a) / (b - a))) : from;
}
