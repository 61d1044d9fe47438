// The mode table in cells and back: nothing is lost on the way, and what can't be read says so at its cell.
import { describe, expect, test } from 'vitest';
import { readTable, type TableText, tableText } from '../../lib/mode/table-text.ts';
import { randomTable } from '../kit/mode-tables.ts';
import { otherSheet, tn182 } from '../kit/sheets.ts';

const { modes } = tn182();
const text = tableText(modes);

/** The table with one cell of a case of a rule typed over. */
function typed(id: string, cell: string, words: string, part = 0): TableText {
  return {
    ...text,
    rules: text.rules.map((rule) =>
      rule.cells.id !== id
        ? rule
        : {
            ...rule,
            cases: rule.cases.map((row, k) => (k === part ? { ...row, cells: { ...row.cells, [cell]: words } } : row)),
          },
    ),
  };
}
const listed = (list: string, words: string): TableText => ({
  ...text,
  lists: { ...text.lists, cells: { ...text.lists.cells, [list]: words } },
});
const sentences = (table: TableText) => readTable(table).problems.map(({ cell, says }) => `${cell}: ${says}`);
const ruleOf = (table: TableText, id: string) => readTable(table).modes?.rules.find((rule) => rule.id === id);

describe('back and forth', () => {
  test.each([
    ['the demo type', modes],
    ['another type', otherSheet().modes],
  ])('%s comes back as it was', (_, table) => {
    expect(readTable(tableText(table))).toEqual({ modes: table, problems: [] });
  });
  test('1 000 random tables come back with the same cells', () => {
    for (let seed = 1; seed <= 1_000; seed += 1) {
      const cells = tableText(randomTable(seed));
      const read = readTable(cells);
      expect(read.problems, `table ${seed}`).toEqual([]);
      expect(tableText(read.modes!), `table ${seed}`).toEqual(cells);
    }
  });
  test('cells read as a pilot would say them', () => {
    const cells = (id: string) => text.rules.find((rule) => rule.cells.id === id)!.cases[0]!.cells;
    expect(cells('T24')).toMatchObject({
      'when.vertical': 'CAPTURE',
      'then.vertical': 'RATE-UP or RATE-DN',
      'then.armed_vertical': 'A: ALT anew, B: ALT off',
    });
    expect(cells('T25')['then.rel']).toBe('above or below, if it changes');
    expect(cells('T10')['then.thrust']).toBe('GOVERN unless MANUAL');
    expect(cells('T17')['then.vertical']).toBe('RATE-DN in DESCENT or CONTOUR, else RATE-UP');
    expect(cells('T08')).toMatchObject({
      'when.armed_vertical': 'not GLIDE',
      'then.armed_lateral': 'COURSE unless active',
    });
  });
});

describe('what is typed', () => {
  test('a guard and effects', () => {
    const table = typed('T11', 'when.vertical', 'not GLIDE or FLARE, LIFT');
    expect(ruleOf(table, 'T11')).toMatchObject({ when: { vertical: { not: ['GLIDE', 'FLARE', 'LIFT'] } } });
    expect(ruleOf(typed('T11', 'then.vertical', 'FLARE or LEVEL'), 'T11')).toMatchObject(
      Object.fromEntries([['then', { vertical_each: ['FLARE', 'LEVEL'] }]]),
    );
  });
  test('a predicate is a condition in gate notation, asked for by its name', () => {
    const predicates = [{ key: 'p', cells: { name: 'low', text: 'height < 400 ft AAL' } }];
    const table = { ...typed('T05', 'when.is', 'not low'), predicates };
    expect(ruleOf(table, 'T05')).toMatchObject({ when: { fails: ['low'] } });
    const half = [{ key: 'p', cells: { name: 'low', text: 'height < 400' } }];
    expect(sentences({ ...table, predicates: half })[0]).toContain('text: 400 has no unit');
  });
});

