// The deeds of the desk on a draft. Each is one transaction under the hand's own origin, so that each is one undo.
import type * as Y from 'yjs';
import { assert } from '../base/assert.ts';
import type { Notice } from '../procedure/procedure.ts';
import { fieldsOf, type Hand, type Holder, type List, MAKING, noticesOf, rowsOf, textOf } from './model.ts';
import { noticeElement } from './notices.ts';
import { gap, ordered, parentOf, ranksBetween } from './order.ts';
import { makeRow, type Row, rowOf } from './row.ts';

/** Where rows go: behind `after` in a branch or the main line (`parent` null); `after` null means first. */
export type Spot = { readonly parent: string | null; readonly after: string | null };

/**
 * Inserts rows under fresh ids and returns these. The rows are made hidden under an origin that nobody undoes, then shown
 * under the person's own: undo hides them again, and what others typed in them outlives undo and redo.
 */
export function insertRows(doc: Y.Doc, hand: Hand, list: List, rows: readonly Omit<Row, 'id'>[], spot: Spot): string[] {
  if (rows.length === 0) return [];
  const made = rows.map((row) => ({ ...row, id: hand.newId() }) as Row);
  doc.transact(() => {
    const ranks = ranksBetween(
      ...gap(doc, list, { ...spot, leaveOut: new Set() }, hand.chance),
      made.length,
      hand.chance,
    );
    made.forEach((row, i) => {
      assert(!rowsOf(doc, list).has(row.id), 'a new row takes an id that no row had');
      makeRow(doc, list, row, { parent: spot.parent, rank: ranks[i]! }, true);
    });
  }, MAKING);
  const ids = made.map((row) => row.id);
  doc.transact(() => mark(doc, list, ids, false), hand.keys);
  return ids;
}

/** An empty step behind another, in the same branch. Returns its id. */
export function insertAfter(doc: Y.Doc, hand: Hand, after: string | null, row: Omit<Row, 'id'> = {}): string {
  const fields = after === null ? undefined : rowsOf(doc, 'steps').get(after);
  const parent = fields ? parentOf(doc, fields) : null;
  return insertRows(doc, hand, 'steps', [row], { parent, after })[0]!;
}

export function addBranch(doc: Y.Doc, hand: Hand, row: Omit<Row, 'id'> = {}): string {
  const after = ordered(doc, 'branches').at(-1) ?? null;
  return insertRows(doc, hand, 'branches', [{ label: '', ...row }], { parent: null, after })[0]!;
}

/** Moves rows, in the order given, to one spot; steps may change their branch by it. */
export function move(doc: Y.Doc, hand: Hand, list: List, ids: readonly string[], spot: Spot): void {
  const known = ids.filter((id) => rowsOf(doc, list).has(id));
  if (known.length === 0) return;
  doc.transact(() => {
    const leaveOut = new Set(known);
    const line = ordered(doc, list, spot.parent);
    // Behind one of the moved means behind the nearest row above that stays.
    const upTo =
      spot.after === null ? [] : line.slice(0, line.indexOf(spot.after) + 1).filter((id) => !leaveOut.has(id));
    const after = spot.after !== null && leaveOut.has(spot.after) ? (upTo.at(-1) ?? null) : spot.after;
    const ranks = ranksBetween(...gap(doc, list, { ...spot, after, leaveOut }, hand.chance), known.length, hand.chance);
    known.forEach((id, i) => {
      rowsOf(doc, list).get(id)!.set('place', { parent: spot.parent, rank: ranks[i]! });
    });
  }, hand.keys);
}

