/**
 * A gate over ranges: does it hold for every value inside them, for none, or does it depend? Where one quantity stands on
 * both sides the answer may be "unknown" though the truth is certain; it is never certain though the truth depends.
 */

import type { Arithmetic } from '../base/arithmetic.ts';
import { assert, never } from '../base/assert.ts';
import { anything, bounded, type Interval, point } from '../base/interval.ts';
import { FOOT, NAUTICAL_MILE, POUND } from '../units/convert.ts';
import { commonReference, sortOf } from './sort.ts';
import type { AltitudeReference, Comparison, Gate, GateUnit, Term } from './syntax.ts';

export type Verdict = boolean | 'unknown';
/** A term whose value the asked one knows: everything but numbers and what is reckoned from others. */
export type Asked = Exclude<Term, { kind: 'amount' | 'sum' | 'extreme' }>;
/** A condition that is true or not by observation. `after` without a delay: the step is done. */
export type Observed = Extract<
  Gate,
  {
    kind: 'trend' | 'flaps' | 'gear' | 'mode' | 'armed' | 'autopilot' | 'heard' | 'event' | 'judged' | 'then' | 'after';
  }
>;

/**
 * Where the ranges come from. Units: kt, M, ft, NM, ft/min, %, kg, °C, °. A height is asked for in the reference given.
 * `since`: seconds or NM since the step was done, since the cue became true where the step is null.
 */
export type Ranges = {
  readonly number: (term: Asked, reference: AltitudeReference | null) => Interval | 'unknown';
  readonly truth: (gate: Observed) => Verdict;
  readonly since: (step: string | null, unit: 's' | 'NM') => Interval | 'unknown';
};

/** How many of the unit in which values are asked for one of this unit is. */
const FACTOR: Readonly<Record<GateUnit, number>> = {
  kt: 1,
  M: 1,
  ft: 1,
  m: 1 / FOOT,
  NM: 1,
  km: 1000 / NAUTICAL_MILE,
  'ft/min': 1,
  '%': 1,
  s: 1,
  min: 60,
  '°C': 1,
  '°': 1,
  t: 1000,
  kg: 1,
  lb: POUND,
};

type Reckoning = Pick<Arithmetic<Interval>, 'add' | 'sub' | 'min' | 'max'>;
type Asking = {
  readonly ranges: Ranges;
  readonly by: Reckoning;
  readonly reference: AltitudeReference | null;
  readonly length: boolean;
};

function rangeOf(term: Term, asking: Asking): Interval {
  switch (term.kind) {
    case 'amount': {
      // Metres are a height or a distance, as the other side has it.
      const factor = term.unit === 'm' && asking.length ? 1 / NAUTICAL_MILE : FACTOR[term.unit];
      return point(term.value * factor);
    }
    case 'sum': {
      const left = rangeOf(term.left, asking);
      const right = rangeOf(term.right, asking);
      return term.sign === '+' ? asking.by.add(left, right) : asking.by.sub(left, right);
    }
    case 'extreme': {
      const [first, ...rest] = term.of.map((each) => rangeOf(each, asking));
      assert(first !== undefined, 'max and min have at least one value');
      return rest.reduce((a, b) => (term.which === 'max' ? asking.by.max(a, b) : asking.by.min(a, b)), first);
    }
    default: {
      const found = asking.ranges.number(term, asking.reference);
      return found === 'unknown' || Number.isNaN(found.lo) || Number.isNaN(found.hi) ? anything : found;
    }
  }
}

function compare(left: Term, op: Comparison, right: Term, ranges: Ranges, by: Reckoning): Verdict {
  const quantities = sortOf(right).quantities;
  const common = sortOf(left).quantities.filter((each) => quantities.includes(each));
  if (common.length === 0) return 'unknown';
  const asking = {
    ranges,
    by,
    reference: commonReference(left, right),
    length: common.includes('length') && !common.includes('height'),
  };
  return decide(rangeOf(left, asking), op, rangeOf(right, asking));
}

function decide(a: Interval, op: Comparison, b: Interval): Verdict {
  switch (op) {
    case '>=':
      return a.lo >= b.hi ? true : a.hi < b.lo ? false : 'unknown';
    case '>':
      return a.lo > b.hi ? true : a.hi <= b.lo ? false : 'unknown';
    case '<=':
      return decide(b, '>=', a);
    case '<':
      return decide(b, '>', a);
    case '=': {
      if (a.hi < b.lo || b.hi < a.lo) return false;
      return a.lo === a.hi && b.lo === b.hi && a.lo === b.lo ? true : 'unknown';
    }
    default:
      return never(op);
  }
}

const not = (verdict: Verdict): Verdict => (verdict === 'unknown' ? verdict : !verdict);
const and = (verdicts: readonly Verdict[]): Verdict =>
  verdicts.includes(false) ? false : verdicts.includes('unknown') ? 'unknown' : true;

function elapsed(limit: Term, step: string | null, op: Comparison, ranges: Ranges, by: Reckoning): Verdict {
  const time = sortOf(limit).quantities.includes('time');
  const since = ranges.since(step, time ? 's' : 'NM');
  return decide(
    since === 'unknown' ? anything : since,
    op,
    rangeOf(limit, { ranges, by, reference: null, length: !time }),
  );
}

/**
 * True or false where that is so for every value in the ranges; `unknown` where it depends or can't be told. Sums are
 * rounded outward unless told otherwise, so that what is certain is certain of true numbers too.
 */
export function judgeGate(gate: Gate, ranges: Ranges, by: Reckoning = bounded): Verdict {
  switch (gate.kind) {
    case 'compare':
      return compare(gate.left, gate.op, gate.right, ranges, by);
    case 'window':
      return and([compare(gate.what, '>=', gate.low, ranges, by), compare(gate.what, '<=', gate.high, ranges, by)]);
    case 'within':
      return and([judgeGate(gate.of, ranges, by), elapsed(gate.limit, gate.step, '<=', ranges, by)]);
    case 'after':
      if (gate.delay === null || gate.every) return ranges.truth(gate);
      return elapsed(gate.delay, gate.step, '>=', ranges, by);
    case 'not':
      return not(judgeGate(gate.of, ranges, by));
    case 'all':
      return and(gate.of.map((each) => judgeGate(each, ranges, by)));
    case 'any':
      return not(and(gate.of.map((each) => not(judgeGate(each, ranges, by)))));
    default:
      return ranges.truth(gate);
  }
}
