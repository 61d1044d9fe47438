import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  calibratedOfMach,
  equivalentOfMach,
  impactRatio,
  machOfCalibrated,
  machOfRatio,
  trueOfCalibrated,
} from '../../lib/air/airspeed.ts';
import {
  densityOf,
  densityRatio,
  pressureAt,
  pressureRatio,
  soundSpeedOf,
  standardTemperature,
  temperatureAt,
} from '../../lib/air/atmosphere.ts';
import { coldTerm } from '../../lib/air/cold.ts';
import { ramFactor } from '../../lib/air/total-temperature.ts';
import { type Arithmetic, plain } from '../../lib/base/arithmetic.ts';
import { decimal, error } from './decimal-arithmetic.ts';

type Given = fc.Arbitrary<number>;
/** At most three are given; those left out are nil. */
type Formula = <N>(a: Arithmetic<N>, x: N, y: N, z: N) => N;

const height = fc.double({ min: -5004, max: 20_000, noNaN: true });
const off = fc.double({ min: -60, max: 60, noNaN: true });
const m = fc.double({ min: 0.1, max: 1, noNaN: true });
const delta = fc.double({ min: 0.05, max: 1.1, noNaN: true });
const speed = fc.double({ min: 40, max: 190, noNaN: true });
const kelvins = fc.double({ min: 150, max: 350, noNaN: true });
const pascals = fc.double({ min: 5000, max: 110_000, noNaN: true });
const above = fc.double({ min: 100, max: 14_000, noNaN: true });
const elevation = fc.double({ min: 0, max: 5000, noNaN: true });
const frost = fc.double({ min: -60, max: 0, noNaN: true });

const nil = fc.constant(0);

/** Formula, what it is given, and the share of error allowed: a few last bits times how ill the formula is conditioned. */
const FORMULAS: readonly (readonly [string, Formula, readonly [Given, Given?, Given?], number])[] = [
  ['standardTemperature', (a, h) => standardTemperature(a, h), [height], 4e-16],
  ['pressureRatio', (a, h) => pressureRatio(a, h), [height], 4e-15],
  ['pressureAt', (a, h) => pressureAt(a, h), [height], 4e-15],
  ['temperatureAt', (a, h, d) => temperatureAt(a, h, d), [height, off], 8e-16],
  ['densityOf', (a, p, t) => densityOf(a, p, t), [pascals, kelvins], 4e-16],
  ['densityRatio', (a, h, d) => densityRatio(a, h, d), [height, off], 5e-15],
  ['soundSpeedOf', (a, t) => soundSpeedOf(a, t), [kelvins], 5e-16],
  ['impactRatio', (a, n) => impactRatio(a, n), [m], 1e-13],
  ['machOfRatio', (a, r) => machOfRatio(a, r), [m], 1e-14],
  ['machOfCalibrated', (a, v, d) => machOfCalibrated(a, v, d), [speed, delta], 1e-13],
  ['calibratedOfMach', (a, n, d) => calibratedOfMach(a, n, d), [m, delta], 2e-12],
  ['equivalentOfMach', (a, n, d) => equivalentOfMach(a, n, d), [m, delta], 1e-15],
  ['trueOfCalibrated', (a, v, d, s) => trueOfCalibrated(a, v, d, s), [speed, delta, speed], 1e-13],
  ['coldTerm', (a, h, e, t) => coldTerm(a, h, e, t), [above, elevation, frost], 1e-14],
  ['ramFactor', (a, n) => ramFactor(a, n, 0.95), [m], 8e-16],
];

describe('formulas against 40 digits', () => {
  it.each(FORMULAS)('%s', (_, formula, [first, second = nil, third = nil], most) => {
    fc.assert(
      fc.property(first, second, third, (x, y, z) => {
        const got = formula(plain, x, y, z);
        const ought = formula(decimal, decimal.of(x), decimal.of(y), decimal.of(z));
        expect(error(got, ought), `${got} against ${ought}`).toBeLessThanOrEqual(most);
      }),
      { numRuns: 300 },
    );
  });
});
