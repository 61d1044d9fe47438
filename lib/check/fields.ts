// The fields of a procedure in which figures are read as figures. Spoken words, notes and titles are not among them.
import type { Gate } from '../gate/syntax.ts';
import { parsedCue } from '../procedure/parsed-cue.ts';
import type { Procedure, Step } from '../procedure/procedure.ts';
import type { Place } from './finding.ts';

export type FieldText = {
  readonly at: Place;
  readonly text: string;
  /** What the figure would be a value of: the object of the step, or the name of the field. */
  readonly about: string;
  /** Written by hand or held by the gate notation, whose own problems say what is missing. */
  readonly notation: boolean;
};

const WRITTEN = ['object', 'value', 'only', 'checkSees', 'checkWithin', 'checkIfNot'] as const;
/** The same, as a rule's `reads`. */
export const FIGURE_FIELDS: readonly (keyof Step)[] = ['cue', ...WRITTEN];

/** What a cue says in words: events and judgements, but nothing that is heard. */
function worded(gate: Gate | null): readonly { readonly text: string; readonly from: number }[] {
  if (gate === null) return [];
  if (gate.kind === 'all' || gate.kind === 'any') return gate.of.flatMap(worded);
  if (gate.kind === 'not' || gate.kind === 'within') return worded(gate.of);
  return gate.kind === 'event' || gate.kind === 'judged' ? [{ text: gate.text, from: gate.span.from }] : [];
}

/** The cue with all but its worded parts blanked out, offsets kept; '' when nothing in it is in words. */
export function wordedCue(cue: string): string {
  const parts = worded(parsedCue(cue).gate);
  if (parts.length === 0) return '';
  let shown = ' '.repeat(cue.length);
  for (const { text, from } of parts) {
    const at = cue.indexOf(text, from);
    if (at >= 0) shown = shown.slice(0, at) + text + shown.slice(at + text.length);
  }
  return shown;
}

const fieldsOf = new WeakMap<readonly Step[], readonly FieldText[]>();

/** Made once for all rules that are asked of the same steps. */
export function figureFields(procedure: Procedure, steps: readonly Step[]): readonly FieldText[] {
  const before = fieldsOf.get(steps);
  if (before !== undefined) return before;
  const made = collected(procedure, steps);
  fieldsOf.set(steps, made);
  return made;
}

function collected(procedure: Procedure, steps: readonly Step[]): readonly FieldText[] {
  const lines: readonly FieldText[] = (['entry', 'exit'] as const).flatMap((side) => [
    { at: { step: '', field: `${side}.speed` }, text: procedure[side].speed, about: 'speed', notation: false },
    {
      at: { step: '', field: `${side}.selectedAltitude` },
      text: procedure[side].selectedAltitude,
      about: 'altitude selector',
      notation: false,
    },
  ]);
  const limit = {
    at: { step: '', field: 'weightLimit' },
    text: procedure.weightLimit,
    about: 'weight',
    notation: false,
  };
  const ofSteps = steps.flatMap((step): readonly FieldText[] => [
    { at: { step: step.id, field: 'cue' }, text: step.cue, about: step.object, notation: true },
    ...WRITTEN.map((field) => ({
      at: { step: step.id, field },
      text: step[field],
      about: field === 'checkWithin' ? 'time' : step.object,
      notation: false,
    })),
  ]);
  return [...lines, limit, ...ofSteps].filter((field) => field.text.trim() !== '');
}
