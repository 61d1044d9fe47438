// When a pilot looks down to type, and where the aircraft is meanwhile.
import { stepOfDuty } from '../flight/crew.ts';
import type { Span } from '../flight/timeline.ts';
import type { Step } from '../procedure/procedure.ts';
import type { FlownOne } from './flown.ts';
import { rowsBetween } from './flown-moments.ts';
import { momentAt } from './flown-worst.ts';

export const downSpans = (one: FlownOne, step: Step): readonly Span[] =>
  one.crew().spans.filter(({ duty }) => stepOfDuty(duty) === step.id && /\/act( P[FM])?$/.test(duty.id));

/** Heights AAL while heads are down; the lowest. */
export function lowest(one: FlownOne, step: Step): number | null {
  const heights = downSpans(one, step).flatMap(({ start, end }) => [
    momentAt(one.trace, start, '').height,
    ...rowsBetween(one.trace, start, end).map((row) => one.trace.samples.height[row]!),
  ]);
  return heights.length === 0 ? null : Math.min(...heights);
}

/** Nearest to the selected altitude while climbing or descending toward it. */
export function nearLevel(one: FlownOne, step: Step): number | null {
  const { samples, conditions } = one.trace;
  const gaps = downSpans(one, step).flatMap(({ start, end }) =>
    rowsBetween(one.trace, start, end).flatMap((row) => {
      const gap = conditions.selectedAltitude - samples.altitude[row]!;
      return Math.sign(gap) === Math.sign(samples.verticalSpeed[row]!) && samples.verticalSpeed[row] !== 0
        ? [Math.abs(gap)]
        : [];
    }),
  );
  return gaps.length === 0 ? null : Math.min(...gaps);
}

export const negative = (value: number | null): number | null => (value === null ? null : -value);

export function overlap(a: readonly Span[], b: readonly Span[]): number | null {
  const shared = a.flatMap((one) =>
    b.map((two) => (one.duty.who === two.duty.who ? 0 : Math.min(one.end, two.end) - Math.max(one.start, two.start))),
  );
  const most = Math.max(0, ...shared);
  return most > 0 ? most : null;
}
