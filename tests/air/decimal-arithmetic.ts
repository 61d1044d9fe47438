// The same formulas on decimals of 40 digits: what a double ought to have come to.
import { Decimal } from 'decimal.js';
import type { Arithmetic } from '../../lib/base/arithmetic.ts';

export const Digits = Decimal.clone({ precision: 40, defaults: true });
export type Digits = Decimal;

export const decimal: Arithmetic<Decimal> = {
  of: (value) => new Digits(value),
  add: (a, b) => a.add(b),
  sub: (a, b) => a.sub(b),
  mul: (a, b) => a.mul(b),
  div: (a, b) => a.div(b),
  pow: (a, exponent) => a.pow(new Digits(exponent)),
  sqrt: (a) => a.sqrt(),
  exp: (a) => a.exp(),
  min: (a, b) => Digits.min(a, b),
  max: (a, b) => Digits.max(a, b),
};

/** Distance of a double from what it ought to be, as a share of that. */
export const error = (got: number, ought: Decimal): number =>
  ought.isZero() ? Math.abs(got) : new Digits(got).sub(ought).div(ought).abs().toNumber();
