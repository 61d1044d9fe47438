// Defects planted in whole procedures, one at a time, by programs that know nothing of the checks: a mutant is the procedure
// before, one thing done to it, and the facts where the defect lies in them. Nothing here may import a rule.
import type { Facts } from '../../../lib/check/facts.ts';
import { type StepParts, stepWith } from '../../../lib/procedure/build.ts';
import { allSteps, type Expect, type Procedure, type Step } from '../../../lib/procedure/procedure.ts';

/** A right procedure with the world it is right in. `other`: on the second sheet. */
export type Base = { readonly procedure: Procedure; readonly facts: Facts; readonly other: boolean };
export type Mutant = {
  readonly says: string;
  readonly procedure: Procedure;
  /** What is other in the world. */
  readonly facts?: Partial<Facts>;
};
/** The check that is meant, by id, and what is done to a base to bring it about; none where the base has no place for it. */
export type Plants = Readonly<Record<string, (base: Base) => readonly Mutant[]>>;

/** One base gives at most so many mutants of a sort: many procedures rather than many places. */
const MOST = 2;

const mapSteps = (procedure: Procedure, change: (step: Step) => Step): Procedure => ({
  ...procedure,
  steps: procedure.steps.map(change),
  branches: procedure.branches.map((branch) => ({ ...branch, steps: branch.steps.map(change) })),
});

export const changed = (procedure: Procedure, { id }: Step, parts: Partial<Step>): Procedure =>
  mapSteps(procedure, (step) => (step.id === id ? { ...step, ...parts } : step));

/** A mutant for each of the first steps that fit; none where nothing would change. */
export function atSteps(
  { procedure }: Base,
  fits: (step: Step) => boolean,
  change: (step: Step) => Partial<Step>,
  says: string,
): readonly Mutant[] {
  const fitting = allSteps(procedure).filter((step) => {
    if (!fits(step)) return false;
    const parts = change(step);
    return Object.entries(parts).some(([key, value]) => value !== step[key as keyof Step]);
  });
  return fitting
    .slice(0, MOST)
    .map((step) => ({ says: `${step.label} ${says}`, procedure: changed(procedure, step, change(step)) }));
}

const KEPT: Expect = { thrust: 'same', lateral: 'same', vertical: 'same', armed: 'same' };
const madeOf = (parts: readonly StepParts[]): readonly Step[] =>
  parts.map((each, index) => stepWith({ label: `ZZ-${index + 1}`, expect: KEPT, ...each }));

/** Steps put before all others, or behind all of the main line. */
export const first = (procedure: Procedure, ...parts: readonly StepParts[]): Procedure => ({
  ...procedure,
  steps: [...madeOf(parts), ...procedure.steps],
});
export const last = (procedure: Procedure, ...parts: readonly StepParts[]): Procedure => ({
  ...procedure,
  steps: [...procedure.steps, ...madeOf(parts)],
});
export const one = (says: string, procedure: Procedure, facts?: Partial<Facts>): readonly Mutant[] => [
  facts === undefined ? { says, procedure } : { says, procedure, facts },
];

export const isHand = ({ verb }: Step): boolean => ['set', 'select', 'move', 'press'].includes(verb);
export const isFlap = (step: Step): boolean => isHand(step) && /\bflap\b/i.test(step.object);
export const isGear = (step: Step): boolean => isHand(step) && /\bgear\b/i.test(step.object);
export const isSpeed = (step: Step): boolean => step.verb === 'set' && /\bspeed selector\b/.test(step.object);
export const has = ({ procedure }: Base, ...phases: readonly Procedure['phases'][number][]): boolean =>
  procedure.phases.some((phase) => phases.includes(phase));

/** The same text with the first match of a pattern changed; null where there is none. */
export function firstIn(step: Step, fields: readonly (keyof Step)[], pattern: RegExp, to: string): Partial<Step> {
  for (const field of fields) {
    const text = step[field];
    if (typeof text === 'string' && pattern.test(text)) return { [field]: text.replace(pattern, to) };
  }
  return {};
}
