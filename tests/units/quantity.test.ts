import { describe, expect, it } from 'vitest';
import {
  type Cas,
  cas,
  type Feet,
  type HeightAal,
  type Kilograms,
  type Knots,
  kilograms,
  knots,
  type Pounds,
  type PressureAltitude,
  type Tas,
} from '../../lib/units/quantity.ts';

/** Decided by the compiler: whether a Given may stand where a Wanted is asked for. */
type Fits<Given, Wanted> = Given extends Wanted ? true : false;

describe('quantities', () => {
  it('are kept apart by the compiler: the type check fails when one of these is wrong', () => {
    const fits: [Fits<Cas, Knots>, Fits<HeightAal, Feet>, Fits<Kilograms, number>] = [true, true, true];
    const mixes: [
      Fits<Cas, Tas>,
      Fits<Knots, Cas>,
      Fits<Kilograms, Pounds>,
      Fits<Knots, Feet>,
      Fits<HeightAal, PressureAltitude>,
      Fits<number, Knots>,
    ] = [false, false, false, false, false, false];
    expect([fits.every(Boolean), mixes.some(Boolean)]).toEqual([true, false]);
  });
  it('are plain numbers when they run', () => {
    expect(knots(210)).toBe(210);
    expect(kilograms(0)).toBe(0);
  });
  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('are never %s', (value) => {
    expect(() => cas(value)).toThrow(`${value} kt CAS is not a quantity`);
  });
});
