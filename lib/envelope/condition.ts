import { type Expression, max, min } from '../base/expression.ts';
import type { Comparison } from '../gate/syntax.ts';
import { difference } from './simplify.ts';

/** `left op right`, in one unit; the names are for the sentence. */
export type Compare = {
  readonly kind: 'compare';
  readonly left: Expression;
  readonly op: Comparison;
  readonly right: Expression;
  readonly leftName?: string;
  readonly rightName?: string;
  readonly unit?: string;
};
export type Condition =
  | Compare
  | { readonly kind: 'all' | 'any'; readonly of: readonly Condition[] }
  | { readonly kind: 'not'; readonly of: Condition };

export const compare = (left: Expression, op: Comparison, right: Expression): Compare => ({
  kind: 'compare',
  left,
  op,
  right,
});

/**
 * A condition as one number: it holds where the margin is above zero, and at zero only where it isn't strict.
 * `mixed`: some parts are strict and some not, so that zero itself decides nothing.
 */
export type Margin = { readonly margin: Expression; readonly strict: 'no' | 'yes' | 'mixed' };

export function marginOf(condition: Condition, turned = false): Margin {
  switch (condition.kind) {
    case 'not':
      return marginOf(condition.of, !turned);
    case 'compare':
      return compared(condition, turned);
    default: {
      const parts = condition.of.map((part) => marginOf(part, turned));
      const narrow = (condition.kind === 'all') !== turned;
      const [first, ...rest] = parts;
      if (first === undefined) throw new Error('a condition of no parts asks nothing');
      return rest.reduce(
        (sum, part) => ({
          margin: (narrow ? min : max)(sum.margin, part.margin),
          strict: sum.strict === part.strict ? sum.strict : 'mixed',
        }),
        first,
      );
    }
  }
}

const TURNED: Readonly<Record<Comparison, Comparison | '≠'>> = { '<': '>=', '<=': '>', '=': '≠', '>=': '<', '>': '<=' };

function compared({ left, op, right }: Compare, turned: boolean): Margin {
  const way = turned ? TURNED[op] : op;
  switch (way) {
    case '>':
    case '>=':
      return { margin: difference(left, right), strict: way === '>' ? 'yes' : 'no' };
    case '<':
    case '<=':
      return { margin: difference(right, left), strict: way === '<' ? 'yes' : 'no' };
    case '=':
      return { margin: min(difference(left, right), difference(right, left)), strict: 'no' };
    case '≠':
      return { margin: max(difference(left, right), difference(right, left)), strict: 'yes' };
  }
}
