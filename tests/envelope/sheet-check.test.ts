import { describe, expect, test } from 'vitest';
import type { Sheet } from '../../lib/aircraft/sheet.ts';
import { checkSheet } from '../../lib/envelope/sheet-check.ts';
import { otherSheet, tn182 } from '../kit/sheets.ts';

const sentences = (sheet: Sheet) => checkSheet(sheet).map((problem) => problem.message);
const withVfe = (sheet: Sheet, detent: string, value: number): Sheet => ({
  ...sheet,
  detents: sheet.detents.map((one) => (one.name === detent && one.vfe ? { ...one, vfe: { ...one.vfe, value } } : one)),
});
const withRule = (sheet: Sheet, i: number, rule: Sheet['speeds'][number]['rule']): Sheet => ({
  ...sheet,
  speeds: sheet.speeds.map((entry, k) => (k === i ? { ...entry, rule } : entry)),
});

describe('a sheet looks at itself', () => {
  test('the sheets at hand are in order; what was assumed is said', () => {
    expect(checkSheet(otherSheet())).toEqual([]);
    expect(checkSheet(tn182()).map((problem) => problem.at)).toEqual(['documents.DEMO']);
  });
  test('VMM at or above the limit of the next detent, with the weight', () => {
    const found = checkSheet(withVfe(tn182(), 'F26', 155));
    const message = 'VMM F18 reaches VFE F26 155 kt above 73.8 t: no band is left';
    expect(found).toContainEqual({ at: 'detents.3', message });
  });
  test('limits that rise from detent to detent', () => {
    expect(sentences(withVfe(tn182(), 'F12', 240))).toContain('VFE F12 240 kt is above VFE F6 235 kt');
  });
  test('V1 above VR', () => {
    const sheet = otherSheet();
    const v1 = sheet.speeds.findIndex((entry) => entry.name === 'V1');
    const late = withRule(sheet, v1, { kind: 'constant', value: 115 });
    expect(sentences(late)).toContain('V1 HALF exceeds VR HALF below 21.4 t');
  });
  test('a table that falls, and one that is too short', () => {
    const table = { kind: 'table', by: 'weight', interpolation: 'linear' } as const;
    const falls = withRule(otherSheet(), 0, {
      ...table,
      at: [14_000, 17_000, 20_000, 23_000],
      gives: [104, 115, 114, 134],
    });
    expect(sentences(falls)).toContain('VSR NIL falls from 115 to 114 kt at 20.0 t: a speed rises with weight');
    const short = withRule(otherSheet(), 0, { ...table, at: [14_000, 20_000], gives: [104, 125] });
    expect(sentences(short)).toContain(
      'the table of VSR NIL spans 14.0 t to 20.0 t, the aircraft flies from 14.0 t to 23.0 t',
    );
  });
  test('a speed given twice, and a detent without VMM', () => {
    const sheet = otherSheet();
    expect(sentences({ ...sheet, speeds: [...sheet.speeds, sheet.speeds[4]!] })).toContain(
      'VMM is given twice for NIL, LOW, HALF, WHOLE',
    );
    const without = sheet.speeds.map((entry) =>
      entry.name === 'VMM' ? { ...entry, detents: ['NIL', 'LOW', 'HALF'] } : entry,
    );
    expect(sentences({ ...sheet, speeds: without })).toContain(
      'there is no VMM for WHOLE: no band can be drawn with it',
    );
  });
  test('weights out of order', () => {
    const sheet = tn182();
    const weights = { ...sheet.weights, maximumLanding: { ...sheet.weights.maximumLanding, value: 80_000 } };
    expect(sentences({ ...sheet, weights })).toContain('maximum take off 78.6 t is below maximum landing 80.0 t');
  });
});
