// One row (a step or a branch) as plain data: what is copied, pasted, inserted. Keys that this version doesn't know go
// through as they are, so that a client of yesterday can copy a step of tomorrow.
import * as Y from 'yjs';
import type { Branch, Notice, Step } from '../procedure/procedure.ts';
import { BRANCH_TEXTS, type Fields, type List, type Place, rowsOf, STEP_TEXTS } from './model.ts';
import { noticeElement, readNotices } from './notices.ts';

/** Field values by stored key; wording as a string, `before` as notices, an unknown text as `{ $text }` to stay one. */
export type Row = { readonly id: string } & Readonly<Record<string, unknown>>;

export const textsOf = (list: List): readonly string[] => (list === 'steps' ? STEP_TEXTS : BRANCH_TEXTS);

export function rowOfStep(step: Step): Row {
  const { expect, ...rest } = step;
  return {
    ...rest,
    'expect.thrust': expect.thrust,
    'expect.lateral': expect.lateral,
    'expect.vertical': expect.vertical,
    'expect.armed': expect.armed,
  };
}

export function rowOfBranch({ steps: _, ...branch }: Branch): Row {
  return branch;
}

/**
 * Makes a row with every type it will ever hold: two people who make one lazily under the same key lose one of the two.
 * Call it in a transaction. `gone` is set as told; a row is made hidden and then shown, so that undo can hide it again.
 */
export function makeRow(doc: Y.Doc, list: List, row: Row, place: Place, gone: boolean): void {
  const fields = rowsOf(doc, list).set(row.id, new Y.Map<unknown>());
  fields.set('place', place);
  fields.set('gone', gone);
  for (const key of textsOf(list)) fields.set(key, new Y.Text(typeof row[key] === 'string' ? row[key] : ''));
  const before = fields.set('before', new Y.XmlFragment());
  const notices = Array.isArray(row.before) ? (row.before as Notice[]) : [];
  before.insert(0, notices.map(noticeElement));
  for (const [key, value] of Object.entries(row)) {
    if (['id', 'before', 'place', 'gone'].includes(key) || textsOf(list).includes(key)) continue;
    const text = (value as { $text?: unknown } | null)?.$text;
    fields.set(key, typeof text === 'string' ? new Y.Text(text) : value);
  }
}

/** The row as it stands, without its place. */
export function rowOf(list: List, id: string, fields: Fields): Row {
  const row: Record<string, unknown> = {};
  for (const [key, value] of fields) {
    if (key === 'place' || key === 'gone') continue;
    if (value instanceof Y.XmlFragment) row[key] = key === 'before' ? readNotices(value).notices : value.toJSON();
    else if (value instanceof Y.Text)
      row[key] = textsOf(list).includes(key) ? value.toString() : { $text: value.toString() };
    else row[key] = value instanceof Y.AbstractType ? value.toJSON() : value;
  }
  return { ...row, id };
}
