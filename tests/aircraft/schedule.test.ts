// Figures from the oracle's output (project reference, D4 and D6), with the tolerances of its scenarios: ±1 kt, ±0.05 %.
import { describe, expect, test } from 'vitest';
import { segmentGradient } from '../../lib/aircraft/climb.ts';
import { speedAt, speedExpression } from '../../lib/aircraft/schedule.ts';
import { evaluate } from '../../lib/base/expression.ts';
import type { SpeedName } from '../../lib/gate/syntax.ts';
import { otherSheet, tn182 } from '../kit/sheets.ts';

const sheet = tn182();
const speed = (name: SpeedName, detent: string | null, tonnes: number, wet = false) =>
  speedAt(sheet, { name, detent, icing: false, wet }, { weight: tonnes * 1000 });

const WEIGHTS = [46, 52, 58, 62, 66.8, 72, 78.6];
const TABLE: readonly (readonly [SpeedName, string, readonly number[]])[] = [
  ['VSR', 'F0', [122.0, 129.7, 137.0, 141.7, 147.1, 152.7, 159.5]],
  ['VSR', 'F35', [87.8, 93.4, 98.6, 101.9, 105.8, 109.9, 114.8]],
  ['VMM', 'F0', [156.2, 166.1, 175.4, 181.3, 188.2, 195.4, 204.2]],
  ['VMM', 'F6', [132.8, 141.2, 149.1, 154.2, 160.0, 166.1, 173.6]],
  ['VMM', 'F12', [127.2, 135.3, 142.9, 147.7, 153.3, 159.2, 166.3]],
  ['VMM', 'F18', [122.3, 130.1, 137.4, 142.0, 147.4, 153.1, 159.9]],
  ['VREF', 'F26', [112, 119, 126, 130, 135, 140, 146]],
  ['VREF', 'F35', [108, 115, 121, 125, 130, 135, 141]],
  ['V1', 'F6', [106, 112, 120, 125, 131, 137, 145]],
  ['V1', 'F12', [106, 108, 115, 120, 126, 132, 140]],
  ['V1', 'F18', [107, 108, 111, 116, 122, 128, 135]],
  ['VR', 'F6', [113, 119, 126, 130, 135, 141, 147]],
  ['VR', 'F12', [114, 114, 121, 125, 130, 136, 142]],
  ['V2', 'F12', [119, 119, 126, 130, 135, 141, 147]],
  ['V2', 'F18', [119, 119, 121, 125, 130, 135, 141]],
];

describe('speeds of the TN-182 by weight', () => {
  test.each(TABLE)('%s %s', (name, detent, expected) => {
    for (const [i, kt] of expected.entries())
      expect(Math.abs(speed(name, detent, WEIGHTS[i]!)! - kt)).toBeLessThan(0.6);
  });
  test('V1 on a wet runway', () => {
    const wet = [106, 106, 112, 117, 123, 129, 137];
    for (const [i, kt] of wet.entries()) expect(Math.abs(speed('V1', 'F6', WEIGHTS[i]!, true)! - kt)).toBeLessThan(0.6);
  });
  test('limits need no weight', () => {
    expect(speed('VFE', 'F18', 46)).toBe(195);
    expect(speed('VLO-retract', null, 46)).toBe(225);
    expect(speed('VLE', null, 46)).toBe(270);
    expect(speed('VMO', null, 46)).toBe(345);
  });
  test('what the sheet does not give is null, never a guess', () => {
    expect(speedExpression(sheet, { name: 'VFE', detent: 'F0', icing: false })).toBeNull();
    expect(speedExpression(sheet, { name: 'V2', detent: 'F35', icing: false })).toBeNull();
    expect(speedExpression(sheet, { name: 'VMM', detent: 'F40', icing: false })).toBeNull();
    expect(speedExpression(sheet, { name: 'VMM', detent: null, icing: false })).toBeNull();
    expect(speedExpression(sheet, { name: 'VAPP', detent: 'F35', icing: false })).toBeNull();
  });
  test('the icing setting adds its increment once', () => {
    const dry = speedAt(sheet, { name: 'VREF', detent: 'F35', icing: false }, { weight: 60_000 })!;
    expect(speedAt(sheet, { name: 'VREF', detent: 'F35', icing: true }, { weight: 60_000 })).toBeCloseTo(dry + 6, 9);
  });
  test('one question, one object: parts shared by two formulas are known to be the same', () => {
    const ref = { name: 'VMM', detent: 'F6', icing: false } as const;
    expect(speedExpression(sheet, ref)).toBe(speedExpression(sheet, { ...ref }));
  });
});

describe('a sheet with tables', () => {
  const other = otherSheet();
  test('is linear between its points', () => {
    expect(speedAt(other, { name: 'VSR', detent: 'NIL', icing: false }, { weight: 15_500 })).toBeCloseTo(109.5, 9);
    expect(speedAt(other, { name: 'VMM', detent: 'NIL', icing: true }, { weight: 17_000 })).toBeCloseTo(
      1.3 * 115 + 8,
      9,
    );
  });
  test('says nothing outside them', () => {
    expect(speedAt(other, { name: 'VSR', detent: 'NIL', icing: false }, { weight: 23_001 })).toBeNull();
  });
});

describe('gross climb gradients, per cent', () => {
  const at = (
    segment: Parameters<typeof segmentGradient>[1],
    detent: string,
    tonnes: number,
    elevation = 0,
    temperature = 0,
  ) => evaluate(segmentGradient(sheet, segment, detent)!, { weight: tonnes * 1000, elevation, temperature });
  test.each([
    ['second', 'F6', 78.6, 0, 0, 4.08],
    ['second', 'F12', 78.6, 0, 0, 3.35],
    ['second', 'F18', 78.6, 0, 0, 2.54],
    ['second', 'F6', 78.6, 0, 30, 2.19],
    ['second', 'F18', 78.6, 5430, 25, -0.29],
    ['final', 'F0', 78.6, 0, 0, 4.5],
    ['final', 'F0', 78.6, 5430, 25, 2.04],
    ['approach climb', 'F18', 66.8, 0, 0, 5.66],
    ['approach climb', 'F18', 66.8, 5430, 25, 2.39],
    ['approach climb', 'F18', 74, 5430, 25, 1.14],
    ['landing climb', 'F35', 66.8, 0, 0, 14.71],
    ['landing climb', 'F35', 66.8, 5430, 25, 8.55],
  ] as const)('%s %s at %d t, %d ft, ISA%d: %d', (segment, detent, tonnes, elevation, temperature, expected) => {
    expect(Math.abs(at(segment, detent, tonnes, elevation, temperature) - expected)).toBeLessThan(0.05);
  });
  test('there is none where the sheet gives no speed', () => {
    expect(segmentGradient(sheet, 'second', 'F35')).toBeNull();
    expect(segmentGradient(sheet, 'landing climb', 'F6')).toBeNull();
  });
});
