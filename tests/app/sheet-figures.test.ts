import { describe, expect, test } from 'vitest';
import { figuresUnder, sayNumber, sayPolynomial, wordOf } from '../../app/(house)/sheets/figures.ts';
import { sheetChanges } from '../../app/(house)/sheets/sheet-changes.ts';
import { otherSheet, tn182, tn182b } from '../kit/sheets.ts';

const sheet = tn182();
const says = (part: 'limits' | 'weights' | 'thrust' | 'drag' | 'guidance', path: string) =>
  figuresUnder(sheet[part], part)
    .find((figure) => figure.path === path)
    ?.says.replaceAll(/[\u00a0\u202f]/g, ' ');

/** How many things in a part of the data name a source. */
function sources(value: unknown): number {
  if (value === null || typeof value !== 'object') return 0;
  const own = 'source' in value ? 1 : 0;
  return own + Object.values(value).reduce((sum: number, part) => sum + sources(part), 0);
}

describe('figures of a sheet as lines', () => {
  test.each(['limits', 'weights', 'thrust', 'drag', 'guidance', 'constants', 'fuel'] as const)(
    'every figure of %s that has a source has a line',
    (part) => {
      for (const one of [sheet, otherSheet()]) expect(figuresUnder(one[part], part)).toHaveLength(sources(one[part]));
    },
  );
  test('each is written with its unit', () => {
    expect(says('weights', 'weights.maximumTakeOff')).toBe('78 600 kg');
    expect(says('limits', 'limits.mmo')).toBe('M 0.81');
    expect(says('limits', 'limits.temperature')).toBe('−40 to 35 °C');
    expect(says('thrust', 'thrust.mach')).toBe('1 − 0.95 M + 0.45 M²');
    expect(says('thrust', 'thrust.climbRating')).toBe('0.8 at 0 ft, 0.93 at 25 000 ft');
    expect(says('drag', 'drag.cd0')).toBe('0.021');
    expect(says('guidance', 'guidance.routeCapture.closing')).toBe('45°');
  });
  test('names become words', () => {
    expect(wordOf('maximumAltitude')).toBe('Maximum altitude');
    expect(wordOf('vloExtend')).toBe('VLO, extending');
    const gear = figuresUnder(sheet.limits, 'limits').find((figure) => figure.path === 'limits.gear.vle');
    expect(gear?.label).toBe('Gear: VLE');
  });
  test('no place of a figure is lost', () => {
    expect(sayNumber(0.0055)).toBe('0.0055');
    expect(sayPolynomial([-1, 2])).toBe('−1 + 2 M');
  });
});

describe('two revisions', () => {
  test('the same sheet differs in nothing', () => expect(sheetChanges(sheet, tn182())).toEqual([]));
  test('a limit that moved is found by the name of its detent', () => {
    expect(sheetChanges(sheet, tn182b())).toEqual([
      { at: 'revision', was: 'A', is: 'B', more: null },
      { at: 'detents.F6.vfe.value', was: '235', is: '220', more: -15 },
    ]);
  });
  test('a detent that is gone moves no other', () => {
    const without = { ...sheet, detents: sheet.detents.filter((detent) => detent.name !== 'F6') };
    const places = sheetChanges(sheet, without).map((change) => change.at);
    expect(places.length).toBeGreaterThan(3);
    expect(places.every((at) => at.startsWith('detents.F6.'))).toBe(true);
  });
});
