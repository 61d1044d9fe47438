// Expected figures are those of the oracle's output (project reference, D6), with the tolerances of its scenarios.
import { describe, expect, test } from 'vitest';
import { aircraftLimit, gearLimit, machOfSpeed, speedOfMach } from '../../lib/aircraft/mach.ts';
import { forces, ratingOf, type Setting } from '../../lib/aircraft/performance.ts';
import { plain } from '../../lib/base/arithmetic.ts';
import { evaluate, number, variable } from '../../lib/base/expression.ts';
import { bounded, point } from '../../lib/base/interval.ts';
import { compare } from '../../lib/envelope/condition.ts';
import { axis } from '../../lib/envelope/domain.ts';
import { prove } from '../../lib/envelope/prove.ts';
import { tn182 } from '../kit/sheets.ts';

const sheet = tn182();
/** kt gained each second for a unit of excess. */
const GAIN = 9.80665 / (1852 / 3600);
const THREE_DEGREES = Math.sin((3 * Math.PI) / 180);

const at = (setting: Setting, tonnes: number, speed: number, altitude = 0) =>
  forces(plain, sheet, setting, { speed, altitude, temperature: 0, weight: tonnes * 1000 });

describe('thrust and drag', () => {
  test('level, clean, idle, 62 t, 250 kt at 5 000 ft: loses 0.92 kt of indicated speed each second', () => {
    const { excess, trueSpeed } = at({ detent: 'F0', gear: 'up', rating: 'idle' }, 62, 250, 5000);
    const indicated = (250 * 1852) / 3600 / trueSpeed;
    expect(Math.abs(-excess * GAIN * indicated - 0.92)).toBeLessThan(0.01);
  });
  test.each([
    ['F0', 'up', 178, 2, -0.2],
    ['F6', 'up', 152, 7, 0.06],
    ['F12', 'up', 145, 9, 0.21],
    ['F18', 'up', 140, 12, 0.37],
    ['F18', 'down', 140, 16, 0.62],
    ['F26', 'down', 133, 20, 0.89],
    ['F35', 'down', 128, 25, 1.19],
  ] as const)(
    '3° path at 60 t and 2 000 ft, %s, gear %s, %d kt: %d per cent of take-off thrust; at idle loses %d kt/s',
    (detent, gear, speed, percent, loss) => {
      const { drag, lift, excess } = at({ detent, gear, rating: 'idle' }, 60, speed, 2000);
      const available = at({ detent, gear, rating: 'take-off' }, 60, speed, 2000).thrust;
      const needed = (drag - lift * THREE_DEGREES) / available;
      expect(Math.abs(100 * needed - percent)).toBeLessThan(0.6);
      expect(Math.abs(-(excess + THREE_DEGREES) * GAIN - loss)).toBeLessThan(0.02);
    },
  );
  test('climb thrust rises from 0.80 at sea level to 0.93 at 25 000 ft, and no further', () => {
    const rating = (altitude: number) => ratingOf(plain, sheet, 'climb', altitude);
    expect(
      [rating(-500), rating(0), rating(12_500), rating(25_000), rating(39_000)].map((share) => share.toFixed(4)),
    ).toEqual(['0.8000', '0.8000', '0.8650', '0.9300', '0.9300']);
  });
  test('the speedbrake adds its drag, an engine out its own', () => {
    const clean = { detent: 'F0', gear: 'up', rating: 'idle' } as const;
    const drag = (setting: Setting) => at(setting, 60, 250).drag;
    expect(drag({ ...clean, speedbrake: true }) / drag(clean)).toBeGreaterThan(1.5);
    expect(drag({ ...clean, enginesOut: 1 })).toBeGreaterThan(drag(clean));
    expect(() => at({ ...clean, detent: 'F7' }, 60, 250)).toThrow('no detent F7');
  });
  test('the same text on intervals contains the text on numbers', () => {
    const setting: Setting = { detent: 'F12', gear: 'down', rating: 'go-around', enginesOut: 1 };
    const found = forces(bounded, sheet, setting, {
      speed: point(150),
      altitude: point(5430),
      temperature: point(25),
      weight: point(66_800),
    });
    const plainly = forces(plain, sheet, setting, { speed: 150, altitude: 5430, temperature: 25, weight: 66_800 });
    for (const name of ['thrust', 'drag', 'mach', 'trueSpeed', 'excess'] as const) {
      expect(found[name].lo).toBeLessThanOrEqual(plainly[name]);
      expect(found[name].hi).toBeGreaterThanOrEqual(plainly[name]);
      expect(found[name].hi - found[name].lo).toBeLessThan(1e-8 * Math.abs(plainly[name]));
    }
  });
});

describe('limits as Mach numbers', () => {
  const altitude = variable('altitude');
  test('345 kt and M 0.81 meet at 24 606 ft, ±20 ft', () => {
    const slower = compare(speedOfMach(number(0.81), altitude), '>=', number(345));
    const proof = prove(slower, [axis('altitude', 0, 39_000, 'ft')], { along: 'altitude' });
    if (proof.verdict !== 'fails' || proof.from?.side !== 'above') throw new Error(JSON.stringify(proof));
    expect(Math.abs(proof.from.at - 24_606)).toBeLessThan(20);
  });
  test('the limit of the aircraft and of the gear fall away above', () => {
    const limit = (ft: number) => [aircraftLimit, gearLimit].map((one) => evaluate(one(sheet, number(ft)), {}));
    expect(limit(10_000)).toEqual([345, 270]);
    expect(limit(39_000)[0]).toBeLessThan(260);
    expect(limit(39_000)[1]).toBeLessThan(230);
  });
  test('Mach and speed undo each other', () => {
    const there = machOfSpeed(speedOfMach(number(0.78), number(35_000)), number(35_000));
    expect(evaluate(there, {})).toBeCloseTo(0.78, 12);
  });
});
