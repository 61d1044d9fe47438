import Decimal from 'decimal.js';
import { describe, expect, test } from 'vitest';
import {
  addDown,
  addUp,
  divDown,
  divUp,
  expDown,
  expUp,
  mulDown,
  mulUp,
  over,
  powDown,
  power,
  powUp,
  productDown,
  productUp,
  root,
  sqrtDown,
  sqrtUp,
  times,
} from '../../lib/base/interval.ts';
import { chance } from '../kit/questions.ts';

const Deep = Decimal.clone({ precision: 150, toExpNeg: -400, toExpPos: 400 });
/** All digits of a double: decimal.js reads a number by its shortest text. */
const exact = (value: number) => {
  const exponent = Math.floor(Math.log2(Math.abs(value) || 1)) - 52;
  return new Deep(BigInt(Math.round(value / 2 ** exponent)).toString()).mul(new Deep(2).pow(exponent));
};
const next = chance(42);
const signed = () => (next() - 0.5) * 10 ** Math.floor(next() * 12 - 4);
const positive = () => Math.abs(signed()) + 1e-6;
const inside = (lo: number, value: Decimal, hi: number) => exact(lo).lte(value) && value.lte(exact(hi));
const ROUNDS = 2_000;

describe('outward rounding against 150 digits', () => {
  test.each([
    ['sum', signed, signed, addDown, addUp, (a: Decimal, b: Decimal) => a.add(b)],
    ['product', signed, signed, mulDown, mulUp, (a: Decimal, b: Decimal) => a.mul(b)],
    ['quotient', signed, positive, divDown, divUp, (a: Decimal, b: Decimal) => a.div(b)],
    ['quotient by a negative', signed, () => -positive(), divDown, divUp, (a: Decimal, b: Decimal) => a.div(b)],
  ])('%s', (_, first, second, down, up, deed) => {
    const wrong: unknown[] = [];
    for (let i = 0; i < ROUNDS; i++) {
      const a = first();
      const b = second();
      if (!inside(down(a, b), deed(exact(a), exact(b)), up(a, b))) wrong.push({ a, b });
    }
    expect(wrong).toEqual([]);
  });
  test('root, power and exponential', () => {
    let wrong = 0;
    for (let i = 0; i < ROUNDS; i++) {
      const a = positive();
      const e = next() * 6 - 3;
      if (!inside(sqrtDown(a), exact(a).sqrt(), sqrtUp(a))) wrong++;
      if (i < 200 && !inside(powDown(a, e), exact(a).pow(exact(e)), powUp(a, e))) wrong++;
      if (i < 200 && !inside(expDown(e * 5), exact(e * 5).exp(), expUp(e * 5))) wrong++;
    }
    expect(wrong).toBe(0);
  });
  test('what is exact stays exact', () => {
    expect([addDown(210, -5), addUp(210, -5)]).toEqual([205, 205]);
    expect([mulDown(1.5, 7), mulUp(1.5, 7)]).toEqual([10.5, 10.5]);
    expect([divDown(9, 4), divUp(9, 4)]).toEqual([2.25, 2.25]);
    expect([sqrtDown(144), sqrtUp(144)]).toEqual([12, 12]);
    expect(power({ lo: -3, hi: 2 }, 2)).toEqual({ lo: 0, hi: 9 });
    expect(power({ lo: -3, hi: 2 }, 3)).toEqual({ lo: -27, hi: 8 });
  });
  test('what is not exact is caught between neighbours', () => {
    expect(addDown(0.1, 0.2)).toBeLessThan(addUp(0.1, 0.2));
    expect(divUp(1, 3) - divDown(1, 3)).toBeLessThan(1e-15);
  });
});

describe('products of intervals', () => {
  test('by signs are those of all four corners', () => {
    const ends = [-3, -1, 0, 0.5, 2];
    for (const alo of ends)
      for (const ahi of ends)
        for (const blo of ends)
          for (const bhi of ends) {
            if (alo > ahi || blo > bhi) continue;
            const corners = [alo * blo, alo * bhi, ahi * blo, ahi * bhi];
            expect(productDown(alo, ahi, blo, bhi) + 0).toBe(Math.min(...corners) + 0);
            expect(productUp(alo, ahi, blo, bhi) + 0).toBe(Math.max(...corners) + 0);
          }
  });
});

describe('edges', () => {
  test('infinities and overflow stay safe', () => {
    expect(addUp(1e308, 1e308)).toBe(Infinity);
    expect(addDown(1e308, 1e308)).toBe(Number.MAX_VALUE);
    expect(mulDown(0, Infinity)).toBe(0);
    expect(times({ lo: 0, hi: 0 }, { lo: -Infinity, hi: Infinity })).toEqual({ lo: 0, hi: -0 });
    expect(over({ lo: 1, hi: 1 }, { lo: -1, hi: 1 })).toEqual({ lo: -Infinity, hi: Infinity });
    expect(root({ lo: -1, hi: 4 })).toEqual({ lo: -Infinity, hi: Infinity });
  });
});
