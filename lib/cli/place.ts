// From where a finding points in a procedure to where that stands in the file.
import type { Place } from '../check/finding.ts';
import type { Procedure } from '../procedure/procedure.ts';

export type FilePlace = { readonly line: number; readonly column: number };
type Path = readonly (string | number)[];

/** Fields that the file keeps within a record; all others have their own name with hyphens. */
const NESTED: Readonly<Record<string, Path>> = {
  orderBy: ['order', 'who'],
  orderWords: ['order', 'say'],
  verb: ['do', 'verb'],
  object: ['do', 'object'],
  value: ['do', 'value'],
  sayBy: ['said-by'],
  replyBy: ['reply', 'who'],
  reply: ['reply', 'say'],
  replyAct: ['reply', 'act'],
  checkBy: ['check', 'by'],
  checkSees: ['check', 'sees'],
  checkWithin: ['check', 'within'],
  checkIfNot: ['check', 'if-not'],
};

/** The path in the file of what a finding points at: `['steps', 3, 'do', 'object']`. */
export function pathOf(procedure: Procedure, at: Place): Path {
  const { step, field } = at;
  if (step === '') return fieldPath(field);
  const main = procedure.steps.findIndex((other) => other.id === step);
  if (main >= 0) return ['steps', main, ...fieldPath(field)];
  for (const [index, branch] of procedure.branches.entries()) {
    const inside = branch.steps.findIndex((other) => other.id === step);
    // A branch tells where it joins; a finding about that points at its last step.
    if (inside >= 0 && field === 'joins') return ['branches', index, 'joins'];
    if (inside >= 0) return ['branches', index, 'steps', inside, ...fieldPath(field)];
  }
  return [];
}

function fieldPath(field: string): Path {
  const [first = '', ...rest] = field.split(/[.[\]]+/).filter(Boolean);
  const head = NESTED[first] ?? [hyphened(first)];
  return [...head, ...rest.map((key) => (/^\d+$/.test(key) ? Number(key) : hyphened(key)))];
}

const hyphened = (name: string): string => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
