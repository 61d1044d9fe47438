// A step as its sisters see it: the fields that are compared, each as a plain text, never the sentence.
import { printGate } from '../gate/print.ts';
import { parsedCue } from '../procedure/parsed-cue.ts';
import type { Expect, ExpectedArmed, ExpectedMode, Procedure, Step } from '../procedure/procedure.ts';
import { kept } from './kept.ts';
import { plain } from './names.ts';

export type Sister = {
  readonly family: string;
  readonly step: string;
  /** Its label, else the title of its procedure. */
  readonly called: string;
  /** Its place in reading order. */
  readonly place: number;
  readonly trigger: string;
  readonly only: string;
  readonly who: string;
  readonly order: string;
  readonly verb: string;
  readonly object: string;
  readonly value: string;
  /** Thrust, lateral, vertical, armed; '' where nothing is said or nothing changes. */
  readonly modes: readonly [string, string, string, string];
  /** A reason is recorded. */
  readonly reason: boolean;
};

const words = (mode: ExpectedMode): string =>
  typeof mode === 'string' ? (mode === 'same' ? '' : mode) : [...mode].sort().join(' / ');

function armedWords(armed: ExpectedArmed): string {
  if (armed === null || armed === 'same') return '';
  if ('length' in armed) return armed.length === 0 ? 'nothing' : [...armed].sort().join(', ');
  return [...(armed.add ?? []).map((word) => `+${word}`), ...(armed.drop ?? []).map((word) => `-${word}`)]
    .sort()
    .join(', ');
}

/** A condition is the same however it is spelled: `>=` or `≥`, one space or two. */
const conditionOf = kept((text: string): string => {
  const { gate, problems } = parsedCue(text);
  return plain(gate === null || problems.length > 0 ? text : printGate(gate));
});

const modesOf = ({ thrust, lateral, vertical, armed }: Expect): Sister['modes'] => [
  words(thrust),
  words(lateral),
  words(vertical),
  armedWords(armed),
];

/** A step of no family is known by its id: whoever copied it has that as family. */
export function sisterOf(procedure: Procedure, step: Step, place: number): Sister {
  return {
    family: step.family || step.id,
    step: step.id,
    called: step.label || procedure.title,
    place,
    trigger: conditionOf(step.cue),
    only: conditionOf(step.only),
    who: step.who,
    order: plain(`${step.orderBy} ${step.orderWords}`),
    verb: step.verb,
    object: plain(step.object),
    value: plain(step.value),
    modes: modesOf(step.expect),
    reason: step.why.trim() !== '',
  };
}

export const sistersOf = (procedure: Procedure, steps: readonly Step[]): readonly Sister[] =>
  steps.map((step, place) => sisterOf(procedure, step, place));

/** Nothing said agrees with everything. */
export const modesAgree = (a: Sister['modes'], b: Sister['modes']): boolean =>
  a.every((word, axis) => word === '' || b[axis] === '' || word === b[axis]);
