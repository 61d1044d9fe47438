import {
  addDown,
  addUp,
  anything,
  divDown,
  divUp,
  type Interval,
  over,
  power,
  productDown,
  productUp,
} from '../base/interval.ts';
import { tableSlopes } from './table-bounds.ts';
import type { Line, Tape } from './tape.ts';

/**
 * Bounds of the slopes of an expression by each of its variables, found backward from the result. Where a formula bends
 * both slopes count; where it may jump no slope is known. The rows `lo` and `hi` are those of the values, kept by the owner.
 */
export class Slopes {
  private readonly lines: readonly Line[];
  private readonly active: readonly Line[];
  private readonly lo: Float64Array;
  private readonly hi: Float64Array;
  /** How the result moves with each line. */
  private readonly down: Float64Array;
  private readonly up: Float64Array;
  private readonly places: readonly number[];

  constructor(tape: Tape, active: readonly Line[], lo: Float64Array, hi: Float64Array) {
    this.lines = tape.lines;
    this.active = active;
    this.lo = lo;
    this.hi = hi;
    this.down = new Float64Array(tape.lines.length);
    this.up = new Float64Array(tape.lines.length);
    this.places = tape.variables.map((_, i) =>
      tape.lines.findIndex((line) => line.op === 'variable' && line.value === i),
    );
  }

  find(): readonly Interval[] {
    const { down, up, active } = this;
    down.fill(0);
    up.fill(0);
    down[this.lines.length - 1] = 1;
    up[this.lines.length - 1] = 1;
    for (let k = active.length - 1; k >= 0; k--) {
      const line = active[k]!;
      if (line.op !== 'variable' && (down[line.at] !== 0 || up[line.at] !== 0))
        this.push(line, down[line.at]!, up[line.at]!);
    }
    return this.places.map((at) => (at < 0 ? { lo: 0, hi: 0 } : { lo: down[at]!, hi: up[at]! }));
  }

  /** Gives the line `to` its share of the slope `from..till`, which it enters with a slope of `lo..hi`. */
  private give(to: number, from: number, till: number, lo: number, hi: number): void {
    if (this.lines[to]!.constant) return;
    this.down[to] = addDown(this.down[to]!, productDown(from, till, lo, hi));
    this.up[to] = addUp(this.up[to]!, productUp(from, till, lo, hi));
  }

  private push(line: Line, from: number, till: number): void {
    const { a, b, at } = line;
    const { lo, hi } = this;
    switch (line.op) {
      case 'add':
        this.give(a, from, till, 1, 1);
        this.give(b, from, till, 1, 1);
        break;
      case 'sub':
        this.give(a, from, till, 1, 1);
        this.give(b, from, till, -1, -1);
        break;
      case 'mul':
        this.give(a, from, till, lo[b]!, hi[b]!);
        this.give(b, from, till, lo[a]!, hi[a]!);
        break;
      case 'div':
        this.pushQuotient(line, from, till);
        break;
      case 'min':
      case 'max':
        this.pushExtreme(line, from, till);
        break;
      case 'exp':
        this.give(a, from, till, lo[at]!, hi[at]!);
        break;
      case 'sqrt': {
        const root = lo[at]!;
        if (root > 0) this.give(a, from, till, divDown(0.5, hi[at]!), divUp(0.5, root));
        else this.give(a, from, till, 0, Infinity);
        break;
      }
      case 'pow':
        this.pushPower(line, from, till);
        break;
      case 'piecewise':
        this.pushSplit(line, from, till);
        break;
      default: {
        const found = tableSlopes(line.table!, this.interval(a), this.interval(b));
        this.give(a, from, till, found[0].lo, found[0].hi);
        if (line.table!.kind === 'table2') this.give(b, from, till, found[1].lo, found[1].hi);
      }
    }
  }

  private interval(at: number): Interval {
    return { lo: this.lo[at]!, hi: this.hi[at]! };
  }

  private pushQuotient({ a, b, at }: Line, from: number, till: number): void {
    const by = this.interval(b);
    const one = over({ lo: 1, hi: 1 }, by);
    this.give(a, from, till, one.lo, one.hi);
    if (this.lines[b]!.constant) return;
    const back = over(this.interval(at), by);
    this.give(b, from, till, -back.hi, -back.lo);
  }

  private pushExtreme({ op, a, b }: Line, from: number, till: number): void {
    const { lo, hi } = this;
    const aIsLess = hi[a]! < lo[b]!;
    const bIsLess = hi[b]! < lo[a]!;
    const onlyA = op === 'min' ? aIsLess : bIsLess;
    const onlyB = op === 'min' ? bIsLess : aIsLess;
    if (!onlyB) this.give(a, from, till, onlyA ? 1 : 0, 1);
    if (!onlyA) this.give(b, from, till, onlyB ? 1 : 0, 1);
  }

  private pushPower({ a, value }: Line, from: number, till: number): void {
    const base = this.interval(a);
    const slope = base.lo < 0 && !Number.isInteger(value) ? anything : power(base, value - 1);
    this.give(
      a,
      from,
      till,
      productDown(value, value, slope.lo, slope.hi),
      productUp(value, value, slope.lo, slope.hi),
    );
  }

  private pushSplit({ a, b, c, value }: Line, from: number, till: number): void {
    const below = this.hi[a]! < value;
    const straddles = !below && this.lo[a]! < value;
    const share = straddles ? 0 : 1;
    if (straddles) this.give(a, from, till, -Infinity, Infinity);
    if (below || straddles) this.give(b, from, till, share, 1);
    if (!below) this.give(c, from, till, share, 1);
  }
}
