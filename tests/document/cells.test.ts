// @vitest-environment jsdom
// Cells and chosen rows in a page: what a person types, composes, pastes and copies, and what others do meanwhile.
import { afterEach, beforeEach, expect, test } from 'vitest';
import * as Y from 'yjs';
import { arrange } from '../../app/(house)/desk/_draft/arrange.ts';
import { bindText } from '../../app/(house)/desk/_draft/bind-text.ts';
import { Choice, listenForChoice } from '../../app/(house)/desk/_draft/choose-steps.ts';
import { DraftView } from '../../app/(house)/desk/_draft/draft-view.ts';
import { spliceOf } from '../../app/(house)/desk/_draft/splice.ts';
import { Unsent } from '../../app/(house)/desk/_draft/unsent.ts';
import { STEPS_TYPE } from '../../lib/document/clipboard.ts';
import { insertRows, setText } from '../../lib/document/edit.ts';
import { type Hand, textOf } from '../../lib/document/model.ts';
import { ordered } from '../../lib/document/order.ts';
import { readDraft } from '../../lib/document/read.ts';
import { newDraftDoc } from '../../lib/document/write.ts';
import { someProcedure } from './arbitrary-procedure.ts';
import { mulberry } from './writers.ts';

let doc: Y.Doc;
let hand: Hand;
let ids: string[];
let cell: HTMLElement;
let text: Y.Text;

beforeEach(() => {
  let made = 0;
  doc = new Y.Doc();
  Y.applyUpdate(doc, newDraftDoc({ ...someProcedure(1), steps: [], branches: [] }));
  hand = { words: { hand: 'words' }, keys: { hand: 'keys' }, chance: mulberry(4), newId: () => `n${made++}` };
  const rows = ['one', 'two', 'three', 'four'].map((object) => ({ object, verb: 'set', who: 'PM' }));
  ids = insertRows(doc, hand, 'steps', rows, { parent: null, after: null });
  cell = document.createElement('div');
  cell.tabIndex = 0;
  document.body.append(cell);
  text = textOf(doc, { in: 'steps', id: ids[0]! }, 'object')!;
});
afterEach(() => document.body.replaceChildren());

const caretAt = (at: number) => {
  cell.focus();
  getSelection()!.collapse(cell.firstChild, at);
};
/** As the browser does it: its own change of the node, then the event. */
const type = (put: string) => {
  const node = cell.firstChild as Text;
  const at = getSelection()!.focusOffset;
  node.insertData(at, put);
  getSelection()!.collapse(node, at + put.length);
  cell.dispatchEvent(new InputEvent('input'));
};
const clipboard = (data: Record<string, string>) => {
  const held = new Map(Object.entries(data));
  const transfer = {
    getData: (kind: string) => held.get(kind) ?? '',
    setData: (kind: string, put: string) => held.set(kind, put),
  };
  const event = (name: string) =>
    Object.assign(new Event(name, { bubbles: true, cancelable: true }), { clipboardData: transfer });
  return { held, event };
};

test('typing lands in the draft, and what others type moves the caret along', () => {
  bindText(cell, text, { words: hand.words });
  caretAt(3);
  type(' flap');
  expect(text.toString()).toBe('one flap');
  doc.transact(() => text.insert(0, 'at '), 'another');
  expect(cell.textContent).toBe('at one flap');
  expect(getSelection()!.focusOffset).toBe(11);
  doc.transact(() => text.delete(0, 3), 'another');
  expect(getSelection()!.focusOffset).toBe(8);
});

test('what this person writes from elsewhere on the page is shown in the cell', () => {
  bindText(cell, text, { words: hand.words });
  setText(doc, hand, { in: 'steps', id: ids[0]! }, 'object', 0, 3, 'seven');
  expect(cell.textContent).toBe('seven');
});

test('the browser puts a node or a line break of its own there: the cell comes back as one line', () => {
  bindText(cell, text, { words: hand.words });
  caretAt(3);
  cell.append(document.createTextNode('\nup'));
  cell.dispatchEvent(new InputEvent('input'));
  expect(text.toString()).toBe('one up');
  expect(cell.childNodes).toHaveLength(1);
  cell.replaceChildren();
  cell.dispatchEvent(new InputEvent('input'));
  expect(text.toString()).toBe('');
  expect(cell.childNodes).toHaveLength(1);
});

