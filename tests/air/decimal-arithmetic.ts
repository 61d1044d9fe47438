// The same formulas on decimals of 40 digits: what a double ought to have come to.
import { Decimal } from 'decimal.js';
import type { Arithmetic } from '../../lib/base/arithmetic.ts';

export const Digits = Decimal.clone({ precision: 40, defaults: true });
export type Digits = Decimal;

/** All digits of a double. The library reads a number by its shortest text, which is another by half a last bit. */
export function exact(value: number): Decimal {
  const places = Math.max(0, 53 - Math.floor(Math.log2(Math.abs(value))));
  const whole = value * 2 ** places;
  if (!Number.isFinite(whole) || !Number.isInteger(whole)) return new Digits(value);
  return new Digits(whole).div(new Digits(2).pow(places));
}

export const decimal: Arithmetic<Decimal> = {
  of: exact,
  add: (a, b) => a.add(b),
  sub: (a, b) => a.sub(b),
  mul: (a, b) => a.mul(b),
  div: (a, b) => a.div(b),
  pow: (a, exponent) => a.pow(exact(exponent)),
  sqrt: (a) => a.sqrt(),
  exp: (a) => a.exp(),
  min: (a, b) => Digits.min(a, b),
  max: (a, b) => Digits.max(a, b),
};

/** Distance of a double from what it ought to be, as a share of that. */
export const error = (got: number, ought: Decimal): number =>
  ought.isZero() ? Math.abs(got) : exact(got).sub(ought).div(ought).abs().toNumber();
