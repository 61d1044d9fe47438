// Flying beside the page: a web worker that is told once what is flown and then answers one question after the other. Three of
// them run: one for the slider, one for what takes longer and can be stopped, one for the checks, so that none waits for another.
import { type Checked, checkProcedure } from '../../../../lib/check/check.ts';
import { rulesThatFly } from '../../../../lib/check/stage.ts';
import { type Figure, figuresOf } from '../../../../lib/flight/figures.ts';
import type { Interruption } from '../../../../lib/flight/interruptions.ts';
import { STABLE } from '../../../../lib/flight/measures.ts';
import { settingsFor } from '../../../../lib/flight/start.ts';
import {
  type Measure,
  type SweepProgress,
  type SweepResult,
  sweep,
  sweepAll,
  weightRange,
  weightsOf,
} from '../../../../lib/flight/sweep.ts';
import { varied, worstOf } from '../../../../lib/flight/timeline-spread.ts';
import {
  conditionsOf,
  dutiesIn,
  type Flown,
  flyOne,
  type Given,
  type Ground,
  MEASURES,
  type MeasureName,
} from './fly-one.ts';
import { longestWait } from './lanes-shape.ts';

export type Sweeping = {
  readonly given: Given;
  readonly measure: MeasureName;
  /** Winds and temperatures at the ends of the envelope too, and not only those that are set. */
  readonly everywhere: boolean;
  readonly sensitive: boolean;
};
export type FlyQuestion = { readonly id: number } & (
  | { readonly kind: 'ground'; readonly ground: Ground }
  | {
      readonly kind: 'fly';
      readonly given: Given;
      readonly interruptions: readonly Interruption[];
      readonly against: boolean;
    }
  | { readonly kind: 'near'; readonly given: Given; readonly interruptions: readonly Interruption[] }
  | ({ readonly kind: 'sweep' } & Sweeping)
  | { readonly kind: 'stop' }
  | { readonly kind: 'again'; readonly given: Given }
  | { readonly kind: 'check' }
);
/** What a figure becomes with hands ±2 s, wind ±10 kt and drag ±5 %; `wait`: the longest wait with durations stretched. */
export type Near = {
  readonly bands: readonly {
    readonly says: string;
    readonly unit: string;
    readonly value: number;
    readonly least: number;
    readonly most: number;
  }[];
  readonly wait: { readonly does: string; readonly seconds: number; readonly under: string } | null;
  readonly searched: string;
};
export type FlyAnswer = { readonly id: number } & (
  | { readonly kind: 'flown'; readonly now: Flown; readonly was: Flown | null; readonly took: number }
  | { readonly kind: 'near'; readonly near: Near }
  | { readonly kind: 'progress'; readonly done: number; readonly of: number }
  | { readonly kind: 'swept'; readonly result: SweepResult; readonly took: number }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'again'; readonly figures: readonly Figure[] }
  | { readonly kind: 'checked'; readonly checked: Checked }
  | { readonly kind: 'failed'; readonly says: string }
);

type Scope = {
  postMessage: (answer: FlyAnswer) => void;
  addEventListener: (type: 'message', hear: (event: MessageEvent<FlyQuestion>) => void) => void;
};
const scope = self as unknown as Scope;
/** ms of a sweep between two looks at what else was asked. */
const SLICE = 40;

let ground: Ground | null = null;
/** The sweep under way; another question for it, or a stop, ends it. */
let sweeping = 0;

scope.addEventListener('message', ({ data }) => {
  try {
    answer(data);
  } catch (error) {
    scope.postMessage({ id: data.id, kind: 'failed', says: error instanceof Error ? error.message : String(error) });
  }
});

