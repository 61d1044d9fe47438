// Many flights of one procedure: every weight, wind and temperature, and each of them again with hands, wind and drag a little
// different. It is a generator, so that whoever runs it can show how far it is, do something else in between, or stop.
import type { Sheet } from '../aircraft/sheet.ts';
import type { Procedure, Range } from '../procedure/procedure.ts';
import type { FlightFacts } from './flight.ts';
import { flyProcedure } from './fly.ts';
import type { Settings } from './settings.ts';
import type { Conditions, Trace } from './trace.ts';

/** kg, kt, °C from standard. */
export type SweepPlan = {
  readonly weights: readonly number[];
  readonly winds: readonly number[];
  readonly temperatures: readonly number[];
  /** Each case again with ±2 s, ±10 kt, ±5 % drag. */
  readonly sensitive: boolean;
};

/** What is asked of each flight. `worst`: which end of the values is the bad one. Null: the flight does not tell. */
export type Measure = {
  /** As in "lowest stable height". */
  readonly says: string;
  readonly unit: string;
  readonly worst: 'least' | 'most';
  readonly of: (trace: Trace) => number | null;
};

export type SweepCase = {
  readonly weight: number;
  readonly wind: number;
  readonly temperature: number;
  readonly value: number | null;
  /** Least and most over the variations, the case itself among them; null where none was asked or nothing told. */
  readonly band: { readonly least: number; readonly most: number } | null;
  /** The first problem of the flight; '' when it had none. */
  readonly problem: string;
};

export type SweepProgress = { readonly done: number; readonly of: number; readonly latest: SweepCase };
export type SweepResult = {
  readonly cases: readonly SweepCase[];
  readonly worst: SweepCase | null;
  /** Such as "lowest stable height of 22 flights: 900 ft at 58 t". */
  readonly says: string;
  /** What the lightest and the heaviest alone would have said. */
  readonly ends: readonly SweepCase[];
};

/** Coarsest step of weights, kg: the worst one lies between the ends more often than not. */
export const WEIGHT_STEP = 1000;

/** All weights of a range in steps of at most a tonne, both ends included, kg. */
export function weightsOf(range: Range, step = WEIGHT_STEP): readonly number[] {
  const most = Math.min(step, WEIGHT_STEP);
  const count = Math.floor((range.to - range.from) / most + 1e-9);
  const all = Array.from({ length: count + 1 }, (_, k) => range.from + k * most);
  return all.at(-1)! < range.to - 1e-6 ? [...all, range.to] : all;
}

/** The weights of a procedure, else those between the lightest and the heaviest of its phase. */
export function weightRange(procedure: Procedure, sheet: Sheet): Range {
  const { minimumFlight, maximumLanding, maximumTakeOff } = sheet.weights;
  const landing = procedure.phases.some(
    (phase) => phase === 'approach' || phase === 'landing' || phase === 'go-around',
  );
  const most = landing ? maximumLanding.value : maximumTakeOff.value;
  return procedure.envelope.weight ?? { from: minimumFlight.value, to: most };
}

type Variation = { readonly conditions: Conditions; readonly settings: Settings };

/** ±2 s of every hand, ±10 kt of wind within the limits of the sheet, ±5 % drag. */
function variations(conditions: Conditions, settings: Settings, sheet: Sheet): readonly Variation[] {
  const { from, to } = sheet.limits.wind;
  const blown = [-10, 10]
    .map((more) => Math.min(to, Math.max(from, conditions.wind + more)))
    .filter((wind) => wind !== conditions.wind);
  return [
    ...[-2, 2].map((delay) => ({ conditions, settings: { ...settings, delay } })),
    ...blown.map((wind) => ({ conditions: { ...conditions, wind }, settings })),
    ...[0.95, 1.05].map((drag) => ({ conditions, settings: { ...settings, factors: { ...settings.factors, drag } } })),
  ];
}

const worse = (measure: Measure, a: number, b: number): boolean => (measure.worst === 'least' ? a < b : a > b);

export function* sweep(
  procedure: Procedure,
  facts: FlightFacts,
  conditions: Conditions,
  settings: Settings,
  plan: SweepPlan,
  measure: Measure,
): Generator<SweepProgress, SweepResult, void> {
  const of = plan.weights.length * plan.winds.length * plan.temperatures.length;
  const cases: SweepCase[] = [];
  for (const weight of plan.weights) {
    for (const wind of plan.winds) {
      for (const temperature of plan.temperatures) {
        const mine = { ...conditions, weight, wind, temperature };
        const trace = flyProcedure(procedure, facts, mine, settings);
        const value = measure.of(trace);
        const values = value === null ? [] : [value];
        if (plan.sensitive) {
          for (const one of variations(mine, settings, facts.sheet)) {
            const other = measure.of(flyProcedure(procedure, facts, one.conditions, one.settings));
            if (other !== null) values.push(other);
          }
        }
        const band =
          plan.sensitive && values.length > 0 ? { least: Math.min(...values), most: Math.max(...values) } : null;
        const latest = { weight, wind, temperature, value, band, problem: trace.problems[0]?.says ?? '' };
        cases.push(latest);
        yield { done: cases.length, of, latest };
      }
    }
  }
  return summed(cases, measure, plan);
}

function summed(cases: readonly SweepCase[], measure: Measure, plan: SweepPlan): SweepResult {
  let worst: SweepCase | null = null;
  for (const one of cases) {
    if (one.value === null) continue;
    if (worst === null || worse(measure, one.value, worst.value!)) worst = one;
  }
  const [light, heavy] = [Math.min(...plan.weights), Math.max(...plan.weights)];
  const ends = cases.filter((one) => one.weight === light || one.weight === heavy);
  return { cases, worst, says: sentence(cases.length, worst, measure, plan), ends };
}

function sentence(count: number, worst: SweepCase | null, measure: Measure, plan: SweepPlan): string {
  if (worst === null) return `${measure.says}: none of ${count} flights tells it.`;
  const step = measure.unit === 'ft' ? 10 : 1;
  const value = Math.round(worst.value! / step) * step;
  const where = [`${(worst.weight / 1000).toFixed(1).replace(/\.0$/, '')} t`];
  if (plan.winds.length > 1) {
    where.push(worst.wind === 0 ? 'calm' : `${Math.abs(worst.wind)} kt ${worst.wind > 0 ? 'head' : 'tail'} wind`);
  }
  if (plan.temperatures.length > 1) where.push(`${worst.temperature} °C from standard`);
  const alone = count === plan.weights.length ? 'weights' : 'flights';
  return `${measure.says} of ${count} ${alone}: ${value} ${measure.unit} at ${where.join(', ')}`;
}

/** Runs it to its end, where nobody looks on and nobody stops it. */
export function sweepAll(run: Generator<SweepProgress, SweepResult, void>): SweepResult {
  for (;;) {
    const next = run.next();
    if (next.done) return next.value;
  }
}
