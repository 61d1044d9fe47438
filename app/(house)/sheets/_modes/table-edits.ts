// What a hand does to the mode table in cells. Pure: the same object comes back where nothing changes.
import { CASE_CELLS } from '../../../../lib/mode/cell-words.ts';
import type { Cells, RowList, TableText, TextRow, TextRule } from '../../../../lib/mode/table-text.ts';

export const ROW_CELLS: Readonly<Record<RowList, readonly string[]>> = {
  start: ['thrust', 'lateral', 'vertical', 'armed_vertical', 'armed_lateral', 'rel', 'phase'],
  words: ['word', 'spoken', 'speed'],
  standards: ['name', 'says'],
  predicates: ['name', 'text'],
  controls: ['verbs', 'object', 'value', 'rules'],
  environment: ['name', 'says', 'rules'],
};
const EMPTY_CASE = Object.fromEntries(CASE_CELLS.map((cell) => [cell, '']));

const typedIn = <R extends TextRow>(rows: readonly R[], key: string, cell: string, words: string): readonly R[] =>
  rows.map((row) =>
    row.key !== key || row.cells[cell] === words ? row : { ...row, cells: { ...row.cells, [cell]: words } },
  );

export const typeList = (table: TableText, list: string, words: string): TableText => ({
  ...table,
  lists: typedIn([table.lists], 'lists', list, words)[0]!,
});
export const typeRow = (table: TableText, list: RowList, key: string, cell: string, words: string): TableText => ({
  ...table,
  [list]: typedIn(table[list], key, cell, words),
});
/** `key` of a rule or of one of its cases. */
export function typeRule(table: TableText, key: string, cell: string, words: string): TableText {
  const rules = table.rules.map((rule): TextRule => {
    if (rule.key === key) return typedIn([rule], key, cell, words)[0]!;
    if (!rule.cases.some((one) => one.key === key)) return rule;
    return { ...rule, cases: typedIn(rule.cases, key, cell, words) };
  });
  return { ...table, rules };
}

/** A key that no row has. */
function freshKey(table: TableText, stem: string): string {
  const taken = new Set([
    ...(Object.keys(ROW_CELLS) as RowList[]).flatMap((list) => table[list].map((row) => row.key)),
    ...table.rules.flatMap((rule) => [rule.key, ...rule.cases.map((one) => one.key)]),
  ]);
  let at = 1;
  while (taken.has(`${stem}-new-${at}`)) at += 1;
  return `${stem}-new-${at}`;
}

/** The next number behind those that are there: T35. */
function freshId(table: TableText): string {
  const ids = table.rules.flatMap((rule) => /^([A-Z]+)(\d+)$/.exec(rule.cells.id!.trim()) ?? []);
  const stem = ids[1] ?? 'T';
  const most = table.rules.reduce((most, { cells }) => {
    const number = cells.id!.trim().startsWith(stem) ? Number(cells.id!.trim().slice(stem.length)) : 0;
    return Number.isInteger(number) ? Math.max(most, number) : most;
  }, 0);
  return `${stem}${String(most + 1).padStart(2, '0')}`;
}

export type Made = { readonly table: TableText; readonly key: string };

const insertedAfter = <R extends TextRow>(rows: readonly R[], after: string | null, row: R): readonly R[] => {
  const at = after === null ? rows.length : rows.findIndex((one) => one.key === after) + 1;
  return [...rows.slice(0, at), row, ...rows.slice(at)];
};

function withRule(table: TableText, after: string | null, cells: Cells, cases: readonly Cells[]): Made {
  const key = freshKey(table, 'rules');
  const rows = cases.map((one, at) => ({ key: `${key}-${at + 1}`, cells: one }));
  const rule = { key, cells: { ...cells, id: freshId(table) }, cases: rows };
  return { table: { ...table, rules: insertedAfter(table.rules, after, rule) }, key };
}
/** `after`: key of the rule before it; null: at the end. */
export const addRule = (table: TableText, after: string | null): Made =>
  withRule(table, after, { who: 'crew', event: '', effect: '' }, [EMPTY_CASE]);
export function duplicateRule(table: TableText, key: string): Made {
  const rule = table.rules.find((one) => one.key === key)!;
  return withRule(
    table,
    key,
    rule.cells,
    rule.cases.map((one) => one.cells),
  );
}
export const removeRule = (table: TableText, key: string): TableText => ({
  ...table,
  rules: table.rules.filter((rule) => rule.key !== key),
});
export function addCase(table: TableText, rule: string): Made {
  const key = freshKey(table, rule);
  const cases = (one: TextRule) => [...one.cases, { key, cells: EMPTY_CASE }];
  const rules = table.rules.map((one) => (one.key === rule ? { ...one, cases: cases(one) } : one));
  return { table: { ...table, rules }, key };
}
/** The last case of a rule stays. */
export function removeCase(table: TableText, key: string): TableText {
  const rules = table.rules.map((rule) =>
    rule.cases.length > 1 && rule.cases.some((one) => one.key === key)
      ? { ...rule, cases: rule.cases.filter((one) => one.key !== key) }
      : rule,
  );
  return { ...table, rules };
}
/** `like`: key of the row that is doubled; null: an empty one at the end. */
export function addRow(table: TableText, list: RowList, like: string | null): Made {
  const key = freshKey(table, list);
  const empty = Object.fromEntries(ROW_CELLS[list].map((cell) => [cell, '']));
  const cells = table[list].find((row) => row.key === like)?.cells ?? empty;
  return { table: { ...table, [list]: insertedAfter(table[list], like, { key, cells }) }, key };
}
export const removeRow = (table: TableText, list: RowList, key: string): TableText => ({
  ...table,
  [list]: table[list].filter((row) => row.key !== key),
});

const isWord = (words: string): boolean => /^[^\s,:]+$/.test(words);

/** A word was given another name where it is defined: every cell that uses it follows. `was` and `is` as in the cell before and
 *  after; where more than one word is other, nothing follows. */
export function renamed(table: TableText, was: string, is: string): TableText {
  const [before, after] = [was, is].map((text) => text.split(',').map((word) => word.trim()));
  const differ = before!.flatMap((word, at) => (after![at] === word ? [] : [at]));
  if (before!.length !== after!.length || differ.length !== 1) return table;
  const [from, to] = [before![differ[0]!]!, after![differ[0]!]!];
  // Not where the old word is still there, or the new one was there already: which was meant is then not known.
  if (!isWord(from) || !isWord(to) || after!.includes(from) || before!.includes(to)) return table;
  const token = new RegExp(`(?<![\\w-])${from.replaceAll(/[^\w]/g, '\\$&')}(?![\\w-])`, 'g');
  const follow = (cells: Cells, only: (cell: string) => boolean): Cells =>
    Object.fromEntries(
      Object.entries(cells).map(([cell, text]) => [cell, only(cell) ? text.replaceAll(token, to) : text]),
    );
  const row = (one: TextRow, only: (cell: string) => boolean): TextRow => ({ ...one, cells: follow(one.cells, only) });
  const naming = new Set(['rules', 'word']);
  return {
    ...table,
    lists: row(table.lists, (cell) => cell !== 'source'),
    start: table.start.map((one) => row(one, () => true)),
    words: table.words.map((one) => row(one, (cell) => cell === 'word')),
    controls: table.controls.map((one) => row(one, (cell) => naming.has(cell))),
    environment: table.environment.map((one) => row(one, (cell) => naming.has(cell))),
    rules: table.rules.map((rule) => ({ ...rule, cases: rule.cases.map((one) => row(one, () => true)) })),
  };
}
