// The hands on the mode table, and what is said of it beside the grid.
import { describe, expect, test } from 'vitest';
import { tableAnswer } from '../../app/(house)/sheets/_modes/table-answer.ts';
import * as edits from '../../app/(house)/sheets/_modes/table-edits.ts';
import { placeIn } from '../../app/(house)/sheets/_modes/table-place.ts';
import { sheetChanges } from '../../app/(house)/sheets/sheet-changes.ts';
import { nextSheet } from '../../app/(house)/sheets/sheet-grid.ts';
import { readSheet } from '../../lib/aircraft/sheet.ts';
import { readTable, type TableText, tableText } from '../../lib/mode/table-text.ts';
import { tn182 } from '../kit/sheets.ts';

const sheet = tn182();
const text = tableText(sheet.modes);
const ids = (table: TableText) => table.rules.map((rule) => rule.cells.id);
const keyOf = (id: string, table = text) => table.rules.find((rule) => rule.cells.id === id)!.key;
const caseOf = (id: string, table = text) => table.rules.find((rule) => rule.cells.id === id)!.cases[0]!;
const typed = (table: TableText, id: string, cell: string, words: string) =>
  edits.typeRule(table, caseOf(id, table).key, cell, words);

describe('rules', () => {
  test('one is added below another, with the next number', () => {
    const { table, key } = edits.addRule(text, keyOf('T05'));
    expect(ids(table).slice(4, 7)).toEqual(['T05', 'T35', 'T06']);
    expect(table.rules.find((rule) => rule.key === key)!.cells.id).toBe('T35');
    expect(readTable(table).problems.map(({ row, cell }) => [row, cell])).toEqual([
      [key, 'event'],
      [key, 'effect'],
    ]);
  });
  test('a copy says the same under its own number', () => {
    const { table } = edits.duplicateRule(text, keyOf('T24'));
    const modes = readTable(table).modes!;
    const [was, copy] = ['T24', 'T35'].map((id) => modes.rules.find((rule) => rule.id === id)!);
    expect(copy).toEqual({ ...was, id: 'T35' });
    const { table: twice } = edits.duplicateRule(table, keyOf('T24'));
    expect(new Set(twice.rules.flatMap((rule) => [rule.key, ...rule.cases.map((one) => one.key)])).size).toBe(
      twice.rules.flatMap((rule) => [rule, ...rule.cases]).length,
    );
  });
  test('one that is removed is missed where it is named', () => {
    const { problems } = readTable(edits.removeRule(text, keyOf('T20')));
    expect(problems.map(({ cell, says }) => [cell, says.slice(0, 5)])).toEqual([['reversions', '"T20"']]);
  });
  test('a second case, and the last one stays', () => {
    const { table, key } = edits.addCase(text, keyOf('T05'));
    const rule = readTable(table).modes!.rules.find((one) => one.id === 'T05')!;
    expect('any' in rule && rule.any.length).toBe(2);
    const back = edits.removeCase(table, key);
    expect(readTable(back).modes).toEqual(sheet.modes);
    expect(edits.removeCase(back, caseOf('T05').key)).toEqual(back);
  });
  test('typing touches one rule: the others are the same objects', () => {
    const table = typed(text, 'T05', 'then.lateral', 'HEADING');
    expect(table.rules.filter((rule, at) => rule !== text.rules[at]).map((rule) => rule.cells.id)).toEqual(['T05']);
  });
});

describe('rows and names', () => {
  test('a row is added, doubled, typed and removed', () => {
    const { table, key } = edits.addRow(text, 'predicates', null);
    const named = edits.typeRow(table, 'predicates', key, 'name', 'low');
    const whole = edits.typeRow(named, 'predicates', key, 'text', 'height < 400 ft AAL');
    expect(readTable(whole).modes!.predicates).toEqual({ low: 'height < 400 ft AAL' });
    const { table: two } = edits.addRow(whole, 'predicates', key);
    expect(readTable(two).problems.map(({ says }) => says)).toEqual(['"low" is there already']);
    expect(edits.removeRow(edits.removeRow(two, 'predicates', key), 'predicates', two.predicates[1]!.key)).toEqual(
      text,
    );
  });
  test('a word with another name takes its rules with it', () => {
    const was = text.lists.cells.vertical!;
    const is = was.replace('CONTOUR', 'PROFILE');
    const table = edits.renamed(edits.typeList(text, 'vertical', is), was, is);
    const { modes, problems } = readTable(table);
    expect(problems).toEqual([]);
    expect(modes!.rules.find(({ id }) => id === 'T19')).toMatchObject(
      Object.fromEntries([['then', { vertical: 'PROFILE' }]]),
    );
    expect(modes!.armsAlways).toEqual(['PROFILE']);
    expect([modes!.spoken.PROFILE, modes!.targets.PROFILE]).toEqual([
      sheet.modes.spoken.CONTOUR,
      sheet.modes.targets.CONTOUR,
    ]);
  });
  test('a number with another name takes its references with it', () => {
    const table = edits.renamed(edits.typeRule(text, keyOf('T31'), 'id', 'T91'), 'T31', 'T91');
    expect(readTable(table).modes!.reversions).toEqual(['T20', 'T26', 'T27', 'T91']);
  });
  test.each([
    ['RISE, SINK', 'RISE, SINK, DROP'],
    ['RISE, SINK', 'RISE'],
    ['RISE, SINK', 'SINK, RISE'],
    ['RISE, SINK', 'RISE, RISE'],
    ['RISE', ''],
  ])('nothing follows from %s to %s', (was, is) => {
    expect(edits.renamed(text, was, is)).toBe(text);
  });
});

