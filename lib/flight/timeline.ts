/**
 * Two pilots, each doing one thing at a time, and one voice channel for all (D7 of the project's reference). Times in
 * seconds from the start of the flight. Nothing here knows a procedure: duties come in, spans go out.
 */
import { assert } from '../base/assert.ts';
import { type Busy, busiest } from './timeline-busy.ts';

export type Pilot = 'PF' | 'PM';
export const PILOTS: readonly Pilot[] = ['PF', 'PM'];

/** One thing that somebody does once. */
export type Duty = {
  readonly id: string;
  /** Null: neither pilot (an automatic voice, the controller). */
  readonly who: Pilot | null;
  readonly does: string;
  /** s, before it is varied. */
  readonly takes: number;
  /** s of it before its words, before they are varied; null: nothing is said. */
  readonly speaks: number | null;
  /** Not before this moment; null: when what it follows is done. */
  readonly at: number | null;
  /** Ids of duties that are done before this one, and the time from the last of them. */
  readonly follows: readonly string[];
  readonly lag: number;
  /** An answer goes before all else that could be said then, an interruption before all that has not begun; `fixed` begins at
   *  its moment whatever else is spoken. */
  readonly order: 'in turn' | 'answer' | 'first' | 'fixed';
  /** Spoken in one breath with the others of this name (V1 with VR): no collision. */
  readonly breath: string | null;
  /** When it has to be done at the latest: a moment, or so many seconds behind the end of another; null: no such moment. */
  readonly deadline: number | { readonly behind: string; readonly seconds: number } | null;
};

/** How a duty came about: late is the wait behind its trigger, slack what is left to its deadline. */
export type Span = {
  readonly duty: Duty;
  readonly trigger: number;
  /** When its pilot was free for it: from here on it waited for the voice alone. */
  readonly ready: number;
  readonly start: number;
  /** Where its words begin; the end where there are none. */
  readonly said: number;
  readonly end: number;
  readonly late: number;
  readonly slack: number | null;
};
/** `second` wanted to be said while `first` was: it waited for that long, or was said over it. */
export type Collision = {
  readonly first: Span;
  readonly second: Span;
  readonly seconds: number;
  readonly over: boolean;
};

export type Timeline = {
  /** By their start. */
  readonly spans: readonly Span[];
  /** Whose trigger never comes, since what they follow never is. */
  readonly never: readonly Duty[];
  readonly busy: Readonly<Record<Pilot, { readonly ten: Busy; readonly thirty: Busy; readonly firstThirty: number }>>;
  readonly collisions: readonly Collision[];
  readonly end: number;
};

/** By how much a duration is stretched; 1 as it stands. */
export type Stretch = (duty: Duty) => number;

const SHORT = 10;
const LONG = 30;
/** Waits below this are rounding, s. */
const HAIR = 1e-9;

/**
 * Each duty starts at max(trigger, pilot free, voice free). Of several that could start next, the one that can start
 * soonest; then an interruption; then the one that was due first; then the one that stands first.
 */
export function timeline(duties: readonly Duty[], stretch: Stretch = () => 1): Timeline {
  const ids = new Set(duties.map((duty) => duty.id));
  assert(ids.size === duties.length, 'two duties have one id');
  const done = new Map<string, Span>();
  const free: Record<Pilot, number> = { PF: 0, PM: 0 };
  const voice: Words[] = [];
  let waiting = [...duties];
  const spans: Span[] = [];
  for (;;) {
    const ready = waiting.flatMap((duty): readonly Candidate[] => {
      const trigger = triggerOf(duty, done);
      if (trigger === null) return [];
      const whole = stretch(duty);
      const from = duty.order === 'fixed' ? trigger : Math.max(trigger, duty.who === null ? 0 : free[duty.who]);
      const start = duty.order === 'fixed' || duty.speaks === null ? from : whenHeard(duty, from, whole, voice);
      return [{ duty, trigger, ready: from, start, end: start + duty.takes * whole }];
    });
    let best: Candidate | null = null;
    for (const one of ready) {
      if (ready.some((other) => givesWay(one, other))) continue;
      if (best === null || before(one, best)) best = one;
    }
    if (best === null) break;
    const { duty, trigger, start, end } = best;
    if (duty.who !== null) free[duty.who] = Math.max(free[duty.who], end);
    const latest = deadlineOf(duty, done);
    const said = duty.speaks === null ? end : start + duty.speaks * stretch(duty);
    if (duty.speaks !== null) voice.push({ said, end });
    const slack = latest === null ? null : latest - end;
    const span = { duty, trigger, ready: best.ready, start, said, end, late: start - trigger, slack };
    spans.push(span);
    done.set(duty.id, span);
    waiting = waiting.filter((other) => other !== duty);
  }
  const end = spans.reduce((last, span) => Math.max(last, span.end), 0);
  return {
    spans,
    never: waiting,
    busy: { PF: busyOf('PF', spans), PM: busyOf('PM', spans) },
    collisions: collisionsOf(spans),
    end,
  };
}

