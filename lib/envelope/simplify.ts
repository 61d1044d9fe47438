import { type Expression, max, min, number, partsOf } from '../base/expression.ts';

/**
 * The difference of two formulas, with what stands on both sides taken away. `max(1.13 VSR, 119) - 1.13 VSR` is then never
 * below zero by its form, where its bounds alone would leave a hair of doubt. Equal in real numbers, not only nearly.
 */
export function difference(left: Expression, right: Expression): Expression {
  // A plain number has nothing in common with a formula.
  if (left.kind === 'number' || right.kind === 'number') return { kind: 'sub', left, right };
  const interner = new Interner();
  return minus(interner, interner.one(left), interner.one(right), MOST_BRANCHES);
}

/** Branches of min and max that are told apart; more would cost more than they help. */
const MOST_BRANCHES = 16;

function minus(interner: Interner, left: Expression, right: Expression, branches: number): Expression {
  if (left === right) return number(0);
  if (branches > 1 && (left.kind === 'min' || left.kind === 'max')) {
    const first = minus(interner, left.left, right, branches / 2);
    const second = minus(interner, left.right, right, branches / 2);
    return interner.one((left.kind === 'min' ? min : max)(first, second));
  }
  if (branches > 1 && (right.kind === 'min' || right.kind === 'max')) {
    const first = minus(interner, left, right.left, branches / 2);
    const second = minus(interner, left, right.right, branches / 2);
    return interner.one((right.kind === 'min' ? max : min)(first, second));
  }
  return interner.one(linear(interner, left, right));
}

/** A sum as its parts, those that stand on both sides gone. */
function linear(interner: Interner, left: Expression, right: Expression): Expression {
  const plus: Expression[] = [];
  const less: Expression[] = [];
  flatten(left, plus, less);
  flatten(right, less, plus);
  for (let i = plus.length - 1; i >= 0; i--) {
    const twin = less.indexOf(plus[i]!);
    if (twin < 0) continue;
    plus.splice(i, 1);
    less.splice(twin, 1);
  }
  if (plus.length === 0 && less.length === 0) return number(0);
  const sum = (parts: readonly Expression[]): Expression =>
    parts.length === 0 ? number(0) : parts.reduce((a, b) => interner.one({ kind: 'add', left: a, right: b }));
  if (less.length === 0) return sum(plus);
  return { kind: 'sub', left: sum(plus), right: sum(less) };
}

function flatten(node: Expression, plus: Expression[], less: Expression[]): void {
  if (node.kind === 'add') {
    flatten(node.left, plus, less);
    flatten(node.right, plus, less);
  } else if (node.kind === 'sub') {
    flatten(node.left, plus, less);
    flatten(node.right, less, plus);
  } else plus.push(node);
}

/** Gives equal formulas one object, so that they are computed once and known to be the same. */
class Interner {
  private readonly known = new Map<string, Expression>();
  private readonly place = new Map<Expression, number>();

  one(node: Expression): Expression {
    if (this.place.has(node)) return node;
    const parts = partsOf(node).map((part) => this.one(part));
    const key = this.keyOf(node, parts);
    const before = this.known.get(key);
    if (before !== undefined) return before;
    const made = rebuilt(node, parts);
    this.known.set(key, made);
    this.place.set(made, this.place.size);
    return made;
  }

  private keyOf(node: Expression, parts: readonly Expression[]): string {
    const inside = parts.map((part) => this.place.get(part)).join(',');
    switch (node.kind) {
      case 'number':
        return Object.is(node.value, -0) ? '#0' : `#${node.value}`;
      case 'variable':
        return `@${node.name}`;
      case 'pow':
        return `pow ${node.exponent} ${inside}`;
      case 'piecewise':
        return `piecewise ${node.split} ${inside}`;
      case 'table1':
        return `table ${node.at.join()};${node.gives.join()};${inside}`;
      case 'table2':
        return `table ${node.at.join()};${node.by.join()};${node.gives.join('/')};${inside}`;
      default:
        return `${node.kind} ${inside}`;
    }
  }
}

function rebuilt(node: Expression, parts: readonly Expression[]): Expression {
  if (partsOf(node).every((part, i) => part === parts[i])) return node;
  switch (node.kind) {
    case 'number':
    case 'variable':
      return node;
    case 'sqrt':
    case 'exp':
    case 'pow':
    case 'table1':
      return { ...node, of: parts[0]! };
    case 'table2':
      return { ...node, of: parts[0]!, and: parts[1]! };
    case 'piecewise':
      return { ...node, of: parts[0]!, below: parts[1]!, above: parts[2]! };
    default:
      return { ...node, left: parts[0]!, right: parts[1]! };
  }
}
