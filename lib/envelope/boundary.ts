import type { Bounds, Box } from './bounds.ts';
import type { Domain } from './domain.ts';
import { leastOver } from './least.ts';

/** Where along one variable a condition fails for some value of the others. `within`: the hull of where it does. */
export type Boundary =
  | { readonly variable: string; readonly unit: string; readonly side: 'always' }
  | { readonly variable: string; readonly unit: string; readonly side: 'above' | 'below'; readonly at: number }
  | {
      readonly variable: string;
      readonly unit: string;
      readonly side: 'within';
      readonly at: number;
      readonly to: number;
    };

/** Share of the range to which a boundary is found: 0.03 kg of 32 t. */
const FINE = 1e-6;
const PROBES = 80;
/** Halvings of the range where the condition neither only gets better nor only worse: 32 stretches at most. */
const DEEPEST = 5;
const BUDGET = 100;

/** The least margin with one variable at a value, or a number of its sign; and whether that is a failure. */
type Probe = (value: number) => { readonly margin: number; readonly fails: boolean };

/** Seeks the boundary along a variable. null when the domain hasn't this variable, or gives it one value only. */
export function boundaryAlong(
  bounds: Bounds,
  axes: Domain,
  name: string,
  strict: boolean,
  witness: readonly number[],
): Boundary | null {
  const i = axes.findIndex((one) => one.name === name);
  const along = axes[i];
  if (along === undefined || along.from === along.to) return null;
  const { unit } = along;
  const probe = probeOf(bounds, axes, i, strict);
  const span = along.to - along.from;
  const turn = (right: number, wrong: number): number => turningPoint(probe, right, wrong, span * FINE);
  const marks = sections(bounds, axes, i, witness[i]!);
  const failing = marks.filter((mark) => probe(mark).fails);
  const first = failing[0];
  const last = failing[failing.length - 1];
  if (first === undefined || last === undefined) return null;
  if (failing.length === marks.length) return { variable: name, unit, side: 'always' };
  const from = first === along.from ? first : turn(marks[marks.indexOf(first) - 1]!, first);
  const to = last === along.to ? last : turn(marks[marks.indexOf(last) + 1]!, last);
  const gapless = failing.length === marks.indexOf(last) - marks.indexOf(first) + 1;
  if (gapless && first === along.from) return { variable: name, unit, side: 'below', at: to };
  if (gapless && last === along.to) return { variable: name, unit, side: 'above', at: from };
  return { variable: name, unit, side: 'within', at: from, to };
}

/**
 * The value next to which a right one turns wrong, to within `fine`; the answer itself is wrong. By the chord, then a
 * step of `fine` beyond it to catch the root from both sides; by halves where that gets stuck.
 */
function turningPoint(probe: Probe, right: number, wrong: number, fine: number): number {
  let good = { at: right, margin: probe(right).margin };
  let bad = { at: wrong, margin: probe(wrong).margin };
  for (let k = 0; k < PROBES && Math.abs(bad.at - good.at) > fine; k++) {
    const span = bad.at - good.at;
    const chord = good.at + (span * good.margin) / (good.margin - bad.margin);
    const half = good.at + span / 2;
    const inside = Math.abs(chord - half) < Math.abs(span) / 2;
    const way = Math.sign(span) * fine * 0.4;
    const at =
      k % 3 === 2 || !inside
        ? half
        : k % 3 === 0
          ? kept(chord + way, good.at, bad.at, half)
          : kept(chord - way, good.at, bad.at, half);
    const found = probe(at);
    if (found.fails) bad = { at, margin: found.margin };
    else good = { at, margin: found.margin };
  }
  return bad.at;
}

/** A place strictly between two others, or the half where it isn't. */
const kept = (at: number, a: number, b: number, half: number): number => ((at - a) * (at - b) < 0 ? at : half);

function probeOf(bounds: Bounds, axes: Domain, i: number, strict: boolean): Probe {
  return (value) => {
    const box = narrowed(axes, i, value, value);
    const least = leastOver(bounds, box, {
      enough: 0,
      strictly: strict,
      near: Number.POSITIVE_INFINITY,
      budget: BUDGET,
      refine: 0,
    });
    return { margin: least.hi, fails: least.hi < 0 || (least.hi <= 0 && strict) };
  };
}

/**
 * The ends of stretches along which more of the variable makes the condition only better or only worse, whatever the
 * others are; where no such stretch is found, of stretches short enough to be told by their ends. Tables are cut at their
 * points, and the witness is an end, so that a narrow failure isn't stepped over.
 */
function sections(bounds: Bounds, axes: Domain, i: number, witness: number): readonly number[] {
  const { from: first, to: last } = axes[i]!;
  const found = [first];
  const visit = (from: number, to: number, deeper: number): void => {
    bounds.over(narrowed(axes, i, from, to));
    const slope = bounds.slopes()[i]!;
    if (deeper === 0 || (!bounds.partial && (slope.lo >= 0 || slope.hi <= 0))) found.push(to);
    else {
      const half = from + (to - from) / 2;
      visit(from, half, deeper - 1);
      visit(half, to, deeper - 1);
    }
  };
  bounds.over(narrowed(axes, i, first, last));
  const slope = bounds.slopes()[i]!;
  if (!bounds.partial && (slope.lo >= 0 || slope.hi <= 0)) return [first, last];
  const inner = [...bounds.marks[i]!, witness].filter((mark) => mark > first && mark < last).sort((a, b) => a - b);
  const cuts = [first, ...new Set(inner), last];
  const deep = Math.max(1, DEEPEST - Math.ceil(Math.log2(cuts.length - 1)));
  for (let k = 1; k < cuts.length; k++) visit(cuts[k - 1]!, cuts[k]!, deep);
  return found;
}

/** The whole domain with one variable kept between two values. */
const narrowed = (axes: Domain, i: number, from: number, to: number): Box => ({
  lo: axes.map((one, k) => (k === i ? from : one.from)),
  hi: axes.map((one, k) => (k === i ? to : one.to)),
});
