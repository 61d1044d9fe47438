import type { Table1, Table2 } from '../base/expression.ts';
import { hull, type Interval, minus, over, plus, point, times } from '../base/interval.ts';

export type TableBounds = { readonly value: Interval; readonly because: string };

const ANY: Interval = { lo: -Infinity, hi: Infinity };
const outside = (name: string, at: readonly number[]): string =>
  `the table by ${name} says nothing outside ${at[0]} to ${at[at.length - 1]}`;

/** Bounds of a table; `because` says where the question leaves the table. A table of one variable is bounded exactly. */
export function tableBounds(table: Table1 | Table2, a: Interval, b: Interval): TableBounds {
  if (table.kind === 'table1') return line(table.at, table.gives.map(point), a, table.name);
  const because = b.lo < table.by[0]! || b.hi > table.by[table.by.length - 1]! ? outside(table.name, table.by) : '';
  // Bilinear: for any y each row is a value on its own line, and the extremes over x lie on the rows and the ends.
  const rows = table.gives.map((row) => line(table.by, row.map(point), b, table.name).value);
  const found = line(table.at, rows, a, table.name);
  return { value: found.value, because: because || found.because };
}

/** Linear between points whose values are themselves intervals. */
function line(at: readonly number[], gives: readonly Interval[], x: Interval, name: string): TableBounds {
  const first = at[0]!;
  const last = at[at.length - 1]!;
  const because = x.lo < first || x.hi > last ? outside(name, at) : '';
  if (x.hi < first || x.lo > last) return { value: ANY, because };
  const from = Math.max(x.lo, first);
  const to = Math.min(x.hi, last);
  let value = onLine(at, gives, from);
  if (to > from) {
    value = hull(value, onLine(at, gives, to));
    for (const [i, place] of at.entries()) if (place > from && place < to) value = hull(value, gives[i]!);
  }
  return { value, because };
}

function onLine(at: readonly number[], gives: readonly Interval[], x: number): Interval {
  const i = segment(at, x);
  if (x === at[i]!) return gives[i]!;
  if (x === at[i + 1]!) return gives[i + 1]!;
  const share = over(minus(point(x), point(at[i]!)), minus(point(at[i + 1]!), point(at[i]!)));
  const rest = minus(point(1), share);
  return plus(times(rest, gives[i]!), times(share, gives[i + 1]!));
}

function segment(at: readonly number[], x: number): number {
  let i = 0;
  while (i < at.length - 2 && x > at[i + 1]!) i++;
  return i;
}

/** Slopes of a table over a box, by its first and its second variable. */
export function tableSlopes(table: Table1 | Table2, a: Interval, b: Interval): readonly [Interval, Interval] {
  if (table.kind === 'table1') return [steps(table.at, table.gives.map(point), a), point(0)];
  const rows = table.gives.map((row) => line(table.by, row.map(point), b, table.name).value);
  const across = table.gives.map((row) => steps(table.by, row.map(point), b));
  const met = across.filter((_, i) => meets(table.at, i, a));
  return [steps(table.at, rows, a), met.length === 0 ? ANY : met.reduce(hull)];
}

/** Whether the point `i` carries weight anywhere in `x`. */
function meets(at: readonly number[], i: number, x: Interval): boolean {
  const from = at[i - 1] ?? at[i]!;
  const to = at[i + 1] ?? at[i]!;
  return x.hi >= from && x.lo <= to;
}

function steps(at: readonly number[], gives: readonly Interval[], x: Interval): Interval {
  let found: Interval | null = null;
  for (let i = 0; i < at.length - 1; i++) {
    if (at[i + 1]! < x.lo || at[i]! > x.hi) continue;
    const slope = over(minus(gives[i + 1]!, gives[i]!), minus(point(at[i + 1]!), point(at[i]!)));
    found = found === null ? slope : hull(found, slope);
  }
  return found ?? ANY;
}
