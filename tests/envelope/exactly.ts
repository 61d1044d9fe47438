import Decimal from 'decimal.js';
import type { Expression } from '../../lib/base/expression.ts';
import type { Condition } from '../../lib/envelope/condition.ts';

const Deep = Decimal.clone({ precision: 40 });
type Point = Readonly<Record<string, number>>;

/** Computed at 40 digits, by an evaluator of its own that shares nothing with the house but the shape of a formula. */
export function exactly(node: Expression, at: Point): Decimal {
  switch (node.kind) {
    case 'number':
      return new Deep(node.value);
    case 'variable':
      return new Deep(at[node.name]!);
    case 'add':
      return exactly(node.left, at).add(exactly(node.right, at));
    case 'sub':
      return exactly(node.left, at).sub(exactly(node.right, at));
    case 'mul':
      return exactly(node.left, at).mul(exactly(node.right, at));
    case 'div':
      return exactly(node.left, at).div(exactly(node.right, at));
    case 'min':
      return Deep.min(exactly(node.left, at), exactly(node.right, at));
    case 'max':
      return Deep.max(exactly(node.left, at), exactly(node.right, at));
    case 'sqrt':
      return exactly(node.of, at).sqrt();
    case 'exp':
      return exactly(node.of, at).exp();
    case 'pow':
      return exactly(node.of, at).pow(new Deep(node.exponent));
    case 'table1':
      return onLine(
        node.at,
        node.gives.map((value) => new Deep(value)),
        exactly(node.of, at),
      );
    case 'table2': {
      const across = exactly(node.and, at);
      const rows = node.gives.map((row) =>
        onLine(
          node.by,
          row.map((value) => new Deep(value)),
          across,
        ),
      );
      return onLine(node.at, rows, exactly(node.of, at));
    }
    case 'piecewise':
      return exactly(node.of, at).lt(node.split) ? exactly(node.below, at) : exactly(node.above, at);
  }
}

function onLine(at: readonly number[], gives: readonly Decimal[], x: Decimal): Decimal {
  const after = at.findIndex((value) => x.lte(value));
  if (after < 0) return new Deep(Number.NaN);
  const i = Math.max(1, after);
  const from = new Deep(at[i - 1]!);
  const share = x.sub(from).div(new Deep(at[i]!).sub(from));
  return gives[i - 1]!.add(share.mul(gives[i]!.sub(gives[i - 1]!)));
}

/** Far above the error of 40 digits, far below any double that matters. */
const HAIR = new Deep('1e-30');

/** Whether the condition is true at a point. */
export function trueAt(condition: Condition, at: Point): boolean {
  switch (condition.kind) {
    case 'not':
      return !trueAt(condition.of, at);
    case 'all':
      return condition.of.every((part) => trueAt(part, at));
    case 'any':
      return condition.of.some((part) => trueAt(part, at));
    case 'compare': {
      const gap = exactly(condition.left, at).sub(exactly(condition.right, at));
      const equal = gap.abs().lt(HAIR);
      switch (condition.op) {
        case '<':
          return !equal && gap.lt(0);
        case '<=':
          return equal || gap.lt(0);
        case '=':
          return equal;
        case '>=':
          return equal || gap.gt(0);
        case '>':
          return !equal && gap.gt(0);
      }
    }
  }
}
