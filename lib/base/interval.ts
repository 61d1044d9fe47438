/**
 * Intervals that surely hold the true value. Sums, products, quotients and roots are rounded outward only where the
 * result isn't exact, so that 210 - 5 is 205 and nothing else; `exp` and broken powers, which differ between engines in
 * their last bits, are widened by several of them.
 *
 * The error-free sum and product are the classical ones of Knuth, Dekker and Veltkamp (from memory; tested at 40 digits).
 */
import type { Arithmetic } from './arithmetic.ts';

export type Interval = { readonly lo: number; readonly hi: number };

const UNIT = 2 ** -53 * (1 + 2 ** -52);
const TINY = 2 ** -1074;
const SPLIT = 2 ** 27 + 1;
/** Within these the error of a product can be told exactly. */
const SMALL = 1e-270;
const LARGE = 1e290;
/** Engines promise no more of `exp` and `pow`; eight units in the last place are ample. */
const LOOSE = 8 * 2 ** -52;

/** A double below `x`: the next one, or rarely the one after it. */
export const below = (x: number): number => (x === Infinity ? Number.MAX_VALUE : x - (Math.abs(x) * UNIT + TINY));
export const above = (x: number): number => (x === -Infinity ? -Number.MAX_VALUE : x + (Math.abs(x) * UNIT + TINY));

/** Sign of the true sum less its double. Finite operands and result. */
function errorOfSum(a: number, b: number, sum: number): number {
  const part = sum - a;
  return a - (sum - part) + (b - part);
}

/** True product less its double; NaN where that can't be told. */
function errorOfProduct(a: number, b: number, product: number): number {
  const size = Math.abs(product);
  if (!(size > SMALL && size < LARGE && Math.abs(a) < LARGE && Math.abs(b) < LARGE))
    return product === 0 && (a === 0 || b === 0) ? 0 : Number.NaN;
  const ca = SPLIT * a;
  const ah = ca - (ca - a);
  const al = a - ah;
  const cb = SPLIT * b;
  const bh = cb - (cb - b);
  const bl = b - bh;
  return al * bl - (product - ah * bh - al * bh - ah * bl);
}

export function addDown(a: number, b: number): number {
  const sum = a + b;
  if (Number.isFinite(sum)) return errorOfSum(a, b, sum) < 0 ? below(sum) : sum;
  if (sum !== Infinity) return -Infinity;
  return a === Infinity || b === Infinity ? Infinity : Number.MAX_VALUE;
}

export function addUp(a: number, b: number): number {
  return -addDown(-a, -b);
}

export function mulDown(a: number, b: number): number {
  if (a === 0 || b === 0) return 0;
  const product = a * b;
  if (product === Infinity) return Number.isFinite(a) && Number.isFinite(b) ? Number.MAX_VALUE : Infinity;
  if (product === -Infinity) return product;
  return errorOfProduct(a, b, product) >= 0 ? product : below(product);
}

export const mulUp = (a: number, b: number): number => -mulDown(-a, b);

/** `b` is not zero. */
export function divDown(a: number, b: number): number {
  if (a === 0) return 0;
  const quotient = a / b;
  if (quotient === Infinity) return Number.isFinite(a) ? Number.MAX_VALUE : Infinity;
  if (!Number.isFinite(quotient)) return -Infinity;
  const back = quotient * b;
  const error = errorOfProduct(quotient, b, back);
  const rest = a - back - error;
  // A quotient is exact, too small or too large by the sign of what is left of the dividend.
  const sure = rest === 0 || (b > 0 ? rest > 0 : rest < 0);
  return sure ? quotient : below(quotient);
}

export const divUp = (a: number, b: number): number => -divDown(-a, b);

export function sqrtDown(a: number): number {
  const root = Math.sqrt(a);
  const error = errorOfProduct(root, root, root * root);
  const rest = a - root * root - error;
  return rest >= 0 ? root : Math.max(0, below(root));
}

export function sqrtUp(a: number): number {
  const root = Math.sqrt(a);
  const error = errorOfProduct(root, root, root * root);
  const rest = a - root * root - error;
  return rest <= 0 ? root : above(root);
}

const looseDown = (x: number): number =>
  Number.isFinite(x) ? x - Math.abs(x) * LOOSE - TINY : x === Infinity ? Number.MAX_VALUE : x;
const looseUp = (x: number): number => -looseDown(-x);

export const expDown = (a: number): number => Math.max(0, looseDown(Math.exp(a)));
export const expUp = (a: number): number => (a === -Infinity ? 0 : looseUp(Math.exp(a)));
/** `a` is not negative. */
export const powDown = (a: number, exponent: number): number => (a === 1 ? 1 : Math.max(0, looseDown(a ** exponent)));
export const powUp = (a: number, exponent: number): number => (a === 1 ? 1 : looseUp(a ** exponent));

