// Gates that the path passes once: heights, altitudes and distances, each on its own scale.
import type { Gate } from '../gate/syntax.ts';
import type { StepState } from '../procedure/walk.ts';
import { formatNumber } from '../units/format.ts';

export type PathGate = {
  /** Gates are in order only with others of one scale. */
  readonly scale: string;
  readonly way: 'up' | 'down';
  /** Where it surely lies; both the same for a figure. */
  readonly low: number;
  readonly high: number;
  readonly words: string;
};

/** Where an altitude that stands on the aerodrome card may lie, ft AAL: the policy's limits for noise procedures. */
export type CardRange = { readonly lowest: number; readonly latest: number };
const ON_CARD = new Set(['acceleration-altitude', 'climb-thrust-altitude', 'engine-out-acceleration-altitude']);

export function pathGate(part: Gate, card: CardRange): PathGate | null {
  if (part.kind !== 'compare' || part.left.kind !== 'measure' || part.op === '=') return null;
  const { measure, of } = part.left;
  const way = part.op.startsWith('>') ? 'up' : 'down';
  if (part.right.kind === 'altitude' && measure === 'height' && ON_CARD.has(part.right.name)) {
    const words = part.right.name.replaceAll('-', ' ');
    return { scale: 'AAL ft', way, low: card.lowest, high: card.latest, words };
  }
  if (part.right.kind !== 'amount') return null;
  const { value, unit, reference } = part.right;
  const words = `${formatNumber(value)} ${unit}${reference ? ` ${reference}` : ''}`;
  const at = { way, low: value, high: value, words } as const;
  if (measure === 'distance') return { scale: `distance ${of ?? ''} ${unit}`, ...at };
  if (measure !== 'height' && measure !== 'altitude' && measure !== 'radio-height') return null;
  return { scale: `${reference ?? measure} ${unit}`, ...at };
}

/** Surely passed before the other, wherever the card puts them. */
export const passedBefore = (gate: PathGate, previous: PathGate): boolean =>
  gate.way === 'up' ? gate.high < previous.low : gate.low > previous.high;

/** Words that a step brings about, whoever says them. */
export const spokenAt = ({ step }: StepState): readonly string[] =>
  [step.say, step.reply, step.orderWords].map((words) => words.trim().toLowerCase()).filter(Boolean);

/** The detents that the step before leaves possible, in words. */
export function previousDetents(states: readonly StepState[], here: StepState): string {
  const before = states[states.indexOf(here) - 1];
  const detents = before?.branch === here.branch ? before?.after.selected : undefined;
  return detents === undefined || detents.length === 0 ? 'see the entry state' : `possible is ${detents.join(' or ')}`;
}
