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

/** Enough for 0.1 kg in a hundred tonnes. */
const STEPS = 24;
/** Sections looked at where the condition neither only gets better nor only worse. */
const SECTIONS = 64;
const BUDGET = 200;

/** Seeks the boundary along a variable. null when the domain hasn't this variable, or gives it one value only. */
export function boundaryAlong(bounds: Bounds, axes: Domain, name: string, strict: boolean): Boundary | null {
  const i = axes.findIndex((one) => one.name === name);
  const along = axes[i];
  if (along === undefined || along.from === along.to) return null;
  const fails = (value: number): boolean => failsAt(bounds, axes, i, value, strict);
  const { unit } = along;
  const low = fails(along.from);
  const high = fails(along.to);
  const marks = Array.from({ length: SECTIONS + 1 }, (_, k) => along.from + ((along.to - along.from) * k) / SECTIONS);
  if (oneWay(bounds, axes, i)) {
    if (low && high) return { variable: name, unit, side: 'always' };
    if (high) return { variable: name, unit, side: 'above', at: turn(fails, along.from, along.to) };
    return low ? { variable: name, unit, side: 'below', at: turn(fails, along.to, along.from) } : null;
  }
  const failing = marks.filter(fails);
  const first = failing[0];
  const last = failing[failing.length - 1];
  if (first === undefined || last === undefined) return null;
  const step = (along.to - along.from) / SECTIONS;
  const from = low ? along.from : turn(fails, Math.max(along.from, first - step), first);
  const to = high ? along.to : turn(fails, Math.min(along.to, last + step), last);
  if (failing.length === marks.length) return { variable: name, unit, side: 'always' };
  if (low && high) return { variable: name, unit, side: 'within', at: from, to };
  if (low) return { variable: name, unit, side: 'below', at: to };
  return high
    ? { variable: name, unit, side: 'above', at: from }
    : { variable: name, unit, side: 'within', at: from, to };
}

/** Halves the stretch between a value that is right and one that fails; the answer fails. */
function turn(fails: (value: number) => boolean, right: number, wrong: number): number {
  let good = right;
  let bad = wrong;
  for (let step = 0; step < STEPS; step++) {
    const half = good + (bad - good) / 2;
    if (fails(half)) bad = half;
    else good = half;
  }
  return bad;
}

function failsAt(bounds: Bounds, axes: Domain, i: number, value: number, strict: boolean): boolean {
  const box = boxOf(axes);
  box.lo[i] = value;
  box.hi[i] = value;
  const least = leastOver(bounds, box, { enough: 0, strictly: strict, near: 1e-6, budget: BUDGET });
  return least.hi < 0 || (least.hi <= 0 && strict);
}

/** Whether more of the variable makes the condition only better or only worse, whatever the others are. */
function oneWay(bounds: Bounds, axes: Domain, i: number): boolean {
  bounds.over(boxOf(axes));
  const slope = bounds.slopes()[i]!;
  return !bounds.partial && (slope.lo >= 0 || slope.hi <= 0);
}

const boxOf = (axes: Domain): Box => ({
  lo: Float64Array.from(axes, (one) => one.from),
  hi: Float64Array.from(axes, (one) => one.to),
});
