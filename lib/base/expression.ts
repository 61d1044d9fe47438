/**
 * A formula as a value: what a sheet, a gate or a physical law says about numbers, kept so that it can be computed at one
 * point, bounded over a box, and printed. Pure data: two uses of one part share the object, and are then computed once.
 */
import type { Arithmetic } from './arithmetic.ts';

export type Table1 = {
  readonly kind: 'table1';
  readonly of: Expression;
  readonly at: readonly number[];
  readonly gives: readonly number[];
  readonly name: string;
};
/** Bilinear. `gives[i][j]` belongs to `at[i]` of `of` and `by[j]` of `and`. */
export type Table2 = {
  readonly kind: 'table2';
  readonly of: Expression;
  readonly and: Expression;
  readonly at: readonly number[];
  readonly by: readonly number[];
  readonly gives: readonly (readonly number[])[];
  readonly name: string;
};

export type Expression =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'variable'; readonly name: string }
  | {
      readonly kind: 'add' | 'sub' | 'mul' | 'div' | 'min' | 'max';
      readonly left: Expression;
      readonly right: Expression;
    }
  | { readonly kind: 'sqrt' | 'exp'; readonly of: Expression }
  | { readonly kind: 'pow'; readonly of: Expression; readonly exponent: number }
  | Table1
  | Table2
  /** `below` holds while `of` < `split`, `above` from there on. */
  | {
      readonly kind: 'piecewise';
      readonly of: Expression;
      readonly split: number;
      readonly below: Expression;
      readonly above: Expression;
    };

export const number = (value: number): Expression => ({ kind: 'number', value });
export const variable = (name: string): Expression => ({ kind: 'variable', name });

type Dyad = 'add' | 'sub' | 'mul' | 'div' | 'min' | 'max';
const dyad =
  (kind: Dyad) =>
  (left: Expression, right: Expression): Expression => ({ kind, left, right });

export const add = dyad('add');
export const sub = dyad('sub');
export const mul = dyad('mul');
export const div = dyad('div');
export const min = dyad('min');
export const max = dyad('max');
export const sqrt = (of: Expression): Expression => ({ kind: 'sqrt', of });
export const exp = (of: Expression): Expression => ({ kind: 'exp', of });
export const pow = (of: Expression, exponent: number): Expression => ({ kind: 'pow', of, exponent });

/** Linear between its points, undefined outside them: a table never guesses. `at` rises strictly. */
export const table1 = (
  of: Expression,
  at: readonly number[],
  gives: readonly number[],
  name = 'table',
): Expression => ({
  kind: 'table1',
  of,
  at,
  gives,
  name,
});

/** Computes with formulas instead of numbers: a law written over `Arithmetic` comes out as an expression to be proven. */
export const symbolic: Arithmetic<Expression> = { of: number, add, sub, mul, div, pow, sqrt, exp, min, max };

/** The operands of a node, left to right. */
export function partsOf(node: Expression): readonly Expression[] {
  switch (node.kind) {
    case 'number':
    case 'variable':
      return [];
    case 'sqrt':
    case 'exp':
    case 'pow':
    case 'table1':
      return [node.of];
    case 'table2':
      return [node.of, node.and];
    case 'piecewise':
      return [node.of, node.below, node.above];
    default:
      return [node.left, node.right];
  }
}

/** Value at one point. NaN where the formula has none: outside a table, a root of a negative, a variable without a value. */
export function evaluate(expression: Expression, at: Readonly<Record<string, number>>): number {
  const known = new Map<Expression, number>();
  const value = (node: Expression): number => {
    const before = known.get(node);
    if (before !== undefined) return before;
    const result = compute(node, value, at);
    known.set(node, result);
    return result;
  };
  return value(expression);
}

function compute(node: Expression, value: (part: Expression) => number, at: Readonly<Record<string, number>>): number {
  switch (node.kind) {
    case 'number':
      return node.value;
    case 'variable':
      return at[node.name] ?? Number.NaN;
    case 'add':
      return value(node.left) + value(node.right);
    case 'sub':
      return value(node.left) - value(node.right);
    case 'mul':
      return value(node.left) * value(node.right);
    case 'div':
      return value(node.right) === 0 ? Number.NaN : value(node.left) / value(node.right);
    case 'min':
      return Math.min(value(node.left), value(node.right));
    case 'max':
      return Math.max(value(node.left), value(node.right));
    case 'sqrt':
      return Math.sqrt(value(node.of));
    case 'exp':
      return Math.exp(value(node.of));
    case 'pow':
      return value(node.of) ** node.exponent;
    case 'table1':
      return interpolate(node.at, node.gives, value(node.of));
    case 'table2': {
      const y = value(node.and);
      const rows = node.gives.map((row) => interpolate(node.by, row, y));
      return interpolate(node.at, rows, value(node.of));
    }
    case 'piecewise':
      return value(node.of) < node.split ? value(node.below) : value(node.above);
  }
}

/** Linear between neighbours; NaN outside. `at` rises strictly and has at least one point. */
export function interpolate(at: readonly number[], gives: readonly number[], x: number): number {
  const last = at.length - 1;
  if (!(x >= at[0]! && x <= at[last]!)) return Number.NaN;
  let i = 0;
  while (i < last - 1 && x > at[i + 1]!) i++;
  if (last === 0) return gives[0]!;
  const share = (x - at[i]!) / (at[i + 1]! - at[i]!);
  return gives[i]! + share * (gives[i + 1]! - gives[i]!);
}
