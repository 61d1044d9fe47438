// Expected figures are those of the oracle's output (project reference, D6), with the tolerances of its scenarios.
import { describe, expect, test } from 'vitest';
import { segmentGradient } from '../../lib/aircraft/climb.ts';
import { speedExpression } from '../../lib/aircraft/schedule.ts';
import { add, type Expression, mul, number, sub, table1, variable } from '../../lib/base/expression.ts';
import { type Compare, type Condition, compare } from '../../lib/envelope/condition.ts';
import { axis, domainOf, pinned } from '../../lib/envelope/domain.ts';
import { explain } from '../../lib/envelope/explain.ts';
import { extentOf, prove } from '../../lib/envelope/prove.ts';
import type { Comparison, SpeedName } from '../../lib/gate/syntax.ts';
import { tn182, tn182b } from '../kit/sheets.ts';

const sheet = tn182();
const domain = domainOf(sheet);
const speed = (name: SpeedName, detent: string, of = sheet): Expression =>
  speedExpression(of, { name, detent, icing: false })!;
const ask = (
  left: Expression,
  op: Comparison,
  right: Expression,
  names: readonly [string, string] = ['', ''],
): Compare => ({
  ...compare(left, op, right),
  leftName: names[0],
  rightName: names[1],
  unit: 'kt',
});

/** Where a failing condition begins to fail, in tonnes. */
function failsFrom(condition: Condition, over = domain): { side: string; tonnes: number; worst: number } {
  const proof = prove(condition, over);
  if (proof.verdict !== 'fails' || !proof.from || proof.from.side === 'always') throw new Error(JSON.stringify(proof));
  return { side: proof.from.side, tonnes: proof.from.at / 1000, worst: proof.worst };
}

describe('speeds by weight', () => {
  test('VMM F0 exceeds 180 kt above 61.1 t', () => {
    const question = ask(speed('VMM', 'F0'), '<=', number(180), ['VMM F0', '180 kt']);
    const proof = prove(question, domain);
    expect(explain(question, proof)).toBe('VMM F0 exceeds 180 kt above 61.1 t');
    expect(proof).toMatchObject({ verdict: 'fails', witness: { weight: 78_600 } });
  });
  test('and holds below it', () => {
    const lighter = domainOf(sheet, { weight: { from: 46_000, to: 61_000 } });
    const question = ask(speed('VMM', 'F0'), '<=', number(180), ['VMM F0', '180 kt']);
    const proof = prove(question, lighter);
    expect(proof.verdict).toBe('holds');
    expect(explain(question, proof)).toBe('VMM F0 does not exceed 180 kt everywhere');
  });

  const band = (next: string, present: string, of = sheet) => sub(speed('VFE', next, of), speed('VMM', present, of));
  test.each([
    ['F26', 'F18', 76.7, 18.1],
    ['F35', 'F26', 70.2, 11.6],
  ])('a band of 20 kt fails to %s from %s above %d t, %d kt at the heaviest', (next, present, tonnes, narrowest) => {
    const found = failsFrom(ask(band(next, present), '>=', number(20)));
    expect(found.side).toBe('above');
    expect(Math.abs(found.tonnes - tonnes)).toBeLessThan(0.2);
    expect(Math.abs(20 + found.worst - narrowest)).toBeLessThan(0.1);
  });
  test('the other bands never fail', () => {
    for (const [next, present] of [
      ['F6', 'F0'],
      ['F12', 'F6'],
      ['F18', 'F12'],
    ] as const) {
      expect(prove(ask(band(next, present), '>=', number(20)), domain).verdict).toBe('holds');
    }
  });
  test('sheet B: F6 to F0 fails above 75.4 t, 15.8 kt at 78.6 t; "below 230" fails at every weight', () => {
    const b = tn182b();
    const found = failsFrom(ask(band('F6', 'F0', b), '>=', number(20)));
    expect(Math.abs(found.tonnes - 75.4)).toBeLessThan(0.2);
    expect(Math.abs(20 + found.worst - 15.8)).toBeLessThan(0.1);
    const limit = sub(speed('VFE', 'F6', b), number(5));
    const at230 = prove(ask(add(number(230), mul(number(0), variable('weight'))), '<=', limit), domain);
    expect(at230).toMatchObject({ verdict: 'fails', worst: -15, from: { side: 'always' } });
  });
  test('VREF F35 + 20 clears VFE by 5 kt up to 76.2 t; F26 always', () => {
    const limit = (detent: string) => sub(speed('VFE', detent), number(5));
    const found = failsFrom(ask(add(speed('VREF', 'F35'), number(20)), '<=', limit('F35')));
    expect(Math.abs(found.tonnes - 76.2)).toBeLessThan(0.2);
    expect(prove(ask(add(speed('VREF', 'F26'), number(20)), '<=', limit('F26')), domain).verdict).toBe('holds');
  });
  test('V2 + 15 lies below VMM of the take-off detent above 46.7, 50.9 and 55.0 t', () => {
    for (const [detent, tonnes] of [
      ['F6', 46.7],
      ['F12', 50.9],
      ['F18', 55.0],
    ] as const) {
      const found = failsFrom(ask(add(speed('V2', detent), number(15)), '>=', speed('VMM', detent)));
      expect(Math.abs(found.tonnes - tonnes)).toBeLessThan(0.2);
    }
  });
});

