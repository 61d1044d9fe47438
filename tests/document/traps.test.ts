// What went wrong in the trial, each once: see "The draft, as stored" among the decisions.
import { expect, test } from 'vitest';
import * as Y from 'yjs';
import {
  addBranch,
  addNotice,
  insertAfter,
  insertRows,
  move,
  pasteSteps,
  remove,
  restore,
  setField,
  setText,
} from '../../lib/document/edit.ts';
import { History } from '../../lib/document/history.ts';
import { type Hand, metaOf, rowsOf, textOf } from '../../lib/document/model.ts';
import { ordered, orderedSteps, placeOf } from '../../lib/document/order.ts';
import { readDraft, readStep } from '../../lib/document/read.ts';
import { rowOf } from '../../lib/document/row.ts';
import { upgradeDraft } from '../../lib/document/upgrade.ts';
import { newDraftDoc } from '../../lib/document/write.ts';
import type { StepId } from '../../lib/procedure/procedure.ts';
import { someProcedure } from './arbitrary-procedure.ts';
import { mulberry, sync } from './writers.ts';

const MAIN = { parent: null, after: null };
const empty = newDraftDoc({ ...someProcedure(1), steps: [], branches: [] });

function person(name: string) {
  const doc = new Y.Doc();
  Y.applyUpdate(doc, empty);
  let made = 0;
  const hand: Hand = {
    words: { name },
    keys: { name },
    chance: mulberry(name.length + name.charCodeAt(0)),
    newId: () => `${name}${made++}`,
  };
  return { doc, hand, history: new History(doc, hand, 0) };
}
type Person = ReturnType<typeof person>;
const meet = (...all: Person[]) => {
  for (let round = 0; round < 2; round++) for (const a of all) for (const b of all) sync(a.doc, b.doc);
};
const step = (id: string) => ({ in: 'steps' as const, id });
const line = ({ doc }: Person) => ordered(doc, 'steps');
const word = ({ doc }: Person, id: string, key = 'object') => textOf(doc, step(id), key)!.toString();
const value = ({ doc }: Person, id: string, key: string) => rowsOf(doc, 'steps').get(id)!.get(key);
/** Two people who both have the same rows. */
function pair(rows = 1): { ada: Person; ben: Person; ids: string[] } {
  const [ada, ben] = [person('ada'), person('ben')];
  const ids = insertRows(
    ada.doc,
    ada.hand,
    'steps',
    Array.from({ length: rows }, () => ({ object: 'flap' })),
    MAIN,
  );
  meet(ada, ben);
  return { ada, ben, ids };
}

test('1: two choose one value at once, the one whose choice won undoes: the key is not empty', () => {
  const { ada, ben, ids } = pair();
  const [id] = ids as [string];
  setField(ada.doc, ada.hand, step(id), 'who', 'captain');
  meet(ada, ben);
  setField(ada.doc, ada.hand, step(id), 'who', 'PF');
  setField(ben.doc, ben.hand, step(id), 'who', 'PM');
  meet(ada, ben);
  const winner = value(ada, id, 'who') === 'PF' ? ada : ben;
  winner.history.undo();
  meet(ada, ben);
  expect(value(ada, id, 'who')).toBe('captain');
  expect(value(ben, id, 'who')).toBe('captain');
});

test('1: I choose, another chooses after me, I undo: the other choice stays', () => {
  const { ada, ben, ids } = pair();
  setField(ada.doc, ada.hand, step(ids[0]!), 'verb', 'set');
  meet(ada, ben);
  setField(ben.doc, ben.hand, step(ids[0]!), 'verb', 'check');
  meet(ada, ben);
  ada.history.undo();
  meet(ada, ben);
  expect(value(ada, ids[0]!, 'verb')).toBe('check');
});

test('2: a step taken back by undo keeps what another typed in it, and its anchors', () => {
  const [ada, ben] = [person('ada'), person('ben')];
  const id = insertAfter(ada.doc, ada.hand, null, { object: 'gear' });
  meet(ada, ben);
  const anchor = Y.createRelativePositionFromTypeIndex(textOf(ben.doc, step(id), 'object')!, 2);
  ada.history.undo();
  setText(ben.doc, ben.hand, step(id), 'object', 4, 0, ' lever');
  meet(ada, ben);
  expect(line(ada)).toEqual([]);
  ada.history.redo();
  meet(ada, ben);
  expect(line(ben)).toEqual([id]);
  expect(word(ben, id)).toBe('gear lever');
  expect(Y.createAbsolutePositionFromRelativePosition(anchor, ada.doc)).toMatchObject({ index: 2 });
});

