import { expect, test } from 'vitest';
import { parseGate } from '../../lib/gate/parse.ts';
import { printGate } from '../../lib/gate/print.ts';

// Text, code, where, what the text is after the offered correction (null: none is certain).
const BAD: readonly (readonly [string, string, number, number, string | null])[] = [
  ['', 'empty', 0, 0, null],
  ['210', 'unit-missing', 0, 3, '210 kt'],
  ['speed >= 210', 'unit-missing', 9, 12, 'speed >= 210 kt'],
  ['height >= 400', 'unit-missing', 10, 13, 'height >= 400 ft AAL'],
  ['altitude >= 1 000', 'unit-missing', 12, 17, 'altitude >= 1 000 ft MSL'],
  ['altitude >= selected altitude - 1 000', 'unit-missing', 32, 37, 'altitude >= selected altitude - 1 000 ft'],
  ['mach >= 0.78', 'unit-missing', 8, 12, 'mach >= M 0.78'],
  ['weight <= 60', 'unit-missing', 10, 12, null],
  ['FL 100 kt', 'unit-wrong', 7, 9, 'FL 100'],
  ['flight level >= FL 100 kt', 'unit-wrong', 23, 25, 'flight level >= FL 100'],
  ['speed >= 210 kn', 'unit-wrong', 13, 15, 'speed >= 210 kt'],
  ['speed >= 400 ft AAL', 'unit-wrong', 9, 19, null],
  ['speed >= VREF - 100 ft', 'unit-wrong', 16, 22, null],
  ['thrust >= V2', 'unit-wrong', 10, 12, null],
  ['speed within 5 kt of V2', 'expected', 6, 12, null],
  ['height >= 1 000 ft', 'reference-missing', 10, 18, 'height >= 1 000 ft AAL'],
  ['altitude >= 1 000 ft', 'reference-missing', 12, 20, 'altitude >= 1 000 ft MSL'],
  ['flight level >= 10 000 ft', 'reference-missing', 16, 25, 'flight level >= FL 100'],
  ['height between 400 ft and 1 000 ft AAL', 'reference-missing', 15, 21, 'height between 400 ft AAL and 1 000 ft AAL'],
  ['height >= 5 000 ft MSL', 'reference-wrong', 10, 22, 'altitude >= 5 000 ft MSL'],
  ['altitude >= FL 100', 'reference-wrong', 12, 18, 'flight level >= FL 100'],
  ['height >= transition altitude', 'reference-wrong', 10, 29, 'altitude >= transition altitude'],
  [
    'altitude >= selected altitude - 1 000 ft MSL',
    'reference-wrong',
    32,
    44,
    'altitude >= selected altitude - 1 000 ft',
  ],
  ['hieght >= 400 ft AAL', 'unknown-word', 0, 6, 'height >= 400 ft AAL'],
  ['climbing and not armed ALT', 'unknown-word', 0, 8, 'event "climbing" and not armed ALT'],
  ['speed >= VMM', 'detent-missing', 9, 12, null],
  ['speed >= VMM f12', 'unknown-word', 13, 16, 'speed >= VMM F12'],
  ['speed >= 1,000 kt', 'number', 9, 14, 'speed >= 1 000 kt'],
  ['mach >= M 0,78', 'number', 10, 14, 'mach >= M 0.78'],
  ['thrust within 1 % of target', 'expected', 7, 13, 'thrust >= target - 1 %'],
  ['event line-up clearance', 'expected', 6, 23, 'event "line-up clearance"'],
  ['heard "go', 'unclosed', 6, 9, 'heard "go"'],
  ['(then', 'unclosed', 0, 1, '(then)'],
  ['then)', 'trailing', 4, 5, 'then'],
  ['speed >= V1 flaps F0 indicated', 'trailing', 12, 17, null],
  ['flaps F18', 'expected', 9, 9, null],
  ['vertical = LIFT or ASCENT', 'expected', 16, 18, 'vertical = LIFT / ASCENT'],
  ['thrust >= 45 % within 5 kt', 'unit-wrong', 22, 26, null],
  ['speed >=', 'expected', 8, 8, null],
  ['then and', 'expected', 8, 8, null],
  [`${'('.repeat(60)}then`, 'too-deep', 40, 41, null],
  ['then '.repeat(500), 'too-long', 2000, 2500, null],
];

test.each(BAD)('%s', (text, code, from, to, corrected) => {
  const { problems } = parseGate(text);
  const found = problems.find((each) => each.code === code);
  expect(found, JSON.stringify(problems)).toBeDefined();
  expect(found!.span).toEqual({ from, to });
  expect(found!.message).not.toMatch(/undefined|null|NaN|\*/u);
  const { fix } = found!;
  expect(fix && `${text.slice(0, fix.span.from)}${fix.text}${text.slice(fix.span.to)}`).toBe(corrected);
});

test.each([
  ['speed >= VMM F12 and flaps', 'speed >= VMM F12'],
  ['speed >= and flaps F0 indicated', 'flaps F0 indicated'],
  ['climbing and not armed ALT', 'not armed ALT'],
  ['any of (heard "go around", gate not met, then)', 'heard "go around" or then'],
  ['flaps F18', 'flaps F18 indicated'],
  ['heard go around or then', 'heard "go around" or then'],
  ['(vertical = LIFT or vertical = ', 'vertical = LIFT'],
])('of %s there is understood %s', (text, understood) => {
  const { gate, problems } = parseGate(text);
  expect(problems.length).toBeGreaterThan(0);
  expect(printGate(gate!)).toBe(understood);
});

test('a number is never guessed', () => {
  for (const typed of ['1 000', '1000', '1\u202f000', '1\u00a0000']) {
    expect(printGate(parseGate(`height >= ${typed} ft AAL`).gate!)).toBe('height >= 1 000 ft AAL');
    expect(parseGate(`height >= ${typed} ft AAL`).problems).toEqual([]);
  }
  for (const typed of ['1,000', '1.000', "1'000", '1,5', '1.000.000']) {
    expect(parseGate(`height >= ${typed} ft AAL`).problems.map((each) => each.code)).toContain('number');
  }
});
