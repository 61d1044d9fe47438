import {
  addDown,
  addUp,
  anything,
  divDown,
  divUp,
  expDown,
  expUp,
  type Interval,
  power,
  productDown,
  productUp,
  sqrtDown,
  sqrtUp,
} from '../base/interval.ts';
import { Slopes } from './slopes.ts';
import { tableBounds } from './table-bounds.ts';
import type { Line, Tape } from './tape.ts';

/** A range for each variable, in the order of the tape. */
export type Box = { readonly lo: readonly number[]; readonly hi: readonly number[] };

/**
 * Bounds of an expression and of its slopes over boxes. One object serves one tape; the results of a call stand until
 * the next one. `partial`: somewhere in the box the expression may have no value, and `because` says which part.
 *
 * The ends stand in two rows of numbers, since a proof is nothing but many passes over them.
 */
export class Bounds {
  partial = false;
  because = '';
  /** For each variable the points of its tables and splits, where a formula bends: good places to cut a box. */
  readonly marks: readonly (readonly number[])[];
  private readonly lines: readonly Line[];
  private readonly lo: Float64Array;
  private readonly hi: Float64Array;
  private readonly active: readonly Line[];
  private readonly trouble: string;
  private readonly slopesOf: Slopes;

  constructor(tape: Tape) {
    this.lines = tape.lines;
    this.marks = tape.variables.map((_, i) => marksOf(tape, i));
    this.lo = new Float64Array(tape.lines.length);
    this.hi = new Float64Array(tape.lines.length);
    this.active = tape.lines.filter((line) => !line.constant);
    for (const line of tape.lines) if (line.constant) this.compute(line, NOWHERE);
    this.trouble = this.because;
    this.slopesOf = new Slopes(tape, this.active, this.lo, this.hi);
  }

  /** Surely contains every value that the expression has in the box. */
  over(box: Box): Interval {
    this.because = this.trouble;
    this.partial = this.because !== '';
    const { active } = this;
    for (let k = 0; k < active.length; k++) this.compute(active[k]!, box);
    const last = this.lines.length - 1;
    return { lo: this.lo[last]!, hi: this.hi[last]! };
  }

  /** Slopes by each variable over the box last asked, kinks included. */
  slopes(): readonly Interval[] {
    return this.slopesOf.find();
  }

  private leave(because: string): void {
    this.partial = true;
    if (this.because === '') this.because = because;
  }

  private set(line: Line, lo: number, hi: number): void {
    this.lo[line.at] = lo;
    this.hi[line.at] = hi;
  }

  private compute(line: Line, box: Box): void {
    const { a, b } = line;
    const alo = this.lo[a]!;
    const ahi = this.hi[a]!;
    const blo = this.lo[b]!;
    const bhi = this.hi[b]!;
    switch (line.op) {
      case 'number':
        this.set(line, line.value, line.value);
        break;
      case 'variable':
        this.set(line, box.lo[line.value]!, box.hi[line.value]!);
        break;
      case 'add':
        this.set(line, addDown(alo, blo), addUp(ahi, bhi));
        break;
      case 'sub':
        this.set(line, addDown(alo, -bhi), addUp(ahi, -blo));
        break;
      case 'mul':
        // A square written as a product is not a product of strangers.
        if (a === b) this.raise(line, alo, ahi, 2);
        else this.set(line, productDown(alo, ahi, blo, bhi), productUp(alo, ahi, blo, bhi));
        break;
      case 'div':
        this.divide(line, alo, ahi, blo, bhi);
        break;
      case 'min':
        this.set(line, Math.min(alo, blo), Math.min(ahi, bhi));
        break;
      case 'max':
        this.set(line, Math.max(alo, blo), Math.max(ahi, bhi));
        break;
      case 'exp':
        this.set(line, expDown(alo), expUp(ahi));
        break;
      case 'sqrt':
        if (alo < 0) this.leave('the root of a negative number');
        if (ahi < 0) this.set(line, -Infinity, Infinity);
        else this.set(line, sqrtDown(Math.max(0, alo)), sqrtUp(ahi));
        break;
      case 'pow':
        this.raise(line, alo, ahi, line.value);
        break;
      case 'piecewise':
        this.split(line, alo, ahi);
        break;
      default: {
        const found = tableBounds(line.table!, { lo: alo, hi: ahi }, { lo: blo, hi: bhi });
        if (found.because !== '') this.leave(found.because);
        this.set(line, found.value.lo, found.value.hi);
      }
    }
  }

  private divide(line: Line, alo: number, ahi: number, blo: number, bhi: number): void {
    if (blo <= 0 && bhi >= 0) {
      this.leave('a division by zero');
      this.set(line, -Infinity, Infinity);
    } else if (blo > 0) {
      this.set(line, divDown(alo, alo >= 0 ? bhi : blo), divUp(ahi, ahi >= 0 ? blo : bhi));
    } else {
      this.set(line, divDown(ahi, ahi >= 0 ? bhi : blo), divUp(alo, alo >= 0 ? blo : bhi));
    }
  }

  private raise(line: Line, alo: number, ahi: number, exponent: number): void {
    const whole = Number.isInteger(exponent);
    if (!whole && alo < 0) this.leave('a broken power of a negative number');
    if (exponent < 0 && alo <= 0 && ahi >= 0) this.leave('a division by zero');
    const found = !whole && ahi < 0 ? anything : power({ lo: whole ? alo : Math.max(0, alo), hi: ahi }, exponent);
    this.set(line, found.lo, found.hi);
  }

  private split(line: Line, alo: number, ahi: number): void {
    const { b, c, value } = line;
    if (ahi < value) this.set(line, this.lo[b]!, this.hi[b]!);
    else if (alo >= value) this.set(line, this.lo[c]!, this.hi[c]!);
    else this.set(line, Math.min(this.lo[b]!, this.lo[c]!), Math.max(this.hi[b]!, this.hi[c]!));
  }
}

const NOWHERE: Box = { lo: [], hi: [] };

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
