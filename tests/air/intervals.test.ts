import type { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calibratedOfMach, equivalentOfMach, machOfCalibrated, trueOfCalibrated } from '../../lib/air/airspeed.ts';
import { densityRatio, pressureRatio, soundSpeedOf, temperatureAt } from '../../lib/air/atmosphere.ts';
import { coldTerm } from '../../lib/air/cold.ts';
import type { Arithmetic } from '../../lib/base/arithmetic.ts';
import { bounded, type Interval } from '../../lib/base/interval.ts';
import { decimal } from './decimal-arithmetic.ts';

const speedAt = <N>(a: Arithmetic<N>, v: N, h: N, off: N): N =>
  trueOfCalibrated(a, v, pressureRatio(a, h), soundSpeedOf(a, temperatureAt(a, h, off)));

/** Speed in m/s, pressure height in m, deviation in K. */
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
    .map(([one, other]): Interval => ({ lo: Math.min(one, other), hi: Math.max(one, other) }));
const within = ({ lo, hi }: Interval, share: number): number => Math.max(lo, Math.min(hi, lo + share * (hi - lo)));
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('formulas on intervals', () => {
  it.each(FORMULAS)('%s: the true value of every point of the box lies inside', (_, formula) => {
    fc.assert(
      fc.property(span(60, 170), span(-1000, 19_000), span(-40, 40), share, share, share, (v, h, off, s, t, u) => {
        const bounds = formula(bounded, v, h, off);
        const point = [within(v, s), within(h, t), within(off, u)].map(decimal.of) as [Decimal, Decimal, Decimal];
        const value = formula(decimal, ...point);
        // Bounds are read digit by digit too: the shortest text of a double may lie beyond it.
        const inside = value.gte(decimal.of(bounds.lo)) && value.lte(decimal.of(bounds.hi));
        expect(inside, `${value} in ${bounds.lo} to ${bounds.hi}`).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
  it('are narrow: a point gives bounds a few last bits apart', () => {
    for (const [, formula] of FORMULAS) {
      const { lo, hi } = formula(bounded, bounded.of(120), bounded.of(3000), bounded.of(-10));
      expect((hi - lo) / lo).toBeLessThan(1e-12);
    }
  });
});
