/**
 * The deeds a formula may ask of its numbers. A formula written over this runs on plain numbers, and on any other kind
 * of number (an interval, a decimal of 40 digits) that knows the same deeds, so that what is flown, what is proven and
 * what is checked is one text.
 *
 * No comparison is offered: a question with one answer for a number has two for an interval. Say it with `min` and `max`.
 */
export interface Arithmetic<N> {
  /** A constant of the formula. */
  of(value: number): N;
  add(a: N, b: N): N;
  sub(a: N, b: N): N;
  mul(a: N, b: N): N;
  div(a: N, b: N): N;
  /** `a` to a constant real exponent; `a` is not negative unless the exponent is whole. */
  pow(a: N, exponent: number): N;
  sqrt(a: N): N;
  exp(a: N): N;
  min(a: N, b: N): N;
  max(a: N, b: N): N;
}

export const plain: Arithmetic<number> = {
  of: (value) => value,
  add: (a, b) => a + b,
  sub: (a, b) => a - b,
  mul: (a, b) => a * b,
  div: (a, b) => a / b,
  pow: (a, exponent) => a ** exponent,
  sqrt: Math.sqrt,
  exp: Math.exp,
  min: Math.min,
  max: Math.max,
};
