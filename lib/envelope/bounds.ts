import { addDown, addUp, bounded, type Interval, over, plus, power, times } from '../base/interval.ts';
import { tableBounds, tableSlopes } from './table-bounds.ts';
import type { Line, Tape } from './tape.ts';

/** What is known of an expression over one box. */
export type Box = { readonly lo: Float64Array; readonly hi: Float64Array };

const ZERO: Interval = { lo: 0, hi: 0 };
const ANY: Interval = { lo: -Infinity, hi: Infinity };

/**
 * Bounds of an expression and of its slopes over boxes. One object serves one tape; the results of a call stand until
 * the next one. `partial`: somewhere in the box the expression may have no value, and `because` says which part.
 */
export class Bounds {
  partial = false;
  because = '';
  /** For each variable the points of its tables and splits, where a formula bends: good places to cut a box. */
  readonly marks: readonly (readonly number[])[];
  private readonly tape: Tape;
  private readonly values: Interval[];
  private readonly adjoint: Interval[];
  private readonly active: readonly number[];
  private readonly constantTrouble: string;

  constructor(tape: Tape) {
    this.tape = tape;
    this.marks = tape.variables.map((_, i) => marksOf(tape, i));
    this.values = tape.lines.map(() => ANY);
    this.adjoint = tape.lines.map(() => ZERO);
    this.active = tape.lines.flatMap((line, i) => (line.constant ? [] : [i]));
    for (const [i, line] of tape.lines.entries()) if (line.constant) this.values[i] = this.compute(line, null);
    this.constantTrouble = this.because;
  }

  /** Surely contains every value that the expression has in the box. */
  over(box: Box): Interval {
    this.because = this.constantTrouble;
    this.partial = this.because !== '';
    for (const i of this.active) this.values[i] = this.compute(this.tape.lines[i]!, box);
    return this.values[this.values.length - 1]!;
  }

  /** Slopes by each variable, over the box last asked. Surely contain every slope, kinks included. */
  slopes(): readonly Interval[] {
    const { lines, variables } = this.tape;
    this.adjoint.fill(ZERO);
    this.adjoint[lines.length - 1] = { lo: 1, hi: 1 };
    const found: Interval[] = variables.map(() => ZERO);
    for (let k = this.active.length - 1; k >= 0; k--) {
      const i = this.active[k]!;
      const line = lines[i]!;
      const out = this.adjoint[i]!;
      if (out.lo === 0 && out.hi === 0) continue;
      if (line.op === 'variable') found[line.value] = plus(found[line.value]!, out);
      else this.push(line, i, out);
    }
    return found;
  }

  private trouble(because: string): void {
    this.partial = true;
    if (this.because === '') this.because = because;
  }

  private compute(line: Line, box: Box | null): Interval {
    const a = this.values[line.a] ?? ZERO;
    const b = this.values[line.b] ?? ZERO;
    switch (line.op) {
      case 'number':
        return { lo: line.value, hi: line.value };
      case 'variable':
        return { lo: box!.lo[line.value]!, hi: box!.hi[line.value]! };
      case 'add':
        return { lo: addDown(a.lo, b.lo), hi: addUp(a.hi, b.hi) };
      case 'sub':
        return { lo: addDown(a.lo, -b.hi), hi: addUp(a.hi, -b.lo) };
      case 'mul':
        // A square written as a product is not a product of strangers.
        return line.a === line.b ? power(a, 2) : times(a, b);
      case 'div':
        if (b.lo <= 0 && b.hi >= 0) this.trouble('a division by zero');
        return over(a, b);
      case 'min':
        return bounded.min(a, b);
      case 'max':
        return bounded.max(a, b);
      case 'exp':
        return bounded.exp(a);
      case 'sqrt':
        if (a.lo < 0) this.trouble('the root of a negative number');
        return a.hi < 0 ? ANY : bounded.sqrt({ lo: Math.max(0, a.lo), hi: a.hi });
      case 'pow':
        return this.raised(line, a);
      case 'piecewise': {
        const low = this.values[line.b]!;
        const high = this.values[line.c]!;
        if (a.hi < line.value) return low;
        return a.lo >= line.value ? high : { lo: Math.min(low.lo, high.lo), hi: Math.max(low.hi, high.hi) };
      }
      default: {
        const found = tableBounds(line.table!, a, b);
        if (found.because !== '') this.trouble(found.because);
        return found.value;
      }
    }
  }

