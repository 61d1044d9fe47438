// The draft as people write it together: a Yjs document whose steps are a map from permanent id to a map of fields.
// Folder document turns procedures into such documents and back, and edits them. It may not touch a network, a clock, a
// screen or chance: ids and random bits come in with the hand that writes.
import * as Y from 'yjs';

/** Version of the stored shape. An older client leaves what it doesn't know alone; upgrade.ts brings old drafts along. */
export const SCHEMA = 1;

/** Wording of a step: Y.Text, so that two people may type in one cell. */
export const STEP_TEXTS = [
  'cue',
  'only',
  'orderWords',
  'object',
  'value',
  'say',
  'reply',
  'replyAct',
  'expectNote',
  'checkSees',
  'checkWithin',
  'checkIfNot',
  'note',
  'why',
  'source',
] as const;
export const BRANCH_TEXTS = ['title', 'when', 'joins', 'note'] as const;
export const META_TEXTS = [
  'title',
  'weightLimit',
  'rationale',
  'effectivity.note',
  'entry.speed',
  'entry.selectedAltitude',
  'entry.also',
  'exit.speed',
  'exit.selectedAltitude',
  'exit.also',
] as const;
export const META_VALUES = [
  'id',
  'class',
  'phases',
  'owner',
  'leavesTo',
  'effectivity.type',
  'effectivity.standards',
  'envelope.weight',
  'envelope.elevation',
  'envelope.temperature',
  'envelope.wind',
  'envelope.level',
  'envelope.detents',
  'entry.flaps',
  'entry.gear',
  'entry.autopilot',
  'entry.thrust',
  'entry.lateral',
  'entry.vertical',
  'entry.armed',
  'exit.flaps',
  'exit.gear',
  'exit.autopilot',
  'exit.thrust',
  'exit.lateral',
  'exit.vertical',
  'exit.armed',
] as const;

/** Where a row stands: one key, so that of two moves one wins whole. `parent` is a branch, or null for the main line. */
export type Place = { readonly parent: string | null; readonly rank: string };
/** The fields of one step, one branch, or the procedure itself. */
export type Fields = Y.Map<unknown>;
export type List = 'steps' | 'branches';
/** Whose field is meant. */
export type Holder = { readonly in: List; readonly id: string } | { readonly in: 'meta' };

/** Who writes, and where the bits come from that lib has none of. One for each person and tab. */
export type Hand = {
  /** Origin of what is typed; see history.ts. */
  readonly words: object;
  /** Origin of what is chosen, moved, made and removed. */
  readonly keys: object;
  /** In [0, 1). */
  readonly chance: () => number;
  readonly newId: () => string;
};
/** Origin of rows as they are made, hidden: nobody undoes that, showing them is the act. */
export const MAKING = 'make';

export const rowsOf = (doc: Y.Doc, list: List): Y.Map<Fields> => doc.getMap<Fields>(list);
export const metaOf = (doc: Y.Doc): Fields => doc.getMap('meta');

/** The fields of a holder, or undefined where the draft has no such row. */
export function fieldsOf(doc: Y.Doc, holder: Holder): Fields | undefined {
  if (holder.in === 'meta') return metaOf(doc);
  const fields = rowsOf(doc, holder.in).get(holder.id);
  return fields instanceof Y.Map ? fields : undefined;
}

/** The wording under `key`, or undefined where there is none (made by an older client, or the wrong type). */
export function textOf(doc: Y.Doc, holder: Holder, key: string): Y.Text | undefined {
  const text = fieldsOf(doc, holder)?.get(key);
  return text instanceof Y.Text ? text : undefined;
}

/** The notices before a step or at the head of a branch, as the notes editor wants them. */
export function noticesOf(doc: Y.Doc, holder: Holder): Y.XmlFragment | undefined {
  const notices = fieldsOf(doc, holder)?.get('before');
  return notices instanceof Y.XmlFragment ? notices : undefined;
}

/** Hidden: true, or the id of the branch with which a step was removed. */
export const isGone = (fields: Fields): boolean => (fields.get('gone') ?? false) !== false;