describe('edges that touch', () => {
  test('equal figures hold where equality is enough, and fail where it is not', () => {
    const limit = sub(number(210), number(5));
    expect(prove(compare(number(205), '<=', limit), domain).verdict).toBe('holds');
    expect(prove(compare(number(205), '<', limit), domain).verdict).toBe('fails');
    expect(prove(compare(number(205), '=', limit), domain).verdict).toBe('holds');
  });
  test('a formula is never below itself, however it is written', () => {
    const vmm = speed('VMM', 'F12');
    expect(prove(compare(vmm, '>=', speed('VMM', 'F12')), domain).verdict).toBe('holds');
    expect(prove(compare(add(vmm, number(5)), '>', add(number(4), vmm)), domain).verdict).toBe('holds');
    expect(prove(compare(speed('V2', 'F12'), '>=', mul(number(1.13), speed('VSR', 'F12'))), domain).verdict).toBe(
      'holds',
    );
  });
  test('not, and, or', () => {
    const over = compare(speed('VMM', 'F0'), '>', number(180));
    expect(prove({ kind: 'not', of: over }, domain)).toMatchObject({ verdict: 'fails', from: { side: 'above' } });
    expect(prove({ kind: 'any', of: [over, { kind: 'not', of: over }] }, domain).verdict).toBe('undecided');
    expect(
      prove(
        {
          kind: 'all',
          of: [compare(speed('VMM', 'F0'), '>', number(156)), compare(speed('VMM', 'F0'), '<', number(205))],
        },
        domain,
      ).verdict,
    ).toBe('holds');
  });
});

describe('the worst case need not stand at an end', () => {
  const w = variable('weight');
  const valley = add(number(900), mul(number(2e-6), mul(sub(w, number(58_000)), sub(w, number(58_000)))));
  test('a valley in the middle is found', () => {
    const proof = prove(compare(valley, '>=', number(1_000)), domain);
    if (proof.verdict !== 'fails' || proof.from?.side !== 'within') throw new Error(JSON.stringify(proof));
    expect(proof.witness.weight).toBeCloseTo(58_000, -2);
    expect(proof.worst).toBeCloseTo(-100, 1);
    expect(proof.from.at / 1000).toBeCloseTo(58 - 7.071, 1);
    expect(proof.from.to / 1000).toBeCloseTo(58 + 7.071, 1);
  });
  test('a valley between the points of a table is exact', () => {
    const table = table1(w, [46_000, 57_300, 78_600], [1_089, 899, 1_150]);
    expect(prove(compare(table, '>=', number(900)), domain)).toMatchObject({
      verdict: 'fails',
      worst: -1,
      witness: { weight: 57_300 },
      from: { side: 'within' },
    });
    expect(prove(compare(table, '>=', number(899)), domain).verdict).toBe('holds');
  });
  test('least and greatest over a domain', () => {
    const found = extentOf(valley, domain)!;
    expect(found.least.value).toBeCloseTo(900, 2);
    expect(found.greatest).toMatchObject({ at: { weight: 78_600 } });
  });
});

describe('climb gradients over weight, elevation and temperature', () => {
  const hot = (elevation: number, temperature: number) =>
    pinned(pinned(domain, 'elevation', elevation), 'temperature', temperature);
  test.each([
    ['second', 'F6', 2.4, 0, 30, 77.2],
    ['second', 'F12', 2.4, 0, 30, 72.7],
    ['second', 'F18', 2.4, 0, 30, 68.4],
    ['second', 'F6', 2.4, 5430, 25, 71.4],
    ['second', 'F12', 2.4, 5430, 25, 67.3],
    ['second', 'F18', 2.4, 5430, 25, 63.3],
    ['approach climb', 'F18', 2.5, 5430, 25, 66.2],
    ['approach climb', 'F18', 3.0, 5430, 25, 63.7],
  ] as const)('%s %s %d %% at %d ft, ISA+%d: up to %d t', (segment, detent, least, elevation, temperature, tonnes) => {
    const question = compare(segmentGradient(sheet, segment, detent)!, '>=', number(least));
    const found = failsFrom(question, hot(elevation, temperature));
    expect(found.side).toBe('above');
    expect(Math.abs(found.tonnes - tonnes)).toBeLessThan(0.2);
  });
  test('in all of the envelope F6 keeps 0.1 % and no more than 0.2 %', () => {
    const second = segmentGradient(sheet, 'second', 'F6')!;
    expect(prove(compare(second, '>=', number(0.1)), domain).verdict).toBe('holds');
    expect(prove(compare(second, '>=', number(0.2)), domain)).toMatchObject({
      verdict: 'fails',
      witness: { weight: 78_600, elevation: 5_430, temperature: 35 },
    });
  });
});

describe('what can not be answered is never called true', () => {
  test('a table that ends inside the domain', () => {
    const short = table1(variable('weight'), [46_000, 70_000], [100, 120], 'weight');
    expect(prove(compare(short, '>=', number(90)), domain)).toMatchObject({
      verdict: 'undecided',
      because: 'the table by weight says nothing outside 46000 to 70000',
    });
    expect(prove(compare(short, '>=', number(110)), domain).verdict).toBe('fails');
  });
  test('a division by zero, a root of a negative', () => {
    const around = [axis('x', -1, 1)];
    const inverse: Expression = { kind: 'div', left: number(1), right: variable('x') };
    expect(prove(compare(mul(inverse, inverse), '>', number(0)), around).verdict).toBe('undecided');
    const root: Expression = { kind: 'sqrt', of: variable('x') };
    expect(prove(compare(root, '>=', number(0)), around).verdict).toBe('undecided');
  });
  test('a variable that the domain lacks is a mistake of the caller', () => {
    expect(() => prove(compare(variable('gust'), '<', number(1)), domain)).toThrow('the domain says nothing of gust');
    expect(() => axis('weight', 2, 1)).toThrow();
  });
});
