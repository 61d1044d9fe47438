// Where a take-off reduces thrust and where it accelerates, ft AAL: by the cues of the steps that read or bring about either,
// and by steps that enter the two heights.
import type { Gate } from '../gate/syntax.ts';
import type { Aerodrome } from '../library/library.ts';
import type { StepState } from '../procedure/walk.ts';
import { figuresIn } from './figures.ts';
import type { Place } from './finding.ts';

export type Height = { readonly feet: number; readonly at: Place; readonly text: string };
export type Noise = { readonly reduce: readonly Height[]; readonly accelerate: readonly Height[] };

const REDUCE = /\b(thrust[- ]reduction|climb[- ]thrust|reduce thrust)\b/i;
const ACCELERATE = /\bacceler/i;
const ENTERED = new Set(['set', 'select', 'brief', 'check']);

function heightOf(way: readonly Gate[], card: Aerodrome | null): number | null {
  for (const part of way) {
    if (part.kind !== 'compare' || part.left.kind !== 'measure' || part.left.measure !== 'height') continue;
    if (part.op === '<' || part.op === '<=') continue;
    if (part.right.kind === 'amount') return part.right.value;
    if (part.right.kind !== 'altitude' || card === null) continue;
    if (part.right.name === 'climb-thrust-altitude') return card.climbThrustHeight;
    if (part.right.name === 'acceleration-altitude') return card.accelerationHeight;
  }
  return null;
}

/** The card gives the figure where a cue goes by its name. */
export function noiseOf(states: readonly StepState[], card: Aerodrome | null): Noise {
  const reduce: Height[] = [];
  const accelerate: Height[] = [];
  for (const { step, ways, before, done } of states) {
    const entered = ENTERED.has(step.verb) && !/\bengine[- ]out\b/i.test(step.object);
    if (entered && (REDUCE.test(step.object) || ACCELERATE.test(step.object))) {
      const figure = figuresIn(step.value).find(({ unit }) => unit === 'ft');
      const height = { feet: figure?.value ?? 0, at: { step: step.id as string, field: 'value' }, text: step.value };
      if (figure !== undefined) (REDUCE.test(step.object) ? reduce : accelerate).push(height);
      continue;
    }
    const feet = ways.map((way) => heightOf(way, card)).find((each) => each !== null) ?? null;
    if (feet === null) continue;
    const height = { feet, at: { step: step.id as string, field: 'cue' }, text: step.cue };
    const words = `${step.object} ${step.value}`;
    const climbs = step.expect.thrust === 'CLIMB' && !before.modes.thrust.includes('CLIMB');
    const turns = step.expect.vertical === 'ASCENT' && !before.modes.vertical.includes('ASCENT');
    const faster = done.target.kind !== 'unknown' && done.target.setBy === step.id && before.floor === 'takeOff';
    if (climbs || REDUCE.test(words)) reduce.push(height);
    if (turns || faster || ACCELERATE.test(words)) accelerate.push(height);
  }
  return { reduce, accelerate };
}

/** Height above the aerodrome that a cue waits for, ft, and whether a card's name stands for it. */
export function heightGate(part: Gate): { readonly feet: number | null; readonly name: string } | null {
  if (part.kind !== 'compare' || part.left.kind !== 'measure' || part.left.measure !== 'height') return null;
  if (part.right.kind === 'altitude') return { feet: null, name: part.right.name };
  return part.right.kind === 'amount' ? { feet: part.right.value, name: '' } : null;
}
