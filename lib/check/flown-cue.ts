// Cues that the flight itself answers, and how near it comes to them.
import type { Gate } from '../gate/syntax.ts';
import { speedBounds } from '../procedure/cue.ts';
import type { StepState } from '../procedure/walk.ts';
import type { FlownOne } from './flown.ts';

const MEASURED = new Set(['speed', 'height', 'radio-height', 'vertical-speed', 'thrust']);
/** Only what the flight itself brings about: no word, no event, no mode, no altitude that a controller gives. */
export const isFlown = (part: Gate): boolean =>
  part.kind === 'flaps' ||
  part.kind === 'gear' ||
  part.kind === 'then' ||
  ((part.kind === 'compare' || part.kind === 'trend') &&
    (part.kind === 'trend'
      ? MEASURED.has(part.measure)
      : part.left.kind === 'measure' && MEASURED.has(part.left.measure)));

/** The lowest speed of a flight, kt: how near a bound on it came. Of flights without one nil. */
export function lowestSpeed({ trace }: FlownOne, ways: StepState['ways']): number {
  if (!ways.some((way) => speedBounds(way).some(({ op }) => op.startsWith('<')))) return 0;
  return [...trace.samples.speed, ...trace.events.map(({ speed }) => speed)].reduce(
    (least, speed) => Math.min(least, speed),
    999,
  );
}