describe('what can not be read', () => {
  test.each([
    ['T05', 'when.lateral', 'CENTERLINE', '"CENTERLINE" is no lateral word; was CENTRELINE meant?'],
    ['T05', 'when.lateral', 'ROUTE, not ROLL', 'one of these words, or "not"'],
    ['T05', 'when.armed_lateral', 'ROUTE, not COURSE', 'for both, add a case'],
    ['T05', 'when.is', 'wind', 'is no predicate word; there are: there are none'],
    ['T05', 'then.lateral', 'ROUTE, ROLL', 'is no lateral word'],
    ['T10', 'then.thrust', 'GOVERN unless IDLE', 'the word that the guidance leaves alone: MANUAL'],
    ['T10', 'then.thrust', 'GOVERN, IDLE', 'thrust is decided twice'],
    ['T17', 'then.vertical', 'LEVEL in DESCENT, LIFT in DESCENT', 'what follows on DESCENT is said twice'],
    ['T25', 'then.rel', 'above, below', 'the selected altitude is decided twice'],
    ['T24', 'then.armed_vertical', 'A: ALT anew', 'what standard B does is not said'],
    ['T24', 'then.armed_vertical', 'A: ALT anew, C: ALT off', '"C" is no standard word'],
    ['T24', 'then.armed_vertical', 'A: GLIDE, B: ALT off', '"ALT anew" or "ALT off"'],
    ['T24', 'then.armed_vertical', 'GLIDE anew', 'only ALT is decided anew'],
  ])('%s, %s: %s', (id, cell, words, says) => {
    const table = typed(id, cell, words);
    expect(readTable(table).modes).toBeNull();
    const [first, ...rest] = sentences(table);
    expect(first).toContain(`${cell}: `);
    expect(first).toContain(says);
    expect(rest.length).toBeLessThan(2);
  });
  test.each([
    ['thrust', '', 'at least one word is needed'],
    ['vertical', `${commas(modes.vertical)}, LIFT`, 'LIFT stands twice'],
    ['lateral', `${commas(modes.lateral)}, BACK TRACK`, 'has no blank'],
    ['phase', `${commas(modes.phase)}, none`, 'is a word of the notation itself'],
    ['manual', 'MANUAL, IDLE', 'one word'],
    ['reversions', 'T20, T99', '"T99" is no rule word'],
    ['climbing', 'GOVERN', '"GOVERN" is no vertical word'],
    ['source', ' ', 'where the table comes from is missing'],
  ])('the list of %s: %s', (list, words, says) => {
    expect(sentences(listed(list, words)).filter((line) => line.startsWith(`${list}: `))[0]).toContain(says);
  });
  test('a word taken off an axis is missed at every cell that uses it', () => {
    const problems = readTable(
      listed('vertical', commas(modes.vertical.filter((word) => word !== 'CONTOUR'))),
    ).problems;
    const rows = new Set(problems.map(({ row }) => row));
    expect(rows.size).toBeGreaterThan(6);
    expect(problems.every(({ says }) => says.includes('CONTOUR'))).toBe(true);
  });
  test('a rule without a number, one that is there already, and a row that names no rule', () => {
    const [first] = text.rules;
    const again = { ...first!, key: 'x', cells: { ...first!.cells, id: 'T02' } };
    expect(sentences({ ...text, rules: [...text.rules, again] })).toEqual(['id: "T02" is there already']);
    const odd = { ...first!, key: 'x', cells: { ...first!.cells, id: 'rule 3', event: '' } };
    expect(sentences({ ...text, rules: [...text.rules, odd] })).toEqual([
      'id: capital letters and then a number, such as T35',
      'event: the event is missing',
    ]);
    const raised = [{ key: 'c', cells: { verbs: 'press', object: 'HEADING', value: '', rules: '' } }];
    expect(sentences({ ...text, controls: raised })).toEqual(['rules: the rules that it raises are missing']);
  });
});

function commas(words: readonly string[]): string {
  return words.join(', ');
}
