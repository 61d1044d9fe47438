import { describe, expect, test } from 'vitest';
import { bandRows, detentBands, marginSentence } from '../../app/(house)/sheets/band-figures.ts';
import {
  axes,
  BOX,
  bandPaths,
  marginPath,
  marginScale,
  speedScale,
  spread,
} from '../../app/(house)/sheets/band-shape.ts';
import { speedAt } from '../../lib/aircraft/schedule.ts';
import { otherSheet, tn182 } from '../kit/sheets.ts';

const sheet = tn182();
const bands = detentBands(sheet);

describe('bands by weight', () => {
  test('from the lightest to the heaviest weight, VMM below and the limit above', () => {
    expect(bands.map((band) => [band.detent, band.highName, band.high])).toEqual([
      ['F0', 'VMO', 345],
      ['F6', 'VFE F6', 235],
      ['F12', 'VFE F12', 210],
      ['F18', 'VFE F18', 195],
      ['F26', 'VFE F26', 178],
      ['F35', 'VFE F35', 164],
    ]);
    const points = bands[0]!.points;
    expect([points[0]!.weight, points.at(-1)!.weight]).toEqual([46_000, 78_600]);
    expect(points.at(-1)!.low).toBe(speedAt(sheet, { name: 'VMM', detent: 'F0', icing: false }, { weight: 78_600 }));
  });
  test('the table has the margin to the next detent, and the last detent none', () => {
    const rows = bandRows(sheet, bands[4]!);
    expect(rows.at(-1)!.margin).toBeCloseTo(164 - rows.at(-1)!.low!, 9);
    expect(bandRows(sheet, bands[5]!).every((row) => row.margin === null)).toBe(true);
  });
  test('the sentence is proven, and names the weight where it begins to fail', () => {
    expect(marginSentence(sheet, bands[4]!, 20)).toMatch(/^VFE F35 less VMM F26 is below 20 kt above \d\d\.\d t$/);
    expect(marginSentence(sheet, bands[4]!, 1)).toBe('VFE F35 less VMM F26 is not below 1 kt everywhere');
    expect(marginSentence(sheet, bands[5]!, 20)).toBe('');
  });
});

describe('shapes', () => {
  const speeds = speedScale(bands);
  const on = axes(bands[0]!.points, speeds);
  const numbers = (path: string) => [...path.matchAll(/-?\d+(?:\.\d+)?/g)].map(Number);
  test('one scale holds every lowest speed and every limit of a flap', () => {
    expect(speeds.from).toBeLessThan(Math.min(...bands.map((band) => band.points[0]!.low!)));
    expect(speeds.to).toBeGreaterThanOrEqual(235);
  });
  test('every path lies inside the frame', () => {
    for (const band of bands) {
      const { band: whole, next, low } = bandPaths(band, on);
      for (const path of [whole, next, low, marginPath(band, axes(band.points, marginScale(bands, 20)))]) {
        const at = numbers(path);
        at.filter((_, i) => i % 2 === 0).forEach((x) => {
          expect(x).toBeGreaterThanOrEqual(BOX.left);
          expect(x).toBeLessThanOrEqual(BOX.width - BOX.right);
        });
        at.filter((_, i) => i % 2 === 1).forEach((y) => {
          expect(y).toBeGreaterThanOrEqual(BOX.top);
          expect(y).toBeLessThanOrEqual(BOX.height - BOX.bottom);
        });
      }
    }
  });
  test('names of lines are moved apart, in their order, and left alone where there is room', () => {
    expect(spread([10, 50, 90], 13)).toEqual([10, 50, 90]);
    const names = spread([40, 41, 44, 90], 13);
    expect(names[1]! - names[0]!).toBeGreaterThanOrEqual(12);
    expect(names[2]! - names[1]!).toBeGreaterThanOrEqual(12);
    expect(names[3]).toBe(90);
  });
  test('the last detent has no part for a next one', () => expect(bandPaths(bands[5]!, on).next).toBe(''));
  test('a sheet of tables is drawn as one of formulas', () => {
    const others = detentBands(otherSheet());
    const path = bandPaths(others[0]!, axes(others[0]!.points, speedScale(others))).band;
    expect(numbers(path).length).toBeGreaterThan(60);
    expect(path).not.toContain('NaN');
  });
});
