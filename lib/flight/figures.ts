// The displayed figures of a flight: what is kept with a candidate, and what two flights are compared by. Rounded as the screen
// rounds them (10 ft, 1 kt, 1 s), so that the same engine gives the same figures wherever it runs.
import { allSteps, type Procedure } from '../procedure/procedure.ts';
import { ceilingMargin, floorMargin, STABLE, stableHeight } from './measures.ts';
import type { FlightEvent, Trace } from './trace.ts';

/** `value` null: the flight does not tell. `unit` '' goes with words. */
export type Figure = {
  readonly name: string;
  readonly value: number | string | null;
  readonly unit: 's' | 'ft' | 'kt' | '';
};
export type FigureChange = { readonly name: string; readonly was: Figure | null; readonly now: Figure | null };

const ROUND: Readonly<Record<string, number>> = { s: 1, ft: 10, kt: 1 };

/** What the screen shows of a number; halves go away from nought, and nought has no sign. */
export function rounded(value: number | null, unit: Figure['unit']): number | null {
  if (value === null || !Number.isFinite(value)) return null;
  const step = ROUND[unit] ?? 1;
  return Math.sign(value) * Math.round(Math.abs(value) / step + 1e-9) * step + 0;
}

/** Of any trace, in the order of a table; names are unique. */
export function figuresOf(procedure: Procedure, trace: Trace): readonly Figure[] {
  const figure = (name: string, value: number | null, unit: Figure['unit']): Figure => ({
    name,
    value: rounded(value, unit),
    unit,
  });
  const labels = new Map(allSteps(procedure).map((step, place) => [step.id, step.label || `step ${place + 1}`]));
  const capture = trace.events.find((event) => event.kind === 'mode' && event.line?.vertical === 'CAPTURE');
  const watched = trace.events.some((event) => event.kind === 'mark' && event.says === STABLE);
  return [
    { name: 'how the flight ended', value: trace.end.says, unit: '' },
    figure('length of the flight', trace.end.time, 's'),
    figure('least left below the limit', ceilingMargin.of(trace), 'kt'),
    figure('least left above the lowest speed', floorMargin.of(trace), 'kt'),
    ...(watched ? [figure('stable at', stableHeight.of(trace), 'ft')] : []),
    ...(capture === undefined ? [] : momentOf('first CAPTURE', capture, figure)),
    ...trace.steps.flatMap(({ step, act }) =>
      act === null ? [] : [figure(`${labels.get(step) ?? step} acts`, act, 's')],
    ),
    ...trace.transits.flatMap(({ what, from, to, ends }, place) =>
      ends === null ? [] : [figure(`${what} ${from} to ${to} arrives (${place + 1})`, ends, 's')],
    ),
  ];
}

type Make = (name: string, value: number | null, unit: Figure['unit']) => Figure;
const momentOf = (name: string, event: FlightEvent, make: Make): readonly Figure[] => [
  make(`${name}, time`, event.time, 's'),
  make(`${name}, height`, event.height, 'ft'),
];

/** What differs, in the order of the later list; what is gone comes last. */
export function figureChanges(was: readonly Figure[], now: readonly Figure[]): readonly FigureChange[] {
  const before = new Map(was.map((one) => [one.name, one]));
  const after = new Set(now.map((one) => one.name));
  const changed = now.flatMap((one): readonly FigureChange[] => {
    const old = before.get(one.name) ?? null;
    return old !== null && old.value === one.value && old.unit === one.unit
      ? []
      : [{ name: one.name, was: old, now: one }];
  });
  return [
    ...changed,
    ...was.filter((one) => !after.has(one.name)).map((one) => ({ name: one.name, was: one, now: null })),
  ];
}
