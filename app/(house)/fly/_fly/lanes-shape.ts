// What happened on each line of the score: which mode word stood when and who changed it, what moved for how long, what each
// pilot did and when it was asked of him. Seconds only; where they stand on the page is the axis' business.
import { interruptionOf } from '../../../../lib/flight/interruptions.ts';
import type { Collision, Pilot, Span, Timeline } from '../../../../lib/flight/timeline.ts';
import type { Trace } from '../../../../lib/flight/trace.ts';

export type ModeAxis = 'thrust' | 'lateral' | 'vertical' | 'armed';
export const MODE_AXES: readonly ModeAxis[] = ['thrust', 'lateral', 'vertical', 'armed'];
export type Who = 'crew' | 'automatic' | 'environment';

/** A word from one moment to another. `by` null: it stood there at the first moment. */
export type ModeSegment = {
  readonly word: string;
  readonly from: number;
  readonly to: number;
  readonly by: Who | null;
};

export function modeSegments({ events, lines, end }: Trace, name: ModeAxis): readonly ModeSegment[] {
  const segments: { word: string; from: number; to: number; by: Who | null }[] = [];
  for (const { from, line } of lines) {
    const word = name === 'armed' ? [...line.armed].sort().join(', ') || '–' : line[name];
    const last = segments.at(-1);
    if (last?.word === word) continue;
    if (last !== undefined) last.to = from;
    const change = events.findLast((event) => event.kind === 'mode' && Math.abs(event.time - from) < 1e-6);
    segments.push({ word, from, to: end.time, by: segments.length === 0 ? null : (change?.who ?? 'automatic') });
  }
  // A word that is replaced at the moment it came is nobody's to read.
  return segments.filter(({ from, to }) => to > from);
}

/** A bar of what moves, with its real duration; `to` is where the flight ended for what never arrived. */
export type MoveBar = { readonly says: string; readonly from: number; readonly to: number; readonly arrived: boolean };
/** What is indicated between two movements. */
export type HeldWord = { readonly word: string; readonly from: number; readonly to: number };

export function transitLane(
  trace: Trace,
  what: 'flap' | 'gear',
): { readonly bars: readonly MoveBar[]; readonly held: readonly HeldWord[] } {
  const moves = trace.transits.filter((one) => one.what === what);
  const bars = moves.map(({ from, to, begins, ends }) => ({
    says: what === 'gear' ? `gear ${to}` : `${from} → ${to}`,
    from: begins,
    to: ends ?? trace.end.time,
    arrived: ends !== null,
  }));
  const held: HeldWord[] = [];
  let [at, word] = [0, what === 'gear' ? firstGear(trace) : (trace.detents[trace.samples.detent[0] ?? -1] ?? '')];
  for (const [place, bar] of bars.entries()) {
    if (bar.from > at) held.push({ word, from: at, to: bar.from });
    at = Math.max(at, bar.to);
    word = moves[place]!.to;
  }
  if (trace.end.time > at) held.push({ word, from: at, to: trace.end.time });
  return { bars, held };
}

const firstGear = ({ samples }: Trace): string => {
  const gear = samples.gear[0];
  return gear === undefined ? '' : gear >= 0.5 ? 'down' : 'up';
};

export type WorkBar = {
  readonly id: string;
  readonly says: string;
  readonly from: number;
  readonly to: number;
  /** From when on it was due: the wait is drawn in front of the bar. */
  readonly due: number;
  readonly interrupts: boolean;
  /** It waited for, or was said over, another voice. */
  readonly collides: string;
};

/** The bars of one pilot, or of all that is spoken; what takes no time and did not wait is left out. */
export function workBars({ spans, collisions }: Timeline, lane: Pilot | 'voice'): readonly WorkBar[] {
  const mine = spans.filter(({ duty }) => (lane === 'voice' ? duty.speaks !== null : duty.who === lane));
  return mine
    .filter((span) => span.end - span.start > 0.05 || span.late > 0.05)
    .map((span) => ({
      id: span.duty.id,
      says: span.duty.does,
      from: lane === 'voice' ? span.said : span.start,
      to: span.end,
      due: span.trigger,
      interrupts: interruptionOf(span.duty) !== null,
      collides: lane === 'voice' ? sayCollision(collisions.find(({ second }) => second.duty.id === span.duty.id)) : '',
    }));
}

export function sayCollision(collision: Collision | undefined): string {
  if (collision === undefined) return '';
  const how = collision.over ? 'is said over' : 'waits for';
  return `${collision.second.duty.does} ${how} ${collision.first.duty.does} for ${collision.seconds.toFixed(1)} s`;
}

/** The longest wait of all that somebody has to do; null where nothing waits for as long as half a second. */
export function longestWait({ spans }: Timeline): Span | null {
  let worst: Span | null = null;
  for (const span of spans) if (span.late > 0.5 && (worst === null || span.late > worst.late)) worst = span;
  return worst;
}

/** As much of a text as a bar of this width can hold in the small face, '' where not even its beginning fits. */
export function fitted(text: string, width: number): string {
  const most = Math.floor((width - 6) / 6.1);
  if (most >= text.length) return text;
  return most < 4 ? '' : `${text.slice(0, most - 1).trimEnd()}…`;
}
