// Finds steps by what people call them: permanent id, label, or the position in words.
import { allSteps, type Branch, type Procedure, type Step } from './procedure.ts';

/** The step with this permanent id or label, in the main line or a branch; null when there is none. */
export function findStep(procedure: Procedure, name: string): Step | null {
  if (name === '') return null;
  return allSteps(procedure).find((step) => step.id === name || step.label === name) ?? null;
}

/** Labels and ids that stand as whole words in a text, in the order in which they stand there. */
export function stepsNamedIn(procedure: Procedure, text: string): readonly Step[] {
  const words = text.split(/[^\w-]+/).filter(Boolean);
  const found = words.map((word) => findStep(procedure, word));
  return [...new Set(found.filter((step) => step !== null))];
}

/** The branch that a step stands in; null for the main line. */
export function branchOf(procedure: Procedure, step: Step): Branch | null {
  return procedure.branches.find((branch) => branch.steps.some((other) => other.id === step.id)) ?? null;
}

/** What to call a step aloud: its label, else where it stands: `step 4`, `step 2 of "Level-off before the flap is in"`. */
export function positionWords(procedure: Procedure, id: string): string {
  if (id === '') return 'the procedure';
  const step = findStep(procedure, id);
  if (step === null) return 'a step that is gone';
  if (step.label !== '') return step.label;
  const branch = branchOf(procedure, step);
  const line = branch?.steps ?? procedure.steps;
  const number = line.findIndex((other) => other.id === step.id) + 1;
  return branch === null ? `step ${number}` : `step ${number} of "${branch.title || branch.label}"`;
}
