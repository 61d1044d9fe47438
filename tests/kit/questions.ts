import {
  add,
  div,
  type Expression,
  exp,
  max,
  min,
  mul,
  number,
  pow,
  sqrt,
  sub,
  table1,
  variable,
} from '../../lib/base/expression.ts';
import type { Condition } from '../../lib/envelope/condition.ts';
import { axis, type Domain } from '../../lib/envelope/domain.ts';
import type { Comparison } from '../../lib/gate/syntax.ts';

export type Question = { readonly condition: Condition; readonly domain: Domain };

/** Chance that can be repeated: the same seed, the same numbers (mulberry32, from memory). */
export function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

const OPS: readonly Comparison[] = ['<', '<=', '>=', '>'];

/**
 * Questions of the kind that a check asks: speeds by root of weight, tables, limits, additions by wind, greatest and least,
 * products and quotients, one or two comparisons. `rich` adds powers, exponentials, splits and tables of two variables,
 * which a solver over real polynomials has no word for.
 */
export class Questions {
  private readonly next: () => number;
  private readonly rich: boolean;
  constructor(seed: number, rich: boolean) {
    this.next = chance(seed);
    this.rich = rich;
  }

  one(): Question {
    const domain = this.domain();
    const compare = (): Condition => this.compare();
    const shape = this.next();
    if (shape < 0.7) return { condition: compare(), domain };
    if (shape < 0.8) return { condition: { kind: 'not', of: compare() }, domain };
    return { condition: { kind: shape < 0.9 ? 'all' : 'any', of: [compare(), compare()] }, domain };
  }

  private whole(from: number, to: number): number {
    return from + Math.floor(this.next() * (to - from + 1));
  }

  private pick<T>(list: readonly T[]): T {
    return list[this.whole(0, list.length - 1)]!;
  }

  private domain(): Domain {
    const low = this.whole(40, 60);
    const head = this.whole(-20, 10);
    return [
      axis('weight', low, low + this.whole(1, 30), 't'),
      axis('wind', head, head + this.whole(1, 40), 'kt'),
      axis('elevation', this.whole(0, 2), this.whole(3, 8), 'thousand ft'),
    ];
  }

  private compare(): Condition {
    const left = this.speed(2);
    // Half the limits lie where the two sides meet somewhere.
    const right = this.next() < 0.5 ? number(this.whole(90, 260)) : this.speed(1);
    return { kind: 'compare', left, op: this.pick(OPS), right };
  }

  /** Something of the size of a speed. */
  private speed(depth: number): Expression {
    const kinds = this.rich ? 12 : 9;
    switch (depth <= 0 ? this.whole(0, 3) : this.whole(0, kinds - 1)) {
      case 0:
        return number(this.whole(90, 250));
      case 1:
        return mul(number(this.whole(14, 26)), sqrt(variable('weight')));
      case 2:
        return add(number(this.whole(60, 120)), mul(number(this.whole(2, 12) / 4), variable('weight')));
      case 3:
        return this.table();
      case 4:
        return add(this.speed(depth - 1), this.addition());
      case 5:
        return max(this.speed(depth - 1), this.speed(depth - 1));
      case 6:
        return min(this.speed(depth - 1), this.speed(depth - 1));
      case 7:
        return sub(this.speed(depth - 1), number(this.whole(1, 20)));
      case 8:
        return this.quotient();
      case 9:
        return mul(
          number(this.whole(100, 180)),
          pow(div(variable('weight'), number(50)), this.pick([0.5, 0.75, 1.5, 2, 2.5])),
        );
      case 10:
        return mul(this.speed(depth - 1), exp(div(variable('elevation'), number(this.whole(60, 200)))));
      default:
        return this.split(depth);
    }
  }

  /** Half the head wind, between two bounds. */
  private addition(): Expression {
    const half = mul(number(0.5), variable('wind'));
    return max(number(this.whole(0, 5)), min(number(this.whole(10, 20)), half));
  }

  /** Rises with elevation, or bends: the worst may lie inside the range. */
  private quotient(): Expression {
    const w = variable('weight');
    const bend = mul(sub(w, number(this.whole(45, 75))), sub(w, number(this.whole(45, 75))));
    const e = variable('elevation');
    return this.next() < 0.5
      ? add(number(this.whole(80, 200)), mul(number(this.whole(-4, 4) / 16), bend))
      : div(mul(number(this.whole(5, 30)), w), add(number(this.whole(3, 9)), e));
  }

  private table(): Expression {
    let x = 36;
    let y = this.whole(80, 160);
    const at: number[] = [];
    const gives: number[] = [];
    while (x < 96) {
      at.push(x);
      gives.push(y);
      x += this.whole(6, 16);
      y += this.whole(-2, 16);
    }
    return table1(variable('weight'), [...at, 96], [...gives, y]);
  }

  private split(depth: number): Expression {
    if (this.next() < 0.5) {
      const split = this.whole(45, 80);
      return {
        kind: 'piecewise',
        of: variable('weight'),
        split,
        below: this.speed(depth - 1),
        above: this.speed(depth - 1),
      };
    }
    const row = () => [this.whole(90, 140), this.whole(120, 180), this.whole(150, 200)];
    return {
      kind: 'table2',
      of: variable('weight'),
      and: variable('elevation'),
      at: [36, 64, 96],
      by: [0, 4, 8],
      gives: [row(), row(), row()],
      name: 'weight and elevation',
    };
  }
}
