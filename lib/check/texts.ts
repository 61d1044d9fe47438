// All prose of a procedure in which something may be said about it: fields, notices, notes; not spoken words, not titles.
import type { Procedure, Step } from '../procedure/procedure.ts';
import type { Place } from './finding.ts';

export type Text = { readonly at: Place; readonly text: string };

const FIELDS = [
  'cue',
  'only',
  'object',
  'value',
  'replyAct',
  'expectNote',
  'checkBy',
  'checkSees',
  'checkWithin',
  'checkIfNot',
  'note',
] as const satisfies readonly (keyof Step)[];
/** The same, as a rule's `reads`. */
export const TEXT_FIELDS: readonly (keyof Step)[] = [...FIELDS, 'before'];

const made = new WeakMap<Procedure, readonly Text[]>();

/** In reading order, the procedure's own first; blank ones left out. Made once for a procedure. */
export function textsOf(procedure: Procedure, steps: readonly Step[]): readonly Text[] {
  const before = made.get(procedure);
  if (before !== undefined) return before;
  const own = (field: string, text: string): Text => ({ at: { step: '', field }, text });
  const all = [
    own('weightLimit', procedure.weightLimit),
    own('entry.also', procedure.entry.also),
    own('exit.also', procedure.exit.also),
    ...steps.flatMap((step): Text[] => [
      ...step.before.map(({ text }, index) => ({ at: { step: step.id as string, field: `before.${index}` }, text })),
      ...FIELDS.map((field) => ({ at: { step: step.id as string, field }, text: step[field] })),
    ]),
  ].filter(({ text }) => text.trim() !== '');
  made.set(procedure, all);
  return all;
}