function answer(question: FlyQuestion): void {
  const { id } = question;
  if (question.kind === 'ground') {
    ground = question.ground;
    return;
  }
  if (ground === null) throw new Error('the first question brings what is flown');
  const { procedure, against, sheet, policy, library } = ground;
  switch (question.kind) {
    case 'fly': {
      const began = performance.now();
      const now = flyOne(ground, procedure, question.given, question.interruptions);
      const was = question.against && against ? flyOne(ground, against, question.given, question.interruptions) : null;
      scope.postMessage({ id, kind: 'flown', now, was, took: performance.now() - began });
      return;
    }
    case 'near':
      scope.postMessage({ id, kind: 'near', near: nearOf(ground, question.given, question.interruptions) });
      return;
    case 'sweep':
      sweeping = id;
      walk(id, sweepOf(ground, question), performance.now());
      return;
    case 'stop':
      sweeping = 0;
      return;
    case 'again': {
      const { trace } = flyOne(ground, procedure, question.given, []);
      scope.postMessage({ id, kind: 'again', figures: figuresOf(procedure, trace) });
      return;
    }
    case 'check': {
      const rules = rulesThatFly();
      scope.postMessage({ id, kind: 'checked', checked: checkProcedure(procedure, { sheet, policy, library }, rules) });
    }
  }
}

function sweepOf(on: Ground, { given, measure, everywhere, sensitive }: Sweeping) {
  const { procedure, sheet } = on;
  const conditions = conditionsOf(on, procedure, given);
  const ends = (range: { from: number; to: number } | null, set: number): readonly number[] =>
    everywhere && range !== null ? [...new Set([range.from, set, range.to])].sort((a, b) => a - b) : [set];
  const { wind, temperature } = procedure.envelope;
  const plan = {
    weights: weightsOf(weightRange(procedure, sheet)),
    winds: ends(wind ?? sheet.limits.wind, conditions.wind),
    temperatures: ends(temperature ?? sheet.limits.temperature, conditions.temperature),
    sensitive,
  };
  return sweep(procedure, on, conditions, settingsFor(procedure, sheet), plan, MEASURES[measure]);
}

function walk(id: number, run: Generator<SweepProgress, SweepResult, void>, began: number): void {
  if (sweeping !== id) {
    scope.postMessage({ id, kind: 'stopped' });
    return;
  }
  const until = performance.now() + SLICE;
  for (;;) {
    const next = run.next();
    if (next.done) {
      sweeping = 0;
      scope.postMessage({ id, kind: 'swept', result: next.value, took: performance.now() - began });
      return;
    }
    if (performance.now() < until) continue;
    scope.postMessage({ id, kind: 'progress', done: next.value.done, of: next.value.of });
    setTimeout(() => walk(id, run, began), 0);
    return;
  }
}

function nearOf(on: Ground, given: Given, interruptions: readonly Interruption[]): Near {
  const { procedure, sheet, policy } = on;
  const conditions = conditionsOf(on, procedure, given);
  const settings = settingsFor(procedure, sheet);
  const one = { weights: [conditions.weight], winds: [conditions.wind], temperatures: [conditions.temperature] };
  // All measures of each flight, so that it is flown once: the case itself comes first, then its variations.
  const told = Object.values(MEASURES)
    .filter((measure) => measure !== MEASURES.stable || STABLE in settings.marks)
    .map((measure) => ({ measure, values: [] as number[] }));
  const all: Measure = {
    ...MEASURES.length,
    of(trace) {
      for (const { measure, values } of told) values.push(measure.of(trace) ?? Number.NaN);
      return null;
    },
  };
  sweepAll(sweep(procedure, on, conditions, settings, { ...one, sensitive: true }, all));
  const bands = told.flatMap(({ measure: { says, unit }, values }) => {
    const known = values.filter((value) => Number.isFinite(value));
    if (!Number.isFinite(values[0])) return [];
    return [{ says, unit, value: values[0]!, least: Math.min(...known), most: Math.max(...known) }];
  });
  const { trace } = flyOne(on, procedure, given, []);
  const spread = varied(dutiesIn(on, procedure, trace, interruptions), policy.durations);
  const worst = worstOf(spread, (crew) => longestWait(crew)?.late ?? null);
  const span = worst && longestWait(worst.timeline);
  return {
    bands,
    wait: span && worst && { does: span.duty.does, seconds: span.late, under: worst.under },
    searched: spread.searched,
  };
}
