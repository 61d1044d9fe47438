// The fields of a procedure in which figures are read as figures. Spoken words, notes and titles are not among them.
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

export function figureFields(procedure: Procedure, steps: readonly Step[]): readonly FieldText[] {
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
