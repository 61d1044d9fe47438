// Expected figures are those of the oracle's output (project reference, D6), to 1 %: its scenarios give rates no tolerance.
import { describe, expect, test } from 'vitest';
import { climbRateExpression } from '../../lib/aircraft/climb.ts';
import { speedOfMach } from '../../lib/aircraft/mach.ts';
import { type Expression, evaluate, number, variable } from '../../lib/base/expression.ts';
import { compare } from '../../lib/envelope/condition.ts';
import { axis } from '../../lib/envelope/domain.ts';
import { prove } from '../../lib/envelope/prove.ts';
import { tn182 } from '../kit/sheets.ts';

const sheet = tn182();
const rate = (speed: Expression) => climbRateExpression(sheet, { detent: 'F0', gear: 'up', rating: 'climb' }, speed);
const atMach = speedOfMach(number(0.77), variable('elevation'));

describe('rate of climb, all engines, climb thrust, standard day, ft/min', () => {
  test.each([
    [50, 5_000, 250, 4_881],
    [62, 5_000, 250, 3_762],
    [62, 10_000, 290, 3_256],
    [62, 20_000, 290, 2_297],
    [78.6, 10_000, 290, 2_344],
    [78.6, 20_000, 290, 1_544],
  ])('%d t at %d ft and %d kt: %d', (tonnes, elevation, kt, expected) => {
    const found = evaluate(rate(number(kt)), { weight: tonnes * 1000, elevation, temperature: 0 });
    expect(Math.abs(found / expected - 1)).toBeLessThan(0.01);
  });
  test.each([
    [62, 30_000, 1_048],
    [62, 35_000, 823],
    [78.6, 35_000, 247],
    [78.6, 39_000, -69],
  ])('%d t at %d ft and M 0.77: %d', (tonnes, elevation, expected) => {
    const found = evaluate(rate(atMach), { weight: tonnes * 1000, elevation, temperature: 0 });
    expect(Math.abs(found - expected)).toBeLessThan(10);
  });
  test('the level up to which 300 ft/min are left is proven, not stepped to', () => {
    const domain = [
      axis('weight', 78_600, 78_600, 'kg'),
      axis('elevation', 28_000, 39_000, 'ft'),
      axis('temperature', 0, 0, '°C'),
    ];
    const proof = prove(compare(rate(atMach), '>=', number(300)), domain, { along: 'elevation' });
    if (proof.verdict !== 'fails' || proof.from?.side !== 'above') throw new Error(JSON.stringify(proof));
    // 501 ft/min at 30 000 ft, 247 at 35 000 ft.
    expect(proof.from.at).toBeGreaterThan(30_000);
    expect(proof.from.at).toBeLessThan(35_000);
    const there = evaluate(rate(atMach), { weight: 78_600, elevation: proof.from.at, temperature: 0 });
    expect(there).toBeCloseTo(300, 1);
  });
});