type Words = { readonly said: number; readonly end: number };

/** The first start, from `ready` on, whose words find the channel free from their beginning to their end. */
function whenHeard(duty: Duty, ready: number, stretch: number, voice: readonly Words[]): number {
  const [lead, whole] = [(duty.speaks ?? 0) * stretch, duty.takes * stretch];
  let start = ready;
  for (;;) {
    const held = voice.find(({ said, end }) => start + lead < end - HAIR && start + whole > said + HAIR);
    if (held === undefined) return start;
    start = held.end - lead;
  }
}

function triggerOf(duty: Duty, done: ReadonlyMap<string, Span>): number | null {
  let last = Number.NEGATIVE_INFINITY;
  for (const id of duty.follows) {
    const span = done.get(id);
    if (span === undefined) return null;
    last = Math.max(last, span.end + duty.lag);
  }
  const at = Math.max(duty.at ?? Number.NEGATIVE_INFINITY, last);
  return Number.isFinite(at) ? at : null;
}

function deadlineOf({ deadline }: Duty, done: ReadonlyMap<string, Span>): number | null {
  if (deadline === null || typeof deadline === 'number') return deadline;
  const behind = done.get(deadline.behind);
  return behind === undefined ? null : behind.end + deadline.seconds;
}

type Candidate = Pick<Span, 'duty' | 'trigger' | 'ready' | 'start' | 'end'>;

/** Nobody begins something where what fell due before would come a moment later and be put off for longer than that moment. */
function givesWay(one: Candidate, other: Candidate): boolean {
  if (one.duty.who === null || one.duty.who !== other.duty.who || other.trigger >= one.trigger - HAIR) return false;
  if (RANK[one.duty.order] < RANK[other.duty.order]) return false;
  return one.end - other.start > other.start - one.start + HAIR && other.start >= one.start;
}

const RANK: Readonly<Record<Duty['order'], number>> = { fixed: 0, answer: 1, first: 2, 'in turn': 3 };

/** What stands first stays first where all else is equal. */
function before(a: Candidate, b: Candidate): boolean {
  if (Math.abs(a.start - b.start) >= HAIR) return a.start < b.start;
  const shared = a.duty.who === b.duty.who || (a.duty.speaks !== null && b.duty.speaks !== null);
  const rank = RANK[a.duty.order] - RANK[b.duty.order];
  if (shared && rank !== 0) return rank < 0;
  return a.trigger < b.trigger - HAIR;
}

function busyOf(pilot: Pilot, spans: readonly Span[]) {
  const own = spans.filter((span) => span.duty.who === pilot);
  return {
    ten: busiest(own, SHORT),
    thirty: busiest(own, LONG),
    firstThirty: own.reduce((sum, { start, end }) => sum + Math.max(0, Math.min(end, LONG) - start), 0) / LONG,
  };
}

/** Each spoken thing that waited for the voice of somebody else, with the one that held it longest; or that was said over it. */
function collisionsOf(spans: readonly Span[]): readonly Collision[] {
  const spoken = spans.filter((span) => span.duty.speaks !== null);
  return spoken.flatMap((second): readonly Collision[] => {
    const others = spoken.filter((first) => first !== second && !together(first.duty, second.duty));
    const over = others
      .filter((first) => first.said < second.said || (first.said === second.said && first.duty.id < second.duty.id))
      .map((first) => ({ first, second, seconds: common(first, second.said, second.end), over: true }));
    // Its words were due as soon as the hands before them would have been done; what kept the pilot is no collision.
    const due = second.ready + (second.said - second.start);
    const held = others.map((first) => ({ first, second, seconds: common(first, due, second.said), over: false }));
    const worst = [...over, ...held].reduce<Collision | null>(
      (most, one) => (one.seconds > HAIR && (most === null || one.seconds > most.seconds) ? one : most),
      null,
    );
    if (worst === null) return [];
    return [worst.over ? worst : { ...worst, seconds: held.reduce((sum, one) => sum + one.seconds, 0) }];
  });
}

/** One mouth, or one breath: nothing that could be said over the other. */
const together = (a: Duty, b: Duty): boolean =>
  (a.who !== null && a.who === b.who) || (a.breath !== null && a.breath === b.breath);

/** How much of the words of a span lies between two moments, s. */
const common = ({ said, end }: Span, from: number, to: number): number =>
  Math.max(0, Math.min(end, to) - Math.max(said, from));