test('2: removed while another types, and removed steps are still in the draft', () => {
  const { ada, ben, ids } = pair();
  remove(ada.doc, ada.hand, 'steps', ids);
  setText(ben.doc, ben.hand, step(ids[0]!), 'object', 0, 0, 'second ');
  meet(ada, ben);
  expect(line(ada)).toEqual([]);
  restore(ben.doc, ben.hand, 'steps', ids);
  meet(ada, ben);
  expect(word(ada, ids[0]!)).toBe('second flap');
});

test('4: every type is made with its row, so two who type first in one cell both stay', () => {
  const { ada, ben, ids } = pair();
  setText(ada.doc, ada.hand, step(ids[0]!), 'why', 0, 0, 'A');
  setText(ben.doc, ben.hand, step(ids[0]!), 'why', 0, 0, 'B');
  addNotice(ada.doc, ada.hand, step(ids[0]!), 'caution', 'one');
  addNotice(ben.doc, ben.hand, step(ids[0]!), 'note', 'two');
  meet(ada, ben);
  expect([...word(ada, ids[0]!, 'why')].sort()).toEqual(['A', 'B']);
  expect(readDraft(ada.doc).procedure.steps[0]!.before).toHaveLength(2);
});

test('4: an unknown text stays a text when its step is copied', () => {
  const { ada, ids } = pair();
  const fields = rowsOf(ada.doc, 'steps').get(ids[0]!)!;
  fields.set('tomorrow', new Y.Text('later'));
  fields.set('tomorrowValue', { a: 1 });
  const [copy] = pasteSteps(ada.doc, ada.hand, [rowOf('steps', ids[0]!, fields)], MAIN);
  const pasted = rowsOf(ada.doc, 'steps').get(copy!)!;
  expect(pasted.get('tomorrow')).toBeInstanceOf(Y.Text);
  expect(String(pasted.get('tomorrow'))).toBe('later');
  expect(pasted.get('tomorrowValue')).toEqual({ a: 1 });
  expect(pasted.get('copiedFrom')).toBe(ids[0]);
  expect(pasted.get('family')).toBe(ids[0]);
});

test('5: equal ranks are settled the same way everywhere and rows still fit between them', () => {
  const { ada, ben, ids } = pair(3);
  for (const id of ids) rowsOf(ada.doc, 'steps').get(id)!.set('place', { parent: null, rank: 'a0' });
  meet(ada, ben);
  expect(line(ada)).toEqual([...ids].sort());
  expect(line(ben)).toEqual(line(ada));
  const [first, second] = line(ada) as [string, string];
  const between = insertAfter(ada.doc, ada.hand, first);
  expect(line(ada).slice(0, 3)).toEqual([first, between, second]);
});

test('5: a rank that is none is read, ordered, and healed by the next insert', () => {
  const { ada, ids } = pair(2);
  rowsOf(ada.doc, 'steps').get(ids[0]!)!.set('place', { parent: null, rank: '~~' });
  rowsOf(ada.doc, 'steps').get(ids[1]!)!.set('place', 'nowhere');
  expect(readDraft(ada.doc).problems).toHaveLength(2);
  insertAfter(ada.doc, ada.hand, ids[0]!);
  expect(readDraft(ada.doc)).toMatchObject({ problems: [], procedure: { steps: { length: 3 } } });
});

test('5: blocks pasted at one spot at once stay whole', () => {
  const { ada, ben, ids } = pair(2);
  const spot = { parent: null, after: ids[0]! };
  const rows = [{ id: 'x' }, { id: 'y' }, { id: 'z' }];
  const [one, two] = [pasteSteps(ada.doc, ada.hand, rows, spot), pasteSteps(ben.doc, ben.hand, rows, spot)];
  meet(ada, ben);
  const text = line(ada).join(' ');
  expect(text).toContain(one.join(' '));
  expect(text).toContain(two.join(' '));
});

test('5: 300 inserts at one spot keep ranks short', () => {
  const { ada, ids } = pair();
  for (let i = 0; i < 300; i++) insertAfter(ada.doc, ada.hand, ids[0]!);
  const ranks = [...rowsOf(ada.doc, 'steps').values()].map((fields) => placeOf(fields).rank.length);
  expect(Math.max(...ranks)).toBeLessThan(120);
  expect(line(ada)).toHaveLength(301);
});

test('two move one step: one step, at one of the two places; moved on by another, my undo leaves it there', () => {
  // Ben made the rows, so that Ada has nothing else to undo.
  const { ada: ben, ben: ada, ids } = pair(3);
  const [a, b, c] = ids as [string, string, string];
  move(ada.doc, ada.hand, 'steps', [a], { parent: null, after: b });
  move(ben.doc, ben.hand, 'steps', [a], { parent: null, after: c });
  meet(ada, ben);
  expect(line(ada)).toHaveLength(3);
  expect(line(ada)).toEqual(line(ben));
  move(ada.doc, ada.hand, 'steps', [a], { parent: null, after: null });
  meet(ada, ben);
  move(ben.doc, ben.hand, 'steps', [a], { parent: null, after: c });
  meet(ada, ben);
  ada.history.undo();
  meet(ada, ben);
  expect(line(ada)).toEqual([b, c, a]);
});

