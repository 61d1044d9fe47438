// The figures of a sheet as grids of cells, as a spreadsheet would lay them out, and back into a sheet. Pure.
import type { Sheet } from '../../../lib/aircraft/sheet.ts';
import { wordOf } from './figures.ts';

/** `cells`: the place of each figure in the sheet, such as `detents.1.vfe.value`; null where the sheet has none. */
export type GridRow = { readonly label: string; readonly cells: readonly (string | null)[] };
export type Grid = { readonly title: string; readonly columns: readonly string[]; readonly rows: readonly GridRow[] };
/** What was typed, by place. What was not typed is as in the sheet. */
export type Typed = Readonly<Record<string, string>>;

const PARTS = ['weights', 'limits', 'constants', 'drag', 'thrust', 'fuel', 'guidance'] as const;
const DETENT = [
  ['VFE, kt', 'vfe.value'],
  ['Greatest lift', 'clMax.value'],
  ['Drag without lift', 'drag.cd0'],
  ['Drag by lift', 'drag.k'],
  ['To the next, s', 'transitToNext.value'],
] as const;

export function gridsOf(sheet: Sheet): readonly Grid[] {
  const detents = sheet.detents.map((detent, i) => ({
    label: detent.name,
    cells: DETENT.map(([, path]) => present(sheet, `detents.${i}.${path}`)),
  }));
  const parts = PARTS.map((part) => ({
    title: wordOf(part),
    columns: ['Figure'],
    rows: rowsUnder(sheet, sheet[part], part),
  }));
  return [
    { title: 'Detents', columns: DETENT.map(([name]) => name), rows: detents },
    ...speedTables(sheet),
    ...parts.filter((grid) => grid.rows.length > 0),
  ];
}

const present = (sheet: Sheet, path: string): string | null => (typeof at(sheet, path) === 'number' ? path : null);
const at = (data: unknown, path: string): unknown =>
  path.split('.').reduce<unknown>((part, key) => (part as Record<string, unknown> | null | undefined)?.[key], data);

function rowsUnder(sheet: Sheet, value: unknown, path: string): readonly GridRow[] {
  if (typeof value === 'number') return [{ label: labelOf(sheet, path), cells: [path] }];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, part]) => rowsUnder(sheet, part, `${path}.${key}`));
}

/** `limits.gear.vle.value` is Gear, VLE, kt. */
function labelOf(sheet: Sheet, path: string): string {
  const keys = path.split('.');
  const unit = at(sheet, [...keys.slice(0, -1), 'unit'].join('.'));
  const words = keys.slice(1).filter((key) => key !== 'value');
  const said = words.map((key, i) => {
    const word = /^\d+$/.test(key) ? String(Number(key) + 1) : wordOf(key);
    return i === 0 ? word : word.replace(/^[A-Z](?=[a-z])/, (letter) => letter.toLowerCase());
  });
  return [...said, typeof unit === 'string' && unit !== '1' ? unit : ''].filter(Boolean).join(', ');
}

/** Speeds that stand in a table, one grid each; those that follow a formula or are constant, in one grid together. */
function speedTables(sheet: Sheet): readonly Grid[] {
  const tables: Grid[] = [];
  const plain: GridRow[] = [];
  for (const [i, entry] of sheet.speeds.entries()) {
    const { rule } = entry;
    const title = `${entry.name} ${entry.detents.join(', ')}`.trim();
    const place = `speeds.${i}.rule`;
    if (rule.kind === 'formula' || rule.kind === 'constant') {
      plain.push({
        label: title,
        cells: [`${place}.${rule.kind === 'formula' ? 'text' : 'value'}`, `speeds.${i}.source`],
      });
    } else if (rule.kind === 'table') {
      const cells = (k: number) => [`${place}.at.${k}`, `${place}.gives.${k}`];
      const rows = rule.at.map((_, k) => ({ label: String(k + 1), cells: cells(k) }));
      tables.push({ title, columns: [axisWords(rule.by), 'kt'], rows });
    } else {
      const [down, right] = rule.by;
      const head = { label: axisWords(right), cells: [null, ...rule.across.map((_, k) => `${place}.across.${k}`)] };
      const rows = rule.at.map((_, k) => ({
        label: String(k + 1),
        cells: [`${place}.at.${k}`, ...rule.across.map((_, n) => `${place}.gives.${k}.${n}`)],
      }));
      tables.push({
        title,
        columns: [axisWords(down), ...rule.across.map((_, k) => `kt ${k + 1}`)],
        rows: [head, ...rows],
      });
    }
  }
  const formulas = { title: 'Speeds by formula', columns: ['Formula or figure, kt', 'Source'], rows: plain };
  return plain.length > 0 ? [formulas, ...tables] : tables;
}

const axisWords = (by: string): string => (by === 'weight' ? 'Weight, kg' : by);

export const figureAt = (sheet: Sheet, path: string): string => String(at(sheet, path));
export const isText = (sheet: Sheet, path: string): boolean => typeof at(sheet, path) === 'string';

/** What a block of a spreadsheet says when it is put down at a cell: lines go down, tabs go right, the rest falls off. */
export function pasted(grid: Grid, row: number, column: number, text: string): Typed {
  const typed: Record<string, string> = {};
  const lines = text.replace(/\r?\n$/, '').split(/\r?\n/);
  for (const [down, line] of lines.entries()) {
    for (const [right, word] of line.split('\t').entries()) {
      const path = grid.rows[row + down]?.cells[column + right];
      if (path) typed[path] = word.trim();
    }
  }
  return typed;
}

/** The sheet with what was typed, as plain data for the reader of sheets, which says what is wrong with it. `modes`: the mode
 *  table, where it was edited too. */
export function nextSheet(sheet: Sheet, revision: string, typed: Typed, modes?: Sheet['modes']): unknown {
  const data = structuredClone(sheet) as unknown as Record<string, unknown>;
  data.revision = revision;
  if (modes) data.modes = modes;
  for (const [path, text] of Object.entries(typed)) {
    const keys = path.split('.');
    const last = keys.pop()!;
    const part = at(data, keys.join('.')) as Record<string, unknown> | undefined;
    // A formula stays words, whatever it looks like.
    if (part) part[last] = typeof part[last] === 'string' ? text : meant(text);
  }
  return data;
}

/**
 * A comma is a decimal sign in half the spreadsheets of the world; before three digits it may part thousands, and is not
 * guessed at. What is no number stays a word, which the reader of sheets refuses.
 */
function meant(text: string): number | string {
  const plain = text
    .replaceAll(/[ \u00a0\u202f]/g, '')
    .replace('−', '-')
    .replace(/^(-?\d+),(?!\d{3}$)(\d+)$/, '$1.$2');
  return plain !== '' && Number.isFinite(Number(plain)) ? Number(plain) : text;
}
