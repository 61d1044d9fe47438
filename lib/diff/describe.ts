import {
  allSteps,
  type Expect,
  type ExpectedArmed,
  type ExpectedMode,
  type Procedure,
  type Step,
} from '../procedure/procedure.ts';
import type { Change, Position } from './change.ts';

const FIELD_WORDS: Record<string, string> = {
  label: 'label',
  copiedFrom: 'copied from',
  family: 'family',
  cue: 'cue',
  only: 'only when',
  orderBy: 'who orders',
  orderWords: 'order',
  who: 'who acts',
  verb: 'action',
  object: 'object',
  value: 'value',
  sayBy: 'who says it',
  say: 'callout',
  replyBy: 'who replies',
  reply: 'reply',
  replyAct: 'answer by an act',
  expect: 'expected modes',
  expectNote: 'note on the modes',
  checkBy: 'who verifies',
  checkSees: 'what proves it',
  checkWithin: 'time allowed',
  checkIfNot: 'if not',
  before: 'notices before the step',
  note: 'note',
  why: 'why',
  source: 'source',
  flags: 'flags',
  branch: 'where it leads',
  title: 'title',
  when: 'condition of the branch',
  joins: 'where it joins again',
  class: 'class',
  phases: 'phases',
  effectivity: 'effectivity',
  owner: 'owner',
  envelope: 'envelope',
  weightLimit: 'weight limit',
  entry: 'entry state',
  exit: 'exit state',
  leavesTo: 'leaves to',
  rationale: 'why in this order',
};
export const wordOfField = (field: string): string => FIELD_WORDS[field] ?? field;

/** A step in one line, as it would be said: `PM: select flap lever, F18`. */
export function sentenceOfStep(step: Step): string {
  const act = [step.verb, step.object].filter(Boolean).join(' ');
  return `${step.who || 'nobody'}: ${act || 'nothing'}${step.value ? `, ${step.value}` : ''}`;
}

const mode = (value: ExpectedMode): string =>
  value === '' ? '' : typeof value === 'string' ? value : (value as readonly string[]).join(' or ');

export function textOfArmed(armed: ExpectedArmed): string {
  if (armed === null) return '';
  if (armed === 'same') return 'same';
  if (Array.isArray(armed)) return armed.length === 0 ? 'nothing armed' : `${armed.join(', ')} armed`;
  const change = armed as { add?: readonly string[]; drop?: readonly string[] };
  return [...(change.add ?? []).map((word) => `+ ${word}`), ...(change.drop ?? []).map((word) => `- ${word}`)].join(
    ', ',
  );
}

export function textOfExpect(expect: Expect): string {
  const active = [expect.thrust, expect.lateral, expect.vertical].map(mode);
  if (active.every((word) => word === 'same') && (expect.armed === 'same' || expect.armed === null)) return 'same';
  return [active.map((word) => word || '–').join(' / '), textOfArmed(expect.armed)].filter(Boolean).join(', ');
}

/** Any field's value as words a reader can compare; '' for an empty one. */
export function textOfValue(field: string, value: unknown): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (field === 'expect') return textOfExpect(value as Expect);
  if (Array.isArray(value)) return value.map((one) => textOfValue('', one)).join('; ');
  const pairs = Object.entries(value as Record<string, unknown>).filter(([, one]) => textOfValue('', one) !== '');
  const range = value as { from?: unknown; to?: unknown };
  if (pairs.length === 2 && typeof range.from === 'number' && typeof range.to === 'number')
    return `${range.from} to ${range.to}`;
  return pairs.map(([key, one]) => `${wordOfField(key)} ${textOfValue(key, one)}`).join(', ');
}

/** Labels and names for ids, from both sides of a comparison. */
export function namesOf(...procedures: readonly Procedure[]): (id: string) => string {
  const names = new Map<string, string>();
  for (const procedure of procedures) {
    for (const step of allSteps(procedure)) names.set(step.id, step.label || sentenceOfStep(step));
    for (const branch of procedure.branches) names.set(branch.id, branch.label || branch.title);
  }
  return (id) => names.get(id) ?? id;
}

const place = (position: Position, name: (id: string) => string): string => {
  const line = position.parent === '' ? '' : ` in ${name(position.parent)}`;
  return position.after === '' ? `first${line}` : `after ${name(position.after)}${line}`;
};

/** One sentence a change. `name` turns ids into labels: see `namesOf`. */
export function describe(change: Change, name: (id: string) => string): string {
  switch (change.kind) {
    case 'added':
      return `New step ${place(change.to, name)}: ${sentenceOfStep(change.step)}`;
    case 'removed':
      return `Step removed: ${sentenceOfStep(change.step)}`;
    case 'moved':
      return `Moved: stood ${place(change.from, name)}, now ${place(change.to, name)}`;
    case 'branch-added':
      return `New branch: ${change.branch.title}`;
    case 'branch-removed':
      return `Branch removed: ${change.branch.title}`;
    case 'branch-moved':
      return `Branch ${name(change.id)} stands ${change.after === '' ? 'first' : `after ${name(change.after)}`}`;
    default: {
      const before = textOfValue(change.field, change.before);
      const after = textOfValue(change.field, change.after);
      const words = wordOfField(change.field);
      if (before === '') return `${words} is now “${after}”`;
      if (after === '') return `${words} was “${before}”, now empty`;
      return `${words}: “${before}” is now “${after}”`;
    }
  }
}