test('a composition with another typing inside it keeps both', () => {
  bindText(cell, text, { words: hand.words });
  caretAt(3);
  cell.dispatchEvent(new CompositionEvent('compositionstart'));
  const node = cell.firstChild as Text;
  node.insertData(3, 'é');
  cell.dispatchEvent(new InputEvent('input'));
  expect(text.toString()).toBe('one');
  doc.transact(() => text.insert(0, 'at '), 'another');
  expect(cell.textContent).toBe('oneé');
  getSelection()!.collapse(node, 4);
  cell.dispatchEvent(new CompositionEvent('compositionend'));
  expect(text.toString()).toBe('at oneé');
  expect(cell.textContent).toBe('at oneé');
  expect(getSelection()!.focusOffset).toBe(7);
});

test('a hostile paste is plain text, and a paste that is too long is refused whole', () => {
  const refused: string[] = [];
  bindText(cell, text, { words: hand.words, refused: (sentence) => refused.push(sentence) });
  caretAt(3);
  const html = '<img src=x onerror="alert(1)"><b>flap</b>';
  cell.dispatchEvent(clipboard({ 'text/html': html, 'text/plain': `<script>\r\n six` }).event('paste'));
  expect(text.toString()).toBe('one<script> six');
  expect(cell.children).toHaveLength(0);
  cell.dispatchEvent(clipboard({ 'text/plain': 'x'.repeat(10_000_000) }).event('paste'));
  expect(text.toString()).toBe('one<script> six');
  expect(refused).toEqual([expect.stringContaining('at most 8 000 characters')]);
});

test('a splice never parts a surrogate pair and ends at the caret', () => {
  expect(spliceOf('a\u{1F6EB}', 'a\u{1F6EC}', 3)).toEqual({ at: 1, cut: 2, put: '\u{1F6EC}' });
  expect(spliceOf('aa', 'aaa', 1)).toEqual({ at: 0, cut: 0, put: 'a' });
  expect(spliceOf('aa', 'aaa', 3)).toEqual({ at: 2, cut: 0, put: 'a' });
  const chance = mulberry(5);
  const letters = ['a', 'b', '\u{1F6EB}'];
  const word = () => Array.from({ length: Math.floor(chance() * 6) }, () => letters[Math.floor(chance() * 3)]).join('');
  for (let run = 0; run < 2000; run++) {
    const [before, after] = [word(), word()];
    const { at, cut, put } = spliceOf(before, after, Math.floor(chance() * (after.length + 1)));
    expect(before.slice(0, at) + put + before.slice(at + cut)).toBe(after);
  }
});

test('rows are put in order without moving the one with the caret', () => {
  const list = document.createElement('div');
  const rows = ['a', 'b', 'c', 'd'].map((id) => Object.assign(document.createElement('input'), { id }));
  list.append(...rows);
  document.body.append(list);
  rows[2]!.focus();
  const moves: string[] = [];
  const blurred = () => moves.push('blur');
  rows[2]!.addEventListener('blur', blurred);
  arrange(list, [rows[3]!, rows[2]!, rows[0]!], rows[2]!);
  expect([...list.children].map((row) => row.id)).toEqual(['d', 'c', 'a']);
  expect(document.activeElement).toBe(rows[2]);
  expect(moves).toEqual([]);
});

test('a key in one step renews the snapshot of that step alone; a move renews the order alone', () => {
  const view = new DraftView(doc);
  const [first, second, order] = [view.step(ids[0]!), view.step(ids[1]!), view.order()];
  const told: string[] = [];
  for (const what of [`steps/${ids[0]}`, `steps/${ids[1]}`, 'order', 'whole'])
    view.subscribe(what, () => told.push(what));
  setText(doc, hand, { in: 'steps', id: ids[0]! }, 'object', 0, 0, 'x');
  expect(told).toEqual([`steps/${ids[0]}`, 'whole']);
  expect(view.step(ids[0]!)).not.toBe(first);
  expect(view.step(ids[1]!)).toBe(second);
  expect(view.order()).toBe(order);
  expect(view.whole()).toEqual(readDraft(doc));
  new Choice(view, hand).nudge(ids[0]!, 1);
  expect(view.order()).not.toBe(order);
  expect(view.step(ids[1]!)).toBe(second);
});

