// The integrator: its order, its error control, and its look into a step.
import { expect, test } from 'vitest';
import { type Derivative, integrator } from '../../lib/flight/dormand-prince.ts';

// y'' = -y, with a state of its own size in both components.
const swing: Derivative = (_, y, into) => {
  into[0] = y[1]!;
  into[1] = -y[0]!;
};

function fixed(step: number): { end: number; inside: number } {
  const one = integrator(2, swing, { relative: 0, absolute: new Float64Array([1e9, 1e9]), most: step, least: step });
  one.first = step;
  one.state.set([0, 1]);
  one.restart(0);
  const middle = new Float64Array(2);
  let inside = 0;
  for (let k = 1; k <= Math.round(2 / step); k++) {
    one.step(k * step);
    one.at((k - 0.4) * step, middle);
    inside = Math.max(inside, Math.abs(middle[0]! - Math.sin((k - 0.4) * step)));
  }
  return { end: Math.abs(one.state[0]! - Math.sin(2)), inside };
}

test('order five at the end of a step, order four between', () => {
  const [coarse, fine] = [fixed(0.2), fixed(0.1)];
  expect(Math.log2(coarse.end / fine.end)).toBeGreaterThan(4.7);
  expect(Math.log2(coarse.end / fine.end)).toBeLessThan(5.6);
  // The extension loses one order in each step, so that the whole keeps four at least.
  expect(Math.log2(coarse.inside / fine.inside)).toBeGreaterThan(3.8);
});

test('a tighter tolerance gives a smaller error, with more work', () => {
  const at = (relative: number): { error: number; work: number } => {
    const one = integrator(2, swing, {
      relative,
      absolute: new Float64Array([relative, relative]),
      most: 10,
      least: 1e-9,
    });
    one.state.set([0, 1]);
    one.restart(0);
    while (one.time < 10) one.step(10);
    return { error: Math.abs(one.state[0]! - Math.sin(10)), work: one.evaluations() };
  };
  const [loose, tight] = [at(1e-4), at(1e-8)];
  expect(tight.error).toBeLessThan(1e-6);
  expect(loose.error / tight.error).toBeGreaterThan(100);
  expect(tight.work).toBeGreaterThan(loose.work);
});

test('a step ends where it is told to, and begins anew after a jump', () => {
  // The law changes between steps, never inside one: the caller sees to it.
  let slope = 1;
  const one = integrator(1, (_, __, into) => void (into[0] = slope), {
    relative: 1e-9,
    absolute: new Float64Array([1e-9]),
    most: 10,
    least: 1e-6,
  });
  one.state[0] = 0;
  one.restart(0);
  while (one.time < 1) one.step(1);
  expect([one.time, one.state[0]]).toEqual([1, expect.closeTo(1, 9)]);
  slope = -1;
  one.restart(1);
  while (one.time < 2) one.step(2);
  expect(one.state[0]).toBeCloseTo(0, 9);
});

test('a slope that is no number does not keep it in a circle', () => {
  const one = integrator(1, (_, __, into) => void (into[0] = Number.NaN), {
    relative: 1e-6,
    absolute: new Float64Array([1e-6]),
    most: 1,
    least: 0.1,
  });
  one.restart(0);
  one.step(1);
  expect(one.time).toBeGreaterThan(0);
});
