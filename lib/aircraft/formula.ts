import { add, div, type Expression, exp, max, min, mul, number, pow, sqrt, sub } from '../base/expression.ts';
import { err, ok, type Result } from '../base/result.ts';

/** `at`: offset in the text. */
export type FormulaProblem = { readonly at: number; readonly message: string };

const TOKEN = /\s*(?:(\d+(?:\.\d+)?(?:e[+-]?\d+)?)|([a-z_]\w*)|([-+*/^(),]))/iy;
const DEEPEST = 60;

type Token = { readonly kind: 'number' | 'name' | 'mark' | 'end'; readonly text: string; readonly at: number };

/**
 * Reads the formula of a sheet: numbers, names, `+ - * / ^`, brackets, `min( , )`, `max( , )`, `sqrt( )`, `exp( )`.
 * A name is asked from `look`, which gives its expression, or null when nothing has that name. The exponent is a number.
 */
export function parseFormula(
  text: string,
  look: (name: string) => Expression | null,
): Result<Expression, FormulaProblem> {
  try {
    const reader = new Reader(tokens(text), look);
    return ok(reader.whole());
  } catch (thrown) {
    if (thrown instanceof Refused) return err({ at: thrown.at, message: thrown.message });
    throw thrown;
  }
}

/** The names that a formula speaks of, whether or not anything has them; empty when it can't be read. */
export function namesInFormula(text: string): readonly string[] {
  const names = new Set<string>();
  const read = parseFormula(text, (name) => {
    names.add(name);
    return number(0);
  });
  return read.ok ? [...names] : [];
}

class Refused extends Error {
  readonly at: number;
  constructor(at: number, message: string) {
    super(message);
    this.at = at;
  }
}

function tokens(text: string): readonly Token[] {
  const found: Token[] = [];
  TOKEN.lastIndex = 0;
  let at = 0;
  while (text.slice(at).trim() !== '') {
    TOKEN.lastIndex = at;
    const match = TOKEN.exec(text);
    if (!match) throw new Refused(at, `"${text.slice(at).trim().charAt(0)}" has no meaning in a formula`);
    const body = match[1] ?? match[2] ?? match[3]!;
    const kind = match[1] !== undefined ? 'number' : match[2] !== undefined ? 'name' : 'mark';
    found.push({ kind, text: body, at: TOKEN.lastIndex - body.length });
    at = TOKEN.lastIndex;
  }
  return [...found, { kind: 'end', text: '', at: text.length }];
}

class Reader {
  private position = 0;
  private depth = 0;
  private readonly list: readonly Token[];
  private readonly look: (name: string) => Expression | null;
  constructor(list: readonly Token[], look: (name: string) => Expression | null) {
    this.list = list;
    this.look = look;
  }

  whole(): Expression {
    const expression = this.sum();
    const rest = this.here();
    if (rest.kind !== 'end') throw new Refused(rest.at, `the formula should end before "${rest.text}"`);
    return expression;
  }

  private here(): Token {
    return this.list[this.position]!;
  }

  private takes(mark: string): boolean {
    const token = this.here();
    if (token.kind !== 'mark' || token.text !== mark) return false;
    this.position++;
    return true;
  }

  private expects(mark: string): void {
    const token = this.here();
    if (!this.takes(mark))
      throw new Refused(
        token.at,
        `"${mark}" is expected before ${token.kind === 'end' ? 'the end' : `"${token.text}"`}`,
      );
  }

  private sum(): Expression {
    let left = this.product();
    for (;;) {
      if (this.takes('+')) left = add(left, this.product());
      else if (this.takes('-')) left = sub(left, this.product());
      else return left;
    }
  }

  private product(): Expression {
    let left = this.power();
    for (;;) {
      if (this.takes('*')) left = mul(left, this.power());
      else if (this.takes('/')) left = div(left, this.power());
      else return left;
    }
  }

  private power(): Expression {
    const base = this.single();
    if (!this.takes('^')) return base;
    const sign = this.takes('-') ? -1 : 1;
    const token = this.here();
    if (token.kind !== 'number') throw new Refused(token.at, 'an exponent is a plain number');
    this.position++;
    return pow(base, sign * Number(token.text));
  }

  private single(): Expression {
    const token = this.here();
    if (++this.depth > DEEPEST) throw new Refused(token.at, `the formula is nested deeper than ${DEEPEST} brackets`);
    const expression = this.atom(token);
    this.depth--;
    return expression;
  }

  private atom(token: Token): Expression {
    this.position++;
    if (token.kind === 'number') return number(Number(token.text));
    if (token.kind === 'name') return this.named(token);
    if (token.text === '-') return sub(number(0), this.power());
    if (token.text !== '(')
      throw new Refused(
        token.at,
        `a number or a name is expected${token.text === '' ? ' at the end' : `, not "${token.text}"`}`,
      );
    const inner = this.sum();
    this.expects(')');
    return inner;
  }

  private named(token: Token): Expression {
    if (token.text === 'sqrt' || token.text === 'exp') {
      this.expects('(');
      const of = this.sum();
      this.expects(')');
      return token.text === 'sqrt' ? sqrt(of) : exp(of);
    }
    if (token.text === 'min' || token.text === 'max') {
      this.expects('(');
      let all = this.sum();
      while (this.takes(',')) all = (token.text === 'min' ? min : max)(all, this.sum());
      this.expects(')');
      return all;
    }
    const expression = this.look(token.text);
    if (expression === null) throw new Refused(token.at, `nothing is called "${token.text}"`);
    return expression;
  }
}
