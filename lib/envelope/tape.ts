import { type Expression, partsOf, type Table1, type Table2 } from '../base/expression.ts';

export type Op = Expression['kind'];

/** One line: what to do with the results of earlier lines. `constant`: no variable enters it. */
export type Line = {
  /** Its own place. */
  readonly at: number;
  readonly op: Op;
  /** Places of the operands; 0 where there is none. */
  readonly a: number;
  readonly b: number;
  readonly c: number;
  /** The number, the exponent, the split, or which variable it is. */
  readonly value: number;
  readonly table: Table1 | Table2 | null;
  readonly constant: boolean;
};

/** An expression as a list of lines, each part once, operands first. `variables`: in order of appearance. */
export type Tape = { readonly lines: readonly Line[]; readonly variables: readonly string[] };

export function layOut(expression: Expression): Tape {
  const layer = new Layer();
  layer.lay(expression);
  return { lines: layer.lines, variables: [...layer.named.keys()] };
}

class Layer {
  readonly lines: Line[] = [];
  /** One line a variable, however often it is named: its slope is then found in one place. */
  readonly named = new Map<string, number>();
  private readonly place = new Map<Expression, number>();

  lay(node: Expression): number {
    const before = this.place.get(node) ?? (node.kind === 'variable' ? this.named.get(node.name) : undefined);
    if (before !== undefined) return before;
    const [a, b, c] = partsOf(node);
    const first = a === undefined ? 0 : this.lay(a);
    const second = b === undefined ? 0 : this.lay(b);
    const third = c === undefined ? 0 : this.lay(c);
    const free = (at: number, part: Expression | undefined): boolean => part === undefined || this.lines[at]!.constant;
    const at = this.lines.length;
    this.lines.push({
      at,
      op: node.kind,
      a: first,
      b: second,
      c: third,
      value: this.figure(node),
      table: node.kind === 'table1' || node.kind === 'table2' ? node : null,
      constant: node.kind !== 'variable' && free(first, a) && free(second, b) && free(third, c),
    });
    this.place.set(node, at);
    if (node.kind === 'variable') this.named.set(node.name, at);
    return at;
  }

  private figure(node: Expression): number {
    switch (node.kind) {
      case 'number':
        return node.value;
      case 'pow':
        return node.exponent;
      case 'piecewise':
        return node.split;
      case 'variable':
        return this.named.size;
      default:
        return 0;
    }
  }
}
