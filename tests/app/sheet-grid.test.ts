import { describe, expect, test } from 'vitest';
import { sheetChanges } from '../../app/(house)/sheets/sheet-changes.ts';
import { figureAt, gridsOf, isText, nextSheet, pasted } from '../../app/(house)/sheets/sheet-grid.ts';
import { readSheet } from '../../lib/aircraft/sheet.ts';
import { otherSheet, tn182 } from '../kit/sheets.ts';

const sheet = tn182();
const grids = gridsOf(sheet);
const detents = grids[0]!;

describe('a sheet in cells', () => {
  test('every cell has the figure of the sheet', () => {
    for (const one of [sheet, otherSheet()]) {
      const cells = gridsOf(one).flatMap((grid) => grid.rows.flatMap((row) => row.cells));
      const places = cells.filter((path) => path !== null);
      expect(new Set(places).size).toBe(places.length);
      for (const path of places) {
        const figure = figureAt(one, path);
        expect(isText(one, path) ? figure !== '' : Number.isFinite(Number(figure)), path).toBe(true);
      }
    }
  });
  test('a limit that the sheet does not have is no cell', () => {
    expect(detents.rows[0]!.cells[0]).toBeNull();
    expect(detents.rows[1]!.cells[0]).toBe('detents.1.vfe.value');
  });
  test('a row says what it is and in which unit', () => {
    const labels = grids.flatMap((grid) => grid.rows.map((row) => row.label));
    expect(labels).toEqual(
      expect.arrayContaining(['Gear, VLE, kt', 'Temperature from standard, from, °C', 'Engine out']),
    );
  });
  test('tables of speeds have their points and values side by side', () => {
    const tables = gridsOf(otherSheet()).filter((grid) => grid.columns[0] === 'Weight, kg');
    expect(tables.length).toBeGreaterThan(0);
    expect(tables[0]!.rows.length).toBeGreaterThan(1);
  });
});

describe('what is typed and pasted', () => {
  test('nothing typed is the same sheet under another name', () => {
    const read = readSheet(nextSheet(sheet, 'B', {}));
    expect(read.ok && sheetChanges(sheet, read.value).map((change) => change.at)).toEqual(['revision']);
  });
  test('a block goes down and right, and what hangs over falls off', () => {
    expect(pasted(detents, 4, 0, '170\t2.5\r\n160\t2.7\r\n150\t2.9\r\n')).toEqual({
      'detents.4.vfe.value': '170',
      'detents.4.clMax.value': '2.5',
      'detents.5.vfe.value': '160',
      'detents.5.clMax.value': '2.7',
    });
  });
  test('spaces and decimal commas of a spreadsheet are understood', () => {
    const typed = { 'weights.maximumTakeOff.value': '79 000', 'limits.mmo.value': '0,8' };
    const read = readSheet(nextSheet(sheet, 'B', typed));
    expect(read.ok && [read.value.weights.maximumTakeOff.value, read.value.limits.mmo.value]).toEqual([79_000, 0.8]);
  });
  test('a comma before three digits may be either and is refused', () => {
    const read = readSheet(nextSheet(sheet, 'B', { 'limits.flapAltitude.value': '20,000' }));
    expect(read.ok ? [] : read.error.map((one) => one.at)).toEqual(['limits.flapAltitude.value']);
  });
  test('what is no number is refused at its place, and the sheet it came from stays as it was', () => {
    const read = readSheet(nextSheet(sheet, 'B', { 'detents.1.vfe.value': 'about 220' }));
    expect(read.ok ? [] : read.error.map((one) => one.at)).toEqual(['detents.1.vfe.value']);
    expect(sheet).toEqual(tn182());
  });
  test('a formula is a cell of words: a sound one is taken over, a broken one is named', () => {
    const cell = gridsOf(sheet)
      .find((grid) => grid.title === 'Speeds by formula')!
      .rows.find((row) => row.label.startsWith('VMM'))!.cells[0]!;
    expect(figureAt(sheet, cell)).toBe('manoeuvreFactor * VSR');
    const sound = readSheet(nextSheet(sheet, 'B', { [cell]: '1.30 * VSR' }));
    expect(sound.ok && sheetChanges(sheet, sound.value)).toHaveLength(2);
    expect(sound.ok && figureAt(sound.value, cell)).toBe('1.30 * VSR');
    const constant = readSheet(nextSheet(sheet, 'B', { [cell]: '180' }));
    expect(constant.ok && figureAt(constant.value, cell)).toBe('180');
    const broken = readSheet(nextSheet(sheet, 'B', { [cell]: '1.30 * (VSR' }));
    expect(broken.ok ? [] : broken.error.map((one) => one.at)).toEqual([cell]);
  });
  test('a table of two variables is a grid with its heads as cells', () => {
    const two = structuredClone(sheet) as unknown as { speeds: { rule: unknown }[] };
    const at = sheet.speeds.findIndex((entry) => entry.name === 'VREF');
    two.speeds[at]!.rule = {
      kind: 'table2',
      by: ['weight', 'VSR'],
      interpolation: 'bilinear',
      at: [46_000, 78_600],
      across: [80, 160],
      gives: [
        [110, 111],
        [140, 142],
      ],
    };
    const read = readSheet(two);
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    const grid = gridsOf(read.value).find((one) => one.rows[0]?.cells.includes(`speeds.${at}.rule.across.1`))!;
    expect(grid.rows).toHaveLength(3);
    expect(figureAt(read.value, grid.rows[2]!.cells[2]!)).toBe('142');
  });
});
