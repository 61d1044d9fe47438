import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parseDocument } from 'yaml';
import { z } from 'zod';
import { wordsOf } from '../../lib/aircraft/mode-set.ts';
import { readSheet, sheetSchema } from '../../lib/aircraft/sheet.ts';
import { LONGEST_SHEET, readSheetText } from '../../lib/aircraft/sheet-text.ts';
import { sourceOf } from '../../lib/aircraft/source.ts';
import { otherSheet, tn182, tn182b, tn182Data } from '../kit/sheets.ts';

const text = readFileSync(new URL('../../seed/aircraft/tn-182-a.yaml', import.meta.url), 'utf8');

type Path = readonly (string | number)[];

/** The file with one value changed, whatever its layout; `undefined` takes the value away. */
function changed(path: Path, value: unknown): string {
  const document = parseDocument(text);
  expect(document.hasIn(path.slice(0, -1))).toBe(true);
  if (value === undefined) document.deleteIn(path);
  else document.setIn(path, document.createNode(value));
  return String(document);
}

/** What the reader says of the sheet with one value changed. */
function saidOf(path: Path, value: unknown) {
  const read = readSheetText(changed(path, value));
  return read.ok ? [] : read.error;
}

describe('the TN-182, revision A', () => {
  const sheet = tn182();
  test('has what the reference says', () => {
    expect(sheet.detents.map((one) => [one.name, one.vfe?.value ?? null, one.transitToNext?.value ?? null])).toEqual([
      ['F0', null, 9],
      ['F6', 235, 5],
      ['F12', 210, 5],
      ['F18', 195, 6],
      ['F26', 178, 6],
      ['F35', 164, null],
    ]);
    expect(sheet.weights.maximumTakeOff.value).toBe(78_600);
    expect(sheet.retractions).toMatchObject([{ from: 'F35', to: 'F18', phases: ['go-around'] }]);
  });
  test('has 25 modes and 34 rules: 18 of the crew, 13 automatic, 3 of the world outside', () => {
    const words = wordsOf(sheet.modes);
    expect(words.thrust.length + words.lateral.length + words.vertical.length).toBe(25);
    const count = (who: string) => sheet.modes.rules.filter((rule) => rule.who === who).length;
    expect([count('crew'), count('auto'), count('environment')]).toEqual([18, 13, 3]);
  });
  test('every word of the mode line can be spoken', () => {
    const words = Object.values(wordsOf(sheet.modes)).flat();
    expect(words.filter((word) => !(word in sheet.modes.spoken))).toEqual([]);
  });
  test('every source can be opened', () => {
    expect(sourceOf(sheet, sheet.limits.vmo.source)).toEqual({
      text: 'Tarnavel TN-182 type data record, revision A',
      section: '2.1',
      seen: true,
    });
    expect(sourceOf(sheet, 'NIX 1')).toBeNull();
  });
  test('revision B differs in one limit', () => {
    expect(tn182b().detents.map((one) => one.vfe?.value)).toEqual([undefined, 220, 210, 195, 178, 164]);
  });
});

test('a sheet of another shape can be read', () => {
  expect(otherSheet().detents.map((one) => one.name)).toEqual(['NIL', 'LOW', 'HALF', 'WHOLE']);
});