  private raised(line: Line, a: Interval): Interval {
    const whole = Number.isInteger(line.value);
    if (!whole && a.lo < 0) this.trouble('a broken power of a negative number');
    if (line.value < 0 && a.lo <= 0 && a.hi >= 0) this.trouble('a division by zero');
    if (whole || a.lo >= 0) return power(a, line.value);
    return a.hi < 0 ? ANY : power({ lo: 0, hi: a.hi }, line.value);
  }

  private give(to: number, slope: Interval, out: Interval): void {
    if (this.tape.lines[to]!.constant) return;
    this.adjoint[to] = plus(this.adjoint[to]!, times(out, slope));
  }

  private push(line: Line, i: number, out: Interval): void {
    const a = this.values[line.a]!;
    const b = this.values[line.b] ?? ZERO;
    const one = { lo: 1, hi: 1 };
    switch (line.op) {
      case 'add':
        this.give(line.a, one, out);
        this.give(line.b, one, out);
        break;
      case 'sub':
        this.give(line.a, one, out);
        this.give(line.b, { lo: -1, hi: -1 }, out);
        break;
      case 'mul':
        this.give(line.a, b, out);
        this.give(line.b, a, out);
        break;
      case 'div': {
        this.give(line.a, over(one, b), out);
        const back = over(this.values[i]!, b);
        this.give(line.b, { lo: -back.hi, hi: -back.lo }, out);
        break;
      }
      case 'min':
      case 'max': {
        const firstIsLess = a.hi < b.lo;
        const secondIsLess = b.hi < a.lo;
        const first = line.op === 'min' ? firstIsLess : secondIsLess;
        const second = line.op === 'min' ? secondIsLess : firstIsLess;
        if (!second) this.give(line.a, first ? one : { lo: 0, hi: 1 }, out);
        if (!first) this.give(line.b, second ? one : { lo: 0, hi: 1 }, out);
        break;
      }
      case 'exp':
        this.give(line.a, this.values[i]!, out);
        break;
      case 'sqrt': {
        const root = this.values[i]!;
        this.give(line.a, root.lo > 0 ? over({ lo: 0.5, hi: 0.5 }, root) : { lo: 0, hi: Infinity }, out);
        break;
      }
      case 'pow': {
        const slope = a.lo >= 0 || Number.isInteger(line.value) ? power(a, line.value - 1) : ANY;
        this.give(line.a, times({ lo: line.value, hi: line.value }, slope), out);
        break;
      }
      case 'piecewise':
        this.pushSplit(line, a, out);
        break;
      default: {
        const [by, across] = tableSlopes(line.table!, a, b);
        this.give(line.a, by, out);
        if (line.b >= 0) this.give(line.b, across, out);
      }
    }
  }

  private pushSplit(line: Line, a: Interval, out: Interval): void {
    const below = a.hi < line.value;
    const straddles = !below && a.lo < line.value;
    const share = { lo: straddles ? 0 : 1, hi: 1 };
    // Where the split lies inside there may be a jump, and no slope is known.
    if (straddles) this.give(line.a, ANY, out);
    if (below || straddles) this.give(line.b, share, out);
    if (!below) this.give(line.c, share, out);
  }
}

function marksOf(tape: Tape, variable: number): readonly number[] {
  const isIt = (line: number): boolean => tape.lines[line]?.op === 'variable' && tape.lines[line].value === variable;
  const marks = tape.lines.flatMap((line) => {
    if (line.op === 'piecewise') return isIt(line.a) ? [line.value] : [];
    if (line.table === null) return [];
    const across = line.table.kind === 'table2' && isIt(line.b) ? line.table.by : [];
    return [...(isIt(line.a) ? line.table.at : []), ...across];
  });
  return [...new Set(marks)];
}
