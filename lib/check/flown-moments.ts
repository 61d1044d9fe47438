// Moments that several checks ask of a flight.
import type { Trace } from '../flight/trace.ts';

/** When a height is passed downwards, s; null: never in this flight. */
export function passingHeight({ samples }: Trace, height: number): number | null {
  for (let row = 1; row < samples.height.length; row += 1) {
    const [above, below] = [samples.height[row - 1]!, samples.height[row]!];
    if (above < height || below >= height) continue;
    const share = (above - height) / (above - below);
    return samples.time[row - 1]! + share * (samples.time[row]! - samples.time[row - 1]!);
  }
  return null;
}

/** Rows of the samples between two moments, both included. */
export function rowsBetween({ samples }: Trace, from: number, to: number): readonly number[] {
  const rows: number[] = [];
  for (let row = 0; row < samples.time.length; row += 1) {
    const time = samples.time[row]!;
    if (time >= from && time <= to) rows.push(row);
  }
  return rows;
}

/** When a speed is reached for the first time from below, s; null: never in this flight. */
export function passingSpeed({ samples }: Trace, speed: number): number | null {
  for (let row = 0; row < samples.speed.length; row += 1) {
    if (samples.speed[row]! < speed) continue;
    if (row === 0) return samples.time[0]!;
    const [before, after] = [samples.speed[row - 1]!, samples.speed[row]!];
    return (
      samples.time[row - 1]! + ((speed - before) / (after - before)) * (samples.time[row]! - samples.time[row - 1]!)
    );
  }
  return null;
}

/** When an altitude is passed upwards for the first time, s; null: never in this flight. */
export function passingAltitude({ samples }: Trace, altitude: number): number | null {
  for (let row = 1; row < samples.altitude.length; row += 1) {
    const [before, after] = [samples.altitude[row - 1]!, samples.altitude[row]!];
    if (before > altitude || after <= altitude) continue;
    return (
      samples.time[row - 1]! + ((altitude - before) / (after - before)) * (samples.time[row]! - samples.time[row - 1]!)
    );
  }
  return null;
}
