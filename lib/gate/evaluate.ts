/** Is a gate true now? Asked of one who knows the values, or knows that nobody can tell. */
import { bounded, type Interval } from '../base/interval.ts';
import { type Asked, judgeGate, type Observed, type Verdict } from './intervals.ts';
import type { AltitudeReference, Gate } from './syntax.ts';

/**
 * Units: kt, M, ft, NM, ft/min, %, kg, °C, °. A height is asked for in the reference given. `since`: seconds or NM since
 * the step was done, since the cue became true where the step is null.
 */
export type Look = {
  readonly number: (term: Asked, reference: AltitudeReference | null) => number | 'unknown';
  readonly truth: (gate: Observed) => Verdict;
  readonly since: (step: string | null, unit: 's' | 'NM') => number | 'unknown';
};

const at = (value: number | 'unknown'): Interval | 'unknown' =>
  value === 'unknown' || !Number.isFinite(value) ? 'unknown' : { lo: value, hi: value };

// To the nearest double, as everybody reckons: the edge of a gate belongs to it or not, and isn't a matter of rounding.
const nearest = {
  add: (a: Interval, b: Interval): Interval => ({ lo: a.lo + b.lo, hi: a.hi + b.hi }),
  sub: (a: Interval, b: Interval): Interval => ({ lo: a.lo - b.hi, hi: a.hi - b.lo }),
  min: bounded.min,
  max: bounded.max,
};

/** Three answers: an unknown part makes the whole unknown only where it matters. Numbers are points, so that one text of the
 *  rules serves values and ranges. */
export function evaluateGate(gate: Gate, look: Look): Verdict {
  const ranges = {
    number: (term: Asked, reference: AltitudeReference | null) => at(look.number(term, reference)),
    truth: look.truth,
    since: (step: string | null, unit: 's' | 'NM') => at(look.since(step, unit)),
  };
  return judgeGate(gate, ranges, nearest);
}
