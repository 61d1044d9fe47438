// Gates that the path passes once: heights, altitudes and distances, each on its own scale.
import type { Gate } from '../gate/syntax.ts';
import type { StepState } from '../procedure/walk.ts';
import { formatNumber } from '../units/format.ts';

export type PathGate = {
  /** Gates are in order only with others of one scale. */
  readonly scale: string;
  readonly way: 'up' | 'down';
  readonly value: number;
  readonly words: string;
};

export function pathGate(part: Gate): PathGate | null {
  if (part.kind !== 'compare' || part.left.kind !== 'measure' || part.right.kind !== 'amount') return null;
  if (part.op === '=') return null;
  const { measure, of } = part.left;
  const amount = part.right;
  const way = part.op.startsWith('>') ? 'up' : 'down';
  const words = `${formatNumber(amount.value)} ${amount.unit}${amount.reference ? ` ${amount.reference}` : ''}`;
  if (measure === 'distance') return { scale: `distance ${of ?? ''} ${amount.unit}`, way, value: amount.value, words };
  if (measure !== 'height' && measure !== 'altitude' && measure !== 'radio-height') return null;
  return { scale: `${amount.reference ?? measure} ${amount.unit}`, way, value: amount.value, words };
}

export const passedBefore = (gate: PathGate, previous: PathGate): boolean =>
  gate.way === 'up' ? gate.value < previous.value : gate.value > previous.value;

/** Words that a step brings about, whoever says them. */
export const spokenAt = ({ step }: StepState): readonly string[] =>
  [step.say, step.reply, step.orderWords].map((words) => words.trim().toLowerCase()).filter(Boolean);

/** The detents that the step before leaves possible, in words. */
export function previousDetents(states: readonly StepState[], here: StepState): string {
  const before = states[states.indexOf(here) - 1];
  const detents = before?.branch === here.branch ? before?.after.selected : undefined;
  return detents === undefined || detents.length === 0 ? 'see the entry state' : `possible is ${detents.join(' or ')}`;
}
