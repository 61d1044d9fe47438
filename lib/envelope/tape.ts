import type { Expression, Table1, Table2 } from '../base/expression.ts';
import { partsOf } from '../base/expression.ts';

export type Op = Expression['kind'];

/** One line: what to do with the results of earlier lines. `constant`: no variable enters it. */
export type Line = {
  /** Its own place. */
  readonly at: number;
  readonly op: Op;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  /** The number, the exponent, the split, or the place of the variable. */
  readonly value: number;
  readonly table: Table1 | Table2 | null;
  readonly constant: boolean;
};

/** An expression as a list of lines, each part once, operands first. */
export type Tape = { readonly lines: readonly Line[]; readonly variables: readonly string[] };

/** Lays an expression out. Variables are numbered as in `order`; one that isn't there throws. */
export function layOut(expression: Expression, order: readonly string[]): Tape {
  const place = new Map<Expression, number>();
  const lines: Line[] = [];
  /** One line a variable, however often it is named: its slope is then found in one place. */
  const named = new Map<string, number>();
  const lay = (node: Expression): number => {
    const before = place.get(node) ?? (node.kind === 'variable' ? named.get(node.name) : undefined);
    if (before !== undefined) return before;
    const parts = partsOf(node).map(lay);
    const line: Line = {
      at: lines.length,
      op: node.kind,
      a: parts[0] ?? 0,
      b: parts[1] ?? 0,
      c: parts[2] ?? 0,
      value: ownFigure(node, order),
      table: node.kind === 'table1' || node.kind === 'table2' ? node : null,
      constant: node.kind !== 'variable' && parts.every((part) => lines[part]!.constant),
    };
    lines.push(line);
    place.set(node, lines.length - 1);
    if (node.kind === 'variable') named.set(node.name, lines.length - 1);
    return lines.length - 1;
  };
  lay(expression);
  return { lines, variables: order };
}

function ownFigure(node: Expression, order: readonly string[]): number {
  switch (node.kind) {
    case 'number':
      return node.value;
    case 'pow':
      return node.exponent;
    case 'piecewise':
      return node.split;
    case 'variable': {
      const index = order.indexOf(node.name);
      if (index < 0) throw new Error(`the domain says nothing of ${node.name}`);
      return index;
    }
    default:
      return 0;
  }
}
