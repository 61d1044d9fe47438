// Every place in a procedure where a mode word is written as such, with the axis that it is written for.
import { type ModeSet, wordsOf } from '../aircraft/mode-set.ts';
import type { Gate } from '../gate/syntax.ts';
import type { Expect, Procedure } from '../procedure/procedure.ts';
import type { StepState } from '../procedure/walk.ts';
import type { Place } from './finding.ts';

export type ModeAxis = 'thrust' | 'lateral' | 'vertical' | 'armed';
export type ModeWord = { readonly at: Place; readonly axis: ModeAxis; readonly word: string; readonly text: string };

const list = (mode: string | readonly string[]): readonly string[] =>
  typeof mode === 'string' ? (mode === '' || mode === 'same' ? [] : [mode]) : mode;

function expected(expect: Expect): readonly (readonly [ModeAxis, string])[] {
  const { armed } = expect;
  const change =
    armed === null || armed === 'same' ? [] : Array.isArray(armed) ? (armed as readonly string[]) : changed(armed);
  return [
    ...(['thrust', 'lateral', 'vertical'] as const).flatMap((axis) =>
      list(expect[axis]).map((word) => [axis, word] as const),
    ),
    ...change.map((word) => ['armed', word] as const),
  ];
}
const changed = (armed: NonNullable<Exclude<Expect['armed'], 'same'>>): readonly string[] => {
  const change = armed as { readonly add?: readonly string[]; readonly drop?: readonly string[] };
  return [...(change.add ?? []), ...(change.drop ?? [])];
};

function inGate(gate: Gate | null): readonly (readonly [ModeAxis, string])[] {
  if (gate === null) return [];
  if (gate.kind === 'all' || gate.kind === 'any') return gate.of.flatMap(inGate);
  if (gate.kind === 'not' || gate.kind === 'within') return inGate(gate.of);
  if (gate.kind === 'armed') return [['armed', gate.word]];
  return gate.kind === 'mode' ? gate.words.map((word) => [gate.axis, word] as const) : [];
}

export function modeWords(procedure: Procedure, states: readonly StepState[]): readonly ModeWord[] {
  const lines = (['entry', 'exit'] as const).flatMap((side) =>
    (['thrust', 'lateral', 'vertical', 'armed'] as const).flatMap((axis) =>
      (procedure[side][axis] ?? []).map((word) => ({
        at: { step: '', field: `${side}.${axis}` },
        axis,
        word,
        text: word,
      })),
    ),
  );
  const steps = states.flatMap(({ step, gate }): readonly ModeWord[] => [
    ...inGate(gate.gate).map(([axis, word]) => ({ at: { step: step.id, field: 'cue' }, axis, word, text: step.cue })),
    ...expected(step.expect).map(([axis, word]) => ({
      at: { step: step.id, field: `expect.${axis}` },
      axis,
      word,
      text: word,
    })),
  ]);
  return [...lines, ...steps];
}

/** The axes on which the type has this word. */
export function axesOf(modes: ModeSet, word: string): readonly ModeAxis[] {
  const words = wordsOf(modes);
  return (['thrust', 'lateral', 'vertical', 'armed'] as const).filter((axis) => words[axis].includes(word));
}