describe('what is said beside', () => {
  const answer = (table: TableText) => tableAnswer(readTable(table).modes!);
  test('the demo table: two oddities, one of them on one standard, and all its states', () => {
    const { findings, standards, refused } = answer(text);
    expect(findings.map(({ kind, at, standards: on }) => [kind, at, on])).toEqual([
      ['never-true', 'T34', ['A']],
      ['no-effect', 'T14', ['A', 'B']],
    ]);
    expect(standards.map(({ states, edges, reason }) => [states, edges, reason])).toEqual([
      [1_354, 12_184, null],
      [1_458, 13_360, null],
    ]);
    expect(refused).toEqual([]);
  });
  test('a line of the drawing for each rule and word that it leads to', () => {
    const { vertical, thrust } = answer(text).strokes;
    expect(vertical.filter(({ rule }) => rule === 'T17')).toEqual([
      expect.objectContaining({ to: 'RATE-UP', from: expect.arrayContaining(['ASCENT', 'LEVEL']) }),
      { rule: 'T17', from: ['DESCENT', 'CONTOUR'], to: 'RATE-DN', standards: [] },
    ]);
    expect(thrust.find(({ rule }) => rule === 'T02')).toEqual({
      rule: 'T02',
      from: ['TAKEOFF'],
      to: 'LATCHED',
      standards: [],
    });
  });
  test('a line that only one standard has says which', () => {
    // aircraft.md D5.2: climbing toward the selected altitude with nothing armed comes about on B alone.
    const table = typed(typed(text, 'T26', 'when.rel', 'above'), 'T26', 'when.armed_vertical', 'not ALT');
    expect(answer(table).strokes.vertical.filter(({ rule }) => rule === 'T26')).toEqual([
      { rule: 'T26', from: ['RATE-UP'], to: 'ASCENT', standards: ['B'] },
    ]);
  });
  test('modes that nothing reaches any more', () => {
    const without = ['T33', 'T13', 'T01', 'T21', 'T25'].reduce(
      (table, id) => edits.removeRule(table, keyOf(id, table)),
      text,
    );
    const stripped = { ...without, controls: [], environment: [] };
    const kinds = answer(stripped).findings.map(({ kind, at }) => `${kind} ${at}`);
    expect(kinds).toEqual(expect.arrayContaining(['never-reached vertical.LIFT', 'never-reached thrust.TAKEOFF']));
  });
  test('a table that can not be explored says why', () => {
    const table = typed(text, 'T10', 'then.thrust', 'GOVERN, IDLE unless MANUAL');
    expect(answer(table).refused.map(({ at }) => at)).toEqual(['T10.then']);
    expect(answer(table).standards).toEqual([]);
  });
});

describe('from a sentence to its row', () => {
  test.each([
    ['T14', 'T14', 'event'],
    ['T10.then', 'T10', 'event'],
  ])('%s is the rule', (at, id, cell) => {
    expect(placeIn(text, at)).toEqual({ row: keyOf(id), cell });
  });
  test.each([
    ['vertical.LIFT', 'vertical'],
    ['phase.dead', 'phase'],
    ['armed.ALT', 'armedVertical'],
    ['armed.ROUTE', 'armedLateral'],
    ['climbing', 'climbing'],
  ])('%s is a list of words', (at, cell) => {
    expect(placeIn(text, at)).toEqual({ row: 'lists', cell });
  });
  test('rows by their number or name, and no place for what has none', () => {
    expect(placeIn(text, 'environment.1')).toEqual({ row: text.environment[1]!.key, cell: 'rules' });
    expect(placeIn(text, 'initial.1.rel')).toEqual({ row: text.start[1]!.key, cell: 'thrust' });
    expect(placeIn(text, '')).toBeNull();
  });
});

test('the table goes with the figures into the next revision', () => {
  const { modes } = readTable(typed(text, 'T21', 'when.vertical', 'not LEVEL, GLIDE, FLARE, LIFT'));
  const read = readSheet(nextSheet(sheet, 'B', { 'limits.mmo.value': '0.8' }, modes!));
  expect(read.ok && sheetChanges(sheet, read.value).map(({ at }) => at)).toEqual([
    'revision',
    'limits.mmo.value',
    'modes.rules.T21.when.vertical.not.3',
  ]);
});

test('a guard that asks for a condition is read with its sheet, and refused without it', () => {
  const predicates = [{ key: 'p', cells: { name: 'low', text: 'height < 400 ft AAL' } }];
  const modes = readTable({ ...typed(text, 'T23', 'when.is', 'not low'), predicates }).modes!;
  const read = readSheet(nextSheet(sheet, 'B', {}, modes));
  expect(read.ok && read.value.modes).toEqual(modes);
  const { predicates: _, ...without } = modes;
  expect(readSheet(nextSheet(sheet, 'B', {}, without))).toMatchObject({
    ok: false,
    error: [{ message: expect.stringContaining('low is no word of fails') }],
  });
});
