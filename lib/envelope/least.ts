import { addDown, addUp, type Interval, plus, times } from '../base/interval.ts';
import type { Bounds, Box } from './bounds.ts';

/** A box still to be looked into; nothing in it is below `lo`. */
type Piece = { readonly box: Box; readonly lo: number; readonly slopes: readonly Interval[] };

export type Aim = {
  /** Enough once the least value is known to be at least this, or above it. */
  readonly enough: number;
  readonly strictly: boolean;
  /** How near the least value must be known where it is below `enough`; relative above 1. Infinity: the sign will do. */
  readonly near: number;
  /** Boxes to look into at most, and how many of them once a value below `enough` is known. */
  readonly budget: number;
  readonly refine: number;
};

/**
 * The least value: surely not below `lo`, and at `at` surely not above `hi`. `partial`: somewhere the expression has no
 * value, or may have none, for the reason given. `rest`: the box where the search stood when it ended undecided.
 */
export type Least = {
  readonly lo: number;
  readonly hi: number;
  readonly at: readonly number[];
  readonly because: string;
  readonly rest: Box;
  readonly looked: number;
};

const COLLAPSES = 4;
/** Boxes to look into for a plain failure where there is no value in some place, and so no proof any more. */
const LOST = 256;
/** A gap that rounding alone may leave: to go on would only halve boxes. */
const TOO_NEAR = 1e-12;

/** Finds the least value over a box: ends where it rises or falls, halving the most telling variable elsewhere. */
export function leastOver(bounds: Bounds, whole: Box, aim: Aim): Least {
  const search = new Search(bounds, whole, aim);
  search.look(whole);
  let below = 0;
  while (search.queue.length > 0) {
    const piece = search.take();
    if (finished(search, piece, aim)) return search.result(piece);
    if (isBelow(search.hi, aim) && ++below > aim.refine) return search.result(piece);
    const widest = tellingVariable(piece);
    if (widest < 0) return search.result(piece);
    for (const half of halves(piece.box, widest, bounds.marks[widest]!)) search.look(half);
  }
  throw new Error('a search begins with one box and never loses the last');
}

const isPast = (value: number, aim: Aim): boolean => (aim.strictly ? value > aim.enough : value >= aim.enough);
const isBelow = (value: number, aim: Aim): boolean => value < aim.enough || (aim.strictly && value <= aim.enough);

function finished(search: Search, piece: Piece, aim: Aim): boolean {
  if (isPast(piece.lo, aim)) return search.because === '';
  if (search.because !== '' && search.looked >= LOST) return true;
  if (isBelow(search.hi, aim) && search.hi - piece.lo <= aim.near * Math.max(1, Math.abs(search.hi))) return true;
  return search.looked >= aim.budget || search.hi - piece.lo <= TOO_NEAR * Math.max(1, Math.abs(search.hi));
}

class Search {
  readonly queue: Piece[] = [];
  hi = Infinity;
  at: readonly number[];
  because = '';
  looked = 0;
  private readonly bounds: Bounds;
  private readonly aim: Aim;

  constructor(bounds: Bounds, whole: Box, aim: Aim) {
    this.bounds = bounds;
    this.aim = aim;
    this.at = whole.lo.slice();
  }

  look(first: Box): void {
    this.looked++;
    let box = first;
    let value = this.bounds.over(box);
    let slopes: readonly Interval[] = [];
    // Slopes of the larger box hold in the smaller one too.
    for (let i = 0; i < COLLAPSES && !this.bounds.partial && !this.settles(value) && !isPoint(box); i++) {
      slopes = this.bounds.slopes();
      const smaller = collapsed(box, slopes);
      if (smaller === null) break;
      box = smaller;
      value = this.bounds.over(box);
    }
    if (this.settles(value)) this.add({ box, lo: value.lo, slopes });
    else if (isPoint(box)) this.add({ box, lo: this.visited(value, box.lo), slopes });
    else this.lookInside(box, value, slopes);
  }

  /** Nothing more need be known of a box that is defined everywhere and past the aim. */
  private settles(value: Interval): boolean {
    return !this.bounds.partial && isPast(value.lo, this.aim);
  }

  private lookInside(box: Box, value: Interval, slopes: readonly Interval[]): void {
    const { partial } = this.bounds;
    const known = partial ? this.bounds.slopes() : slopes;
    const centre = middle(box);
    const there = this.visit(centre);
    this.visit(lowCorner(box, known));
    const lo = partial ? Number.NEGATIVE_INFINITY : Math.max(value.lo, aroundMiddle(there, box, centre, known));
    this.add({ box, lo: Number.isNaN(lo) ? Number.NEGATIVE_INFINITY : lo, slopes: known });
  }