describe('bad input gets one clear sentence, with its place and line', () => {
  const VMO = ['limits', 'vmo'];
  test.each([
    ['a wrong unit', [...VMO, 'unit'], 'km/h', 'the unit is kt here, not "km/h"'],
    ['no number', [...VMO, 'value'], 'fast', 'a number is expected, not "fast"'],
    ['NaN', [...VMO, 'value'], Number.NaN, 'a number is expected, not NaN'],
    ['infinity', [...VMO, 'value'], Number.POSITIVE_INFINITY, 'a number is expected, not Infinity'],
    ['1e308', [...VMO, 'value'], 1e308, '1e+308 is beyond anything an aircraft has'],
    ['an unknown document', [...VMO, 'source'], 'XX 2.1', '"XX" is not among the documents of the sheet'],
  ])('%s', (_, path, value, message) => {
    const whole = changed(path, value);
    const line = whole.split('\n').findIndex((one) => one.trimStart().startsWith('vmo:')) + 1;
    const read = readSheetText(whole);
    expect(read).toEqual({ ok: false, error: [{ at: path.join('.'), message, line }] });
  });
  test('no source', () => {
    const message = 'a source is missing: name the document and its section, such as "TDR 2.1"';
    expect(saidOf([...VMO, 'source'], undefined)).toMatchObject([{ at: 'limits.vmo.source', message }]);
  });
  test('a stray key', () => {
    expect(saidOf(['limits', 'vmx'], 3)).toMatchObject([{ at: 'limits', message: '"vmx" has no place here' }]);
  });

  const RULE = ['speeds', 1, 'rule'];
  const table = { kind: 'table', by: 'weight', interpolation: 'linear' };
  const formula = (written: string) => ({ kind: 'formula', text: written });
  test.each([
    [
      'a gap',
      { ...table, at: [46_000, 60_000, 78_600], gives: [100, null, 120] },
      'gives.1',
      'the table has a gap at 60000',
    ],
    [
      'too few values',
      { ...table, at: [46_000, 60_000, 78_600], gives: [100, 110] },
      'gives',
      'the table has 3 points and 2 values',
    ],
    [
      'a table out of order',
      { ...table, at: [46_000, 45_000], gives: [100, 110] },
      'at.1',
      'at must rise: 45000 comes after 46000',
    ],
    ['an unknown name', formula('1.28 * VZR'), 'text', 'nothing is called "VZR", at character 8'],
    ['a broken formula', formula('1.28 * (VSR'), 'text', '")" is expected before the end, at character 12'],
    ['an unknown kind', { kind: 'rumour' }, 'kind', 'a rule is of kind constant, table, table2 or formula'],
  ])('%s', (_, rule, at, message) => {
    expect(saidOf(RULE, rule)).toMatchObject([{ at: `speeds.1.rule.${at}`, message }]);
  });

  test('a circular formula is said once a detent, with its round', () => {
    const found = saidOf(RULE, formula('max(VMM, VSR)'));
    expect(found).toHaveLength(6);
    expect(found[0]).toMatchObject({ at: 'speeds.1.rule.text', message: 'circular formula for F0: VMM needs VMM' });
  });
  test('a circle over three speeds', () => {
    const found = saidOf(['speeds', 2, 'rule'], formula('max(V1, 1.10 * VMCA)'));
    expect(found[0]?.message).toBe('circular formula for F6: V2 needs V1 needs VR needs V2');
  });
  test.each([
    ['nothing', '', 'the file is empty: a type data sheet is expected'],
    ['a list', '- 3', 'this is no type data sheet: a group of named values is expected'],
    ['prose', 'hello world', 'this is no type data sheet: a group of named values is expected'],
  ])('%s', (_, whole, message) => {
    expect(readSheetText(whole)).toMatchObject({ ok: false, error: [{ at: '', message }] });
  });
  test('50 MB is refused unread, in no time', () => {
    const before = performance.now();
    const read = readSheetText('x'.repeat(50_000_000));
    expect(read).toMatchObject({
      ok: false,
      error: [{ message: `the file has 50.0 million characters; a sheet has at most ${LONGEST_SHEET / 1e6}` }],
    });
    expect(performance.now() - before).toBeLessThan(1_000);
  });
  test('broken YAML has its line', () => {
    const read = readSheetText('format: 1\ntype: [1, 2\n');
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.error[0]?.message).toMatch(/^this is no YAML: /);
  });
  test('aliases that multiply are refused', () => {
    const bomb = [
      'a: &a [x,x,x,x,x,x,x,x,x]',
      ...'bcdefgh'.split('').map((name, i) => `${name}: &${name} [${Array(9).fill(`*${'abcdefg'[i]}`)}]`),
    ];
    expect(readSheetText(bomb.join('\n'))).toMatchObject({ ok: false });
  });
  test('names that lead nowhere', () => {
    expect(saidOf(['retractions', 0, 'from'], 'F36')[0]?.message).toBe(
      'there is no detent F36: the sheet has F0, F6, F12, F18, F26, F35',
    );
    const rule = ['modes', 'rules', 10, 'when', 'vertical'];
    expect(saidOf(rule, { in: ['SLIDE'] })[0]?.message).toBe('rule T11: SLIDE is no word of vertical');
  });
  test('the format can be described to other tools', () => {
    expect(z.toJSONSchema(sheetSchema)).toMatchObject({ type: 'object', additionalProperties: false });
  });
  test('what never was a file is refused too', () => {
    for (const data of [null, undefined, '', 7, true, [], {}]) expect(readSheet(data).ok).toBe(false);
    expect(readSheet(tn182Data()).ok).toBe(true);
  });
});
