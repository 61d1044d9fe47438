// Where the speed does not come down by itself.
import type { Trace } from '../flight/trace.ts';
import { rowsBetween } from './flown-moments.ts';

type Stuck = { readonly from: number; readonly to: number; readonly gained: number; readonly target: number };

/** The stretch between two changes of drag in which the speed is above its target at idle and does not fall. */
export function stuckIn(trace: Trace, above: number, idleThrust: number): Stuck | null {
  const { samples, events, lines, end } = trace;
  const marks = [
    0,
    ...events.flatMap(({ kind, time }) => (/^(flap|gear)(-there)?$|^(target|mode)$/.test(kind) ? [time] : [])),
    end.time,
  ];
  let worst: Stuck | null = null;
  for (const [index, from] of marks.entries()) {
    const to = marks[index + 1];
    if (to === undefined || to - from < SHORTEST) continue;
    const rows = rowsBetween(trace, from + 1e-6, to - 1e-6);
    const [first, last] = [rows[0], rows.at(-1)];
    if (first === undefined || last === undefined || samples.time[last]! - samples.time[first]! < SHORTEST) continue;
    const line = lines.findLast((one) => one.from <= samples.time[first]!)?.line;
    const idle =
      rows.every((row) => samples.verticalSpeed[row]! < 0) &&
      line?.vertical === 'GLIDE' &&
      rows.every((row) => samples.thrust[row]! <= idleThrust);
    const over = rows.every((row) => samples.speed[row]! > samples.target[row]! + above);
    const gained = samples.speed[last]! - samples.speed[first]!;
    if (!idle || !over || gained < 0 || (worst !== null && gained <= worst.gained)) continue;
    worst = { from: samples.time[first]!, to: samples.time[last]!, gained, target: samples.target[last]! };
  }
  return worst;
}
/** A shorter stretch tells nothing of whether the speed falls, s. */
const SHORTEST = 20;
