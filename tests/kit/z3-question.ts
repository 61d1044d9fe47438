import type { init } from 'z3-solver';
import type { Expression } from '../../lib/base/expression.ts';
import type { Condition } from '../../lib/envelope/condition.ts';
import type { Question } from './questions.ts';

type Context = ReturnType<Awaited<ReturnType<typeof init>>['Context']>;
type Arith = ReturnType<Context['Real']['const']>;
type Bool = ReturnType<Arith['ge']>;

export type Answer = 'holds' | 'fails' | 'unknown';

/** Milliseconds after which the solver may say that it doesn't know. */
const PATIENCE = 5_000;

/** The same question put to a solver over the reals: is there a point of the domain where the condition is not true? */
export async function askSolver(z3: Context, { condition, domain }: Question): Promise<{ answer: Answer; ms: number }> {
  const solver = new z3.Solver();
  solver.set('timeout', PATIENCE);
  for (const { name, from, to } of domain) {
    const variable = z3.Real.const(name);
    solver.add(variable.ge(real(z3, from)), variable.le(real(z3, to)));
  }
  const translator = new Translator(z3, (fact) => solver.add(fact));
  solver.add(z3.Not(translator.condition(condition)));
  const before = performance.now();
  const said = await solver.check();
  const ms = performance.now() - before;
  solver.release();
  return { answer: said === 'unsat' ? 'holds' : said === 'sat' ? 'fails' : 'unknown', ms };
}

/** All digits of a double, as a fraction. */
function real(z3: Context, value: number) {
  let scaled = value;
  let places = 0n;
  while (!Number.isInteger(scaled)) {
    scaled *= 2;
    places++;
  }
  return z3.Real.val(`${BigInt(scaled)}/${2n ** places}`);
}

class Translator {
  private count = 0;
  private readonly z3: Context;
  private readonly know: (fact: Bool) => void;
  constructor(z3: Context, know: (fact: Bool) => void) {
    this.z3 = z3;
    this.know = know;
  }

  condition(condition: Condition): Bool {
    switch (condition.kind) {
      case 'not':
        return this.z3.Not(this.condition(condition.of));
      case 'all':
        return this.z3.And(...condition.of.map((part) => this.condition(part)));
      case 'any':
        return this.z3.Or(...condition.of.map((part) => this.condition(part)));
      case 'compare': {
        const left = this.number(condition.left);
        const right = this.number(condition.right);
        const deed = { '<': 'lt', '<=': 'le', '=': 'eq', '>=': 'ge', '>': 'gt' } as const;
        return left[deed[condition.op]](right) as Bool;
      }
    }
  }

  private number(node: Expression): Arith {
    const { z3 } = this;
    switch (node.kind) {
      case 'number':
        return real(z3, node.value) as unknown as Arith;
      case 'variable':
        return z3.Real.const(node.name);
      case 'add':
        return this.number(node.left).add(this.number(node.right));
      case 'sub':
        return this.number(node.left).sub(this.number(node.right));
      case 'mul':
        return this.number(node.left).mul(this.number(node.right));
      case 'div':
        return this.number(node.left).div(this.number(node.right));
      case 'min':
      case 'max': {
        const left = this.number(node.left);
        const right = this.number(node.right);
        return z3.If(node.kind === 'min' ? left.le(right) : left.ge(right), left, right) as unknown as Arith;
      }
      case 'sqrt': {
        const root = z3.Real.const(`root${this.count++}`);
        this.know(root.ge(0));
        this.know(root.mul(root).eq(this.number(node.of)));
        return root;
      }
      case 'table1':
        return this.table(node.at, node.gives, this.number(node.of));
      default:
        throw new Error(`${node.kind} is beyond polynomials`);
    }
  }

  /** One straight line after the other. */
  private table(at: readonly number[], gives: readonly number[], x: Arith): Arith {
    const line = (i: number): Arith => {
      const rise = real(this.z3, gives[i + 1]! - gives[i]!);
      const run = real(this.z3, at[i + 1]! - at[i]!);
      return x.sub(real(this.z3, at[i]!)).mul(rise.div(run)).add(real(this.z3, gives[i]!));
    };
    let whole = line(at.length - 2);
    for (let i = at.length - 3; i >= 0; i--) {
      whole = this.z3.If(x.le(real(this.z3, at[i + 1]!)), line(i), whole) as unknown as Arith;
    }
    return whole;
  }
}