export const point = (value: number): Interval => ({ lo: value, hi: value });
/** Anything at all: what is known of a value that isn't defined everywhere. */
export const anything: Interval = { lo: -Infinity, hi: Infinity };
export const hull = (a: Interval, b: Interval): Interval => ({ lo: Math.min(a.lo, b.lo), hi: Math.max(a.hi, b.hi) });
export const plus = (a: Interval, b: Interval): Interval => ({ lo: addDown(a.lo, b.lo), hi: addUp(a.hi, b.hi) });
export const minus = (a: Interval, b: Interval): Interval => ({ lo: addDown(a.lo, -b.hi), hi: addUp(a.hi, -b.lo) });

export const times = (a: Interval, b: Interval): Interval => ({
  lo: productDown(a.lo, a.hi, b.lo, b.hi),
  hi: productUp(a.lo, a.hi, b.lo, b.hi),
});

/** Lower end of the product of two intervals, by the signs of their ends. */
export function productDown(alo: number, ahi: number, blo: number, bhi: number): number {
  if (alo >= 0) return blo >= 0 ? mulDown(alo, blo) : mulDown(ahi, blo);
  if (ahi <= 0) return bhi >= 0 ? mulDown(alo, bhi) : mulDown(ahi, bhi);
  if (blo >= 0) return mulDown(alo, bhi);
  return bhi <= 0 ? mulDown(ahi, blo) : Math.min(mulDown(alo, bhi), mulDown(ahi, blo));
}

/** Upper end of the product: the negative of the lower end with one side turned round. */
export const productUp = (alo: number, ahi: number, blo: number, bhi: number): number =>
  -productDown(-ahi, -alo, blo, bhi);

/** `anything` where the divisor may be zero. */
export function over(a: Interval, b: Interval): Interval {
  if (b.lo <= 0 && b.hi >= 0) return anything;
  return {
    lo: Math.min(divDown(a.lo, b.lo), divDown(a.lo, b.hi), divDown(a.hi, b.lo), divDown(a.hi, b.hi)),
    hi: Math.max(divUp(a.lo, b.lo), divUp(a.lo, b.hi), divUp(a.hi, b.lo), divUp(a.hi, b.hi)),
  };
}

/** `anything` where the root may not exist. */
export const root = (a: Interval): Interval => (a.lo < 0 ? anything : { lo: sqrtDown(a.lo), hi: sqrtUp(a.hi) });
export const exponential = (a: Interval): Interval => ({ lo: expDown(a.lo), hi: expUp(a.hi) });

/** Whole exponents up to this are multiplied out, and stay exact where they can. */
const MULTIPLIED = 8;

/** Constant exponent. `anything` where the power may not exist: a broken power of a negative, a division by zero. */
export function power(a: Interval, exponent: number): Interval {
  if (exponent === 0) return point(1);
  if (exponent < 0) return over(point(1), power(a, -exponent));
  if (Number.isInteger(exponent)) return wholePower(a, exponent);
  if (a.lo < 0) return anything;
  return { lo: powDown(a.lo, exponent), hi: powUp(a.hi, exponent) };
}

function wholePower(a: Interval, exponent: number): Interval {
  if (exponent % 2 === 0 && a.lo < 0) {
    const size = a.hi <= 0 ? { lo: -a.hi, hi: -a.lo } : { lo: 0, hi: Math.max(-a.lo, a.hi) };
    return wholePower(size, exponent);
  }
  if (exponent > MULTIPLIED) {
    if (a.lo < 0)
      return { lo: -powUp(-a.lo, exponent), hi: a.hi < 0 ? -powDown(-a.hi, exponent) : powUp(a.hi, exponent) };
    return { lo: powDown(a.lo, exponent), hi: powUp(a.hi, exponent) };
  }
  const end = (base: number, product: (x: number, y: number) => number): number => {
    let value = base;
    for (let i = 1; i < exponent; i++) value = product(value, base);
    return value;
  };
  if (a.lo >= 0) return { lo: end(a.lo, mulDown), hi: end(a.hi, mulUp) };
  // An odd power of a negative end is the negative of the power of its size.
  return { lo: -end(-a.lo, mulUp), hi: a.hi >= 0 ? end(a.hi, mulUp) : -end(-a.hi, mulDown) };
}

/** Laws written over `Arithmetic`, computed with bounds. */
export const bounded: Arithmetic<Interval> = {
  of: point,
  add: plus,
  sub: minus,
  mul: times,
  div: over,
  pow: power,
  sqrt: root,
  exp: exponential,
  min: (a, b) => ({ lo: Math.min(a.lo, b.lo), hi: Math.min(a.hi, b.hi) }),
  max: (a, b) => ({ lo: Math.max(a.lo, b.lo), hi: Math.max(a.hi, b.hi) }),
};
