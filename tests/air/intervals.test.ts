import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calibratedOfMach, equivalentOfMach, machOfCalibrated, trueOfCalibrated } from '../../lib/air/airspeed.ts';
import { densityRatio, pressureRatio, soundSpeedOf, temperatureAt } from '../../lib/air/atmosphere.ts';
import { coldTerm } from '../../lib/air/cold.ts';
import { type Arithmetic, plain } from '../../lib/base/arithmetic.ts';

type Span = readonly [least: number, most: number];

/** Bounds without outward rounding: enough to show that no formula hides a case that an interval can't decide. */
const ends = (...values: readonly number[]): Span => [Math.min(...values), Math.max(...values)];
const spans: Arithmetic<Span> = {
  of: (value) => [value, value],
  add: (a, b) => [a[0] + b[0], a[1] + b[1]],
  sub: (a, b) => [a[0] - b[1], a[1] - b[0]],
  mul: (a, b) => ends(a[0] * b[0], a[0] * b[1], a[1] * b[0], a[1] * b[1]),
  div: (a, b) => ends(a[0] / b[0], a[0] / b[1], a[1] / b[0], a[1] / b[1]),
  pow: (a, exponent) => ends(a[0] ** exponent, a[1] ** exponent),
  sqrt: (a) => [Math.sqrt(a[0]), Math.sqrt(a[1])],
  exp: (a) => [Math.exp(a[0]), Math.exp(a[1])],
  min: (a, b) => [Math.min(a[0], b[0]), Math.min(a[1], b[1])],
  max: (a, b) => [Math.max(a[0], b[0]), Math.max(a[1], b[1])],
};

const speedAt = <N>(a: Arithmetic<N>, v: N, h: N, off: N): N =>
  trueOfCalibrated(a, v, pressureRatio(a, h), soundSpeedOf(a, temperatureAt(a, h, off)));

type Formula = <N>(a: Arithmetic<N>, speed: N, height: N, off: N) => N;
const FORMULAS: readonly (readonly [string, Formula])[] = [
  ['density over all heights, through the tropopause', (a, _, h, off) => densityRatio(a, h, off)],
  ['Mach of a CAS', (a, v, h) => machOfCalibrated(a, v, pressureRatio(a, h))],
  ['TAS of a CAS', speedAt],
  ['CAS of a Mach', (a, v, h) => calibratedOfMach(a, a.div(v, a.of(340)), pressureRatio(a, h))],
  ['EAS of a Mach', (a, v, h) => equivalentOfMach(a, a.div(v, a.of(340)), pressureRatio(a, h))],
  ['cold correction', (a, v, h, off) => coldTerm(a, v, a.div(h, a.of(10)), off)],
];

const span = (min: number, max: number) =>
  fc
    .tuple(fc.double({ min, max, noNaN: true }), fc.double({ min, max, noNaN: true }))
    .map(([one, other]): Span => ends(one, other));
const within = ([least, most]: Span, share: number): number => Math.min(most, least + share * (most - least));
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('formulas on intervals', () => {
  it.each(FORMULAS)('%s: every point of the box gives a value inside', (_, formula) => {
    fc.assert(
      fc.property(span(60, 170), span(-1000, 19_000), span(-40, 40), share, share, share, (v, h, off, s, t, u) => {
        const bounds = formula(spans, v, h, off);
        const value = formula(plain, within(v, s), within(h, t), within(off, u));
        const slack = 1e-12 * Math.abs(value) + 1e-12;
        expect(value).toBeGreaterThanOrEqual(bounds[0] - slack);
        expect(value).toBeLessThanOrEqual(bounds[1] + slack);
      }),
      { numRuns: 500 },
    );
  });
});