test('6: an editor that is unmounted does not take the undo with it', () => {
  const { ada, ids } = pair();
  setText(ada.doc, ada.hand, step(ids[0]!), 'object', 4, 0, ' up');
  ada.history.words.destroy();
  expect(ada.history.undo()).toBe(true);
  expect(word(ada, ids[0]!)).toBe('flap');
  expect(ada.history.redo()).toBe(true);
  expect(word(ada, ids[0]!)).toBe('flap up');
});

test('a branch is removed while another moves a step into it: the step stands in the main line and says so', () => {
  const { ada, ben, ids } = pair(2);
  const branch = addBranch(ada.doc, ada.hand, { title: 'Wind shear' });
  move(ada.doc, ada.hand, 'steps', [ids[1]!], { parent: branch, after: null });
  meet(ada, ben);
  move(ben.doc, ben.hand, 'steps', [ids[0]!], { parent: branch, after: null });
  remove(ada.doc, ada.hand, 'branches', [branch]);
  meet(ada, ben);
  expect(orderedSteps(ada.doc)).toEqual([{ id: ids[0], parent: null }]);
  expect(readDraft(ada.doc).problems[0]).toMatch(/branch that was removed/);
  ada.history.undo();
  meet(ada, ben);
  expect(orderedSteps(ben.doc).map((one) => one.parent)).toEqual([branch, branch]);
});

test('11: whatever a client stored, the reader says what is wrong and never throws', () => {
  const { ada, ids } = pair();
  const fields = rowsOf(ada.doc, 'steps').get(ids[0]!)!;
  const wrong = {
    who: 'the captain',
    flags: 'critical',
    'expect.armed': { odd: 1 },
    branch: [{ when: 1 }],
    cue: 7,
    before: [],
  };
  for (const [key, stored] of Object.entries(wrong)) fields.set(key, stored);
  rowsOf(ada.doc, 'steps').set('broken', 'not a map' as never);
  metaOf(ada.doc).set('envelope.weight', { from: 9, to: 1 });
  metaOf(ada.doc).set('schema', 99);
  const { procedure, problems } = readDraft(ada.doc);
  expect(procedure.steps[0]).toMatchObject({ who: '', flags: [], branch: [], cue: '', before: [] });
  for (const key of [
    'who',
    'flags',
    'expect.armed',
    'branch',
    'cue',
    'before',
    'envelope.weight',
    'broken',
    'version 99',
  ]) {
    expect(
      problems.some((problem) => problem.includes(key)),
      key,
    ).toBe(true);
  }
});

test('a step of 10 MB and 600 steps are refused with a sentence that says what to do', () => {
  const { ada, ids } = pair();
  setText(ada.doc, ada.hand, step(ids[0]!), 'note', 0, 0, 'x'.repeat(10_000_000));
  const { problems } = readDraft(ada.doc);
  expect(problems).toContainEqual(expect.stringContaining('Put the long text into'));
  expect(problems).toContainEqual(expect.stringContaining('Split the step'));
  const many = Array.from({ length: 600 }, (_, i) => ({ ...someProcedure(2).steps[0]!, id: `s${i}` as StepId }));
  const doc = new Y.Doc();
  Y.applyUpdate(doc, newDraftDoc({ ...someProcedure(2), steps: many, branches: [] }));
  expect(readDraft(doc).problems).toContainEqual(expect.stringContaining('600 steps'));
});

test('an older client made a step without the newer fields: the upgrade completes it and keeps its words', () => {
  const { ada } = pair();
  const old = rowsOf(ada.doc, 'steps').set('old', new Y.Map());
  old.set('place', { parent: null, rank: 'b0' });
  old.set('gone', false);
  old.set('cue', new Y.Text('at 400 ft'));
  expect(upgradeDraft(ada.doc)).toBe('upgraded');
  expect(upgradeDraft(ada.doc)).toBe('current');
  const problems: string[] = [];
  expect(readStep('old', old, problems)).toMatchObject({ cue: 'at 400 ft', why: '' });
  expect(problems).toEqual([]);
  metaOf(ada.doc).set('schema', 2);
  expect(upgradeDraft(ada.doc)).toBe('newer');
});

test('a move of one step costs less than 200 bytes', () => {
  const { ada, ids } = pair(30);
  const before = Y.encodeStateVector(ada.doc);
  move(ada.doc, ada.hand, 'steps', [ids[3]!], { parent: null, after: ids[20]! });
  expect(Y.encodeStateAsUpdate(ada.doc, before).byteLength).toBeLessThan(200);
});