test('steps are chosen with keys, copied as steps and as text, cut and pasted under new identities', () => {
  const view = new DraftView(doc);
  const choice = new Choice(view, hand);
  const list = document.createElement('div');
  const rows = ids.map((id) => {
    const row = Object.assign(document.createElement('div'), { tabIndex: 0 });
    row.dataset.step = id;
    return row;
  });
  list.append(...rows);
  document.body.append(list);
  const removed: string[][] = [];
  const refused: string[] = [];
  const stop = listenForChoice(list, choice, {
    removed: (gone) => removed.push([...gone]),
    refused: (sentence) => refused.push(sentence),
  });
  const press = (key: string, more: KeyboardEventInit = {}) =>
    rows[0]!.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, ...more }));
  press('ArrowDown', { altKey: true, shiftKey: true });
  expect(choice.chosen()).toEqual(ids.slice(0, 2));
  const first = clipboard({});
  rows[0]!.dispatchEvent(first.event('copy'));
  expect(first.held.get('text/plain')).toBe('\tPM\tset one\n\tPM\tset two');
  rows[0]!.dispatchEvent(first.event('cut'));
  expect(removed).toEqual([ids.slice(0, 2)]);
  expect(ordered(doc, 'steps')).toEqual(ids.slice(2));
  rows[2]!.dispatchEvent(first.event('paste'));
  const pasted = readDraft(doc).procedure.steps;
  expect(pasted.map((step) => step.object)).toEqual(['three', 'one', 'two', 'four']);
  expect(pasted[1]).toMatchObject({ copiedFrom: ids[0], label: '' });
  expect(new Set(pasted.map((step) => step.id)).size).toBe(4);
  const hostile = JSON.stringify({
    steps: [{ id: 'x', who: 'nobody', place: { parent: 'b', rank: 'zz' }, gone: true }],
  });
  rows[2]!.dispatchEvent(clipboard({ [STEPS_TYPE]: hostile }).event('paste'));
  rows[2]!.dispatchEvent(clipboard({ [STEPS_TYPE]: '{"steps":[{"cue":{"toString":1}}]}' }).event('paste'));
  rows[2]!.dispatchEvent(clipboard({ [STEPS_TYPE]: '<b>no</b>' }).event('paste'));
  expect(refused).toHaveLength(3);
  expect(refused[0]).toContain('who');
  expect(readDraft(doc).procedure.steps).toHaveLength(4);
  press('ArrowDown', { altKey: true });
  stop();
});

test('what the database has not is kept in this browser, merged, and dropped when it has', () => {
  localStorage.clear();
  const unsent = new Unsent(localStorage, 'pe-1', 'dr-1', 'tab');
  const source = new Y.Doc();
  source.on('update', (update: Uint8Array) => unsent.add(update));
  for (let i = 0; i < 200; i++) source.getText('words').insert(i, 'w');
  expect(unsent.count).toBe(200);
  expect(localStorage.length).toBeLessThan(70);
  const next = new Unsent(localStorage, 'pe-1', 'dr-1', 'next');
  const doc = new Y.Doc();
  for (const update of next.adopt()) Y.applyUpdate(doc, update);
  expect(doc.getText('words').toString()).toBe('w'.repeat(200));
  expect(new Unsent(localStorage, 'pe-2', 'dr-1', 'tab').adopt()).toEqual([]);
  next.drop(next.last);
  expect(localStorage.length).toBe(0);
});

test('a browser without room says so', () => {
  const shelf = {
    length: 0,
    key: () => null,
    getItem: () => null,
    removeItem: () => {},
    setItem: () => {
      throw new Error('QuotaExceededError');
    },
  };
  const unsent = new Unsent(shelf, 'p', 'd', 't');
  unsent.add(new Uint8Array([0, 0]));
  expect(unsent).toMatchObject({ roomy: false, count: 1 });
});