/** One place up or down in its line. Returns false at the end of it. */
export function nudge(doc: Y.Doc, hand: Hand, list: List, ids: readonly string[], by: 1 | -1): boolean {
  const first = ids[0] === undefined ? undefined : rowsOf(doc, list).get(ids[0]);
  if (!first) return false;
  const parent = list === 'steps' ? parentOf(doc, first) : null;
  const line = ordered(doc, list, parent);
  const at = ids.map((id) => line.indexOf(id)).sort((a, b) => a - b);
  const to = by === 1 ? at.at(-1)! + 1 : at[0]! - 2;
  if (at[0]! < 0 || to >= line.length || to < -1) return false;
  move(
    doc,
    hand,
    list,
    at.map((i) => line[i]!),
    { parent, after: line[to] ?? null },
  );
  return true;
}

/** Hides rows. Nothing is ever deleted in a draft: what others type in them meanwhile is kept, and `restore` shows it. */
export function remove(doc: Y.Doc, hand: Hand, list: List, ids: readonly string[]): void {
  doc.transact(() => {
    if (list === 'branches') for (const id of ids) mark(doc, 'steps', ordered(doc, 'steps', id), id);
    mark(doc, list, ids, true);
  }, hand.keys);
}

/** Shows hidden rows again where they stood; with a branch, the steps that were removed with it. */
export function restore(doc: Y.Doc, hand: Hand, list: List, ids: readonly string[]): void {
  doc.transact(() => {
    mark(doc, list, ids, false);
    if (list === 'steps') return;
    const steps = [...rowsOf(doc, 'steps')].filter(([, fields]) => ids.includes(String(fields.get('gone'))));
    mark(
      doc,
      'steps',
      steps.map(([id]) => id),
      false,
    );
  }, hand.keys);
}

function mark(doc: Y.Doc, list: List, ids: readonly string[], gone: boolean | string): void {
  for (const id of ids) {
    const fields = rowsOf(doc, list).get(id);
    if (fields && fields.get('gone') !== gone) fields.set('gone', gone);
  }
}

/** Sets one chosen value. Wording isn't set but typed: see `setText`. The same value again is no change. */
export function setField(doc: Y.Doc, hand: Hand, holder: Holder, key: string, value: unknown): void {
  const fields = fieldsOf(doc, holder);
  assert(key !== 'place' && key !== 'gone', 'rows are moved and removed, not set');
  if (!fields || textOf(doc, holder, key) || JSON.stringify(fields.get(key)) === JSON.stringify(value)) return;
  doc.transact(() => fields.set(key, value), hand.keys);
}

/** Replaces part of a wording: at `at`, `cut` code units go and `put` comes. The rest, and others' carets in it, stay. */
export function setText(
  doc: Y.Doc,
  hand: Hand,
  holder: Holder,
  key: string,
  at: number,
  cut: number,
  put: string,
): void {
  const text = textOf(doc, holder, key);
  if (!text) return;
  doc.transact(() => {
    const from = Math.min(at, text.length);
    text.delete(from, Math.min(cut, text.length - from));
    text.insert(from, put);
  }, hand.words);
}

/** A new empty notice at the end of those before the step; the editor is then mounted on it. */
export function addNotice(doc: Y.Doc, hand: Hand, holder: Holder, kind: Notice['kind'], text = ''): void {
  const notices = noticesOf(doc, holder);
  if (!notices) return;
  doc.transact(() => notices.insert(notices.length, [noticeElement({ kind, text })]), hand.words);
}

/** The rows as plain data, in reading order, for the clipboard. */
export function copyRows(doc: Y.Doc, list: List, ids: readonly string[]): Row[] {
  return ids.flatMap((id) => {
    const fields = rowsOf(doc, list).get(id);
    return fields ? [rowOf(list, id, fields)] : [];
  });
}

/** Pastes steps from elsewhere: new identities that remember where they came from; labels are given at signing. */
export function pasteSteps(doc: Y.Doc, hand: Hand, rows: readonly Row[], spot: Spot): string[] {
  const fresh = rows.map(({ id, ...row }) => ({ ...row, label: '', copiedFrom: id, family: row.family || id }));
  return insertRows(doc, hand, 'steps', fresh, spot);
}