  /** The lower bound at a point, which is remembered, or the reason why there is no value. */
  private visited(value: Interval, place: readonly number[]): number {
    if (this.bounds.partial) {
      this.because = this.bounds.because;
      return Number.NEGATIVE_INFINITY;
    }
    this.keep(value.hi, place);
    return value.lo;
  }

  private visit(place: readonly number[]): Interval {
    const value = this.bounds.over({ lo: place, hi: place });
    this.visited(value, place);
    return value;
  }

  private keep(value: number, place: readonly number[]): void {
    if (!(value < this.hi)) return;
    this.hi = value;
    this.at = place;
  }

  take(): Piece {
    const top = this.queue[0]!;
    const last = this.queue.pop()!;
    if (this.queue.length > 0) {
      this.queue[0] = last;
      this.sink();
    }
    return top;
  }

  private add(piece: Piece): void {
    const { queue } = this;
    queue.push(piece);
    for (let i = queue.length - 1; i > 0; ) {
      const parent = (i - 1) >> 1;
      if (queue[parent]!.lo <= queue[i]!.lo) return;
      [queue[parent], queue[i]] = [queue[i]!, queue[parent]!];
      i = parent;
    }
  }

  private sink(): void {
    const { queue } = this;
    for (let i = 0; ; ) {
      let least = i;
      for (const child of [2 * i + 1, 2 * i + 2])
        if (child < queue.length && queue[child]!.lo < queue[least]!.lo) least = child;
      if (least === i) return;
      [queue[i], queue[least]] = [queue[least]!, queue[i]!];
      i = least;
    }
  }

  result(piece: Piece): Least {
    return { lo: piece.lo, hi: this.hi, at: this.at, because: this.because, rest: piece.box, looked: this.looked };
  }
}

const isPoint = (box: Box): boolean => box.lo.every((value, i) => value === box.hi[i]);

const middle = (box: Box): readonly number[] => box.lo.map((value, i) => value + (box.hi[i]! - value) / 2);

/** Where the least value is to be guessed: the end to which each variable falls on the whole. */
const lowCorner = (box: Box, slopes: readonly Interval[]): readonly number[] =>
  box.lo.map((value, i) => (slopes[i]!.lo + slopes[i]!.hi >= 0 ? value : box.hi[i]!));

/** Variables along which the value only rises or only falls are put at their end; null when there is none. */
function collapsed(box: Box, slopes: readonly Interval[]): Box | null {
  let lo: number[] | null = null;
  let hi: number[] | null = null;
  for (const [i, slope] of slopes.entries()) {
    if (box.lo[i] === box.hi[i] || !(slope.lo >= 0 || slope.hi <= 0)) continue;
    lo ??= box.lo.slice();
    hi ??= box.hi.slice();
    if (slope.lo >= 0) hi[i] = lo[i]!;
    else lo[i] = hi[i]!;
  }
  return lo && hi && { lo, hi };
}

/** Lower bound by the value in the middle and the slopes around it. */
function aroundMiddle(value: Interval, box: Box, centre: readonly number[], slopes: readonly Interval[]): number {
  let sum = value;
  for (const [i, slope] of slopes.entries()) {
    if (box.lo[i] === box.hi[i]) continue;
    const offset = { lo: addDown(box.lo[i]!, -centre[i]!), hi: addUp(box.hi[i]!, -centre[i]!) };
    sum = plus(sum, times(slope, offset));
  }
  return sum.lo;
}

/** The variable whose range moves the value most; -1 when the box can't be halved any more. */
function tellingVariable({ box, slopes }: Piece): number {
  let best = -1;
  let most = -1;
  for (const [i, slope] of slopes.entries()) {
    const width = box.hi[i]! - box.lo[i]!;
    const half = box.lo[i]! + width / 2;
    if (!(half > box.lo[i]! && half < box.hi[i]!)) continue;
    const size = Math.max(Math.abs(slope.lo), Math.abs(slope.hi));
    const telling = Number.isFinite(size) ? size * width : Number.MAX_VALUE * Math.min(1, width / (1 + Math.abs(half)));
    if (telling > most) {
      most = telling;
      best = i;
    }
  }
  return best;
}

/** Cuts a box at the mark of a table that lies nearest to its middle, or in the middle. */
function halves(box: Box, i: number, marks: readonly number[]): readonly Box[] {
  const from = box.lo[i]!;
  const to = box.hi[i]!;
  const half = from + (to - from) / 2;
  let cut = half;
  let nearest = Infinity;
  for (const mark of marks) {
    if (mark <= from || mark >= to || Math.abs(mark - half) >= nearest) continue;
    nearest = Math.abs(mark - half);
    cut = mark;
  }
  const upper = box.hi.slice();
  const lower = box.lo.slice();
  upper[i] = cut;
  lower[i] = cut;
  return [
    { lo: box.lo, hi: upper },
    { lo: lower, hi: box.hi },
  ];
}
