// The equations of motion beside closed forms and published figures. A tolerance of 0.1 % unless the figure is printed coarser.
import { expect, test } from 'vitest';
import { turnRadius, turnRate } from '../../lib/air/turn.ts';
import type { Sheet } from '../../lib/aircraft/sheet.ts';
import { craftOf } from '../../lib/flight/craft.ts';
import { integrator } from '../../lib/flight/dormand-prince.ts';
import {
  BANK,
  calibrated,
  EAST,
  FPM,
  H,
  HEADING,
  KNOT,
  type Law,
  move,
  NORTH,
  newBalance,
  SIZE,
  V,
  W,
  X,
} from '../../lib/flight/motion.ts';
import { FOOT, NAUTICAL_MILE } from '../../lib/units/convert.ts';
import { degrees, tas } from '../../lib/units/quantity.ts';
import { published } from '../kit/published.ts';
import { tn182 } from '../kit/world.ts';

const G = 9.80665;
const RADIAN = Math.PI / 180;

type Start = { speed: number; altitude?: number; rate?: number; weight?: number; sheet?: Sheet; temperature?: number };

/** Integrates one law from a true speed in kt; the states at the end of every `each` seconds. */
function flown(parts: Partial<Law>, start: Start, seconds: number, each = 1): Float64Array[] {
  const craft = craftOf(start.sheet ?? tn182, start.weight ?? 60_000, start.temperature ?? 0);
  const law: Law = {
    path: 'rate',
    target: 0,
    rate: (start.rate ?? 0) * FPM,
    altitude: 0,
    slope: Math.tan(3 * RADIAN),
    share: 0.35,
    least: 0,
    load: 0.1 * G,
    slew: 0,
    trackSine: 0,
    trackCosine: 1,
    capture: 0.05 * G,
    thrust: 'steady',
    rating: 'climb',
    limit: 'go-around',
    up: 0,
    down: 0,
    running: 2,
    zero: craft.zeroLift(0, false, false, 0),
    induced: craft.inducedOf(0),
    turning: false,
    heading: 0,
    bankLimit: 25 * RADIAN,
    wind: 0,
    shear: 0,
    elevation: 0,
    track: 0,
    ...parts,
  };
  const balance = newBalance();
  const one = integrator(SIZE, (_, y, into) => move(craft, law, y, balance, into), {
    relative: 1e-9,
    absolute: new Float64Array(SIZE).fill(1e-8),
    most: 1,
    least: 1e-6,
  });
  one.state[H] = (start.altitude ?? 0) * FOOT;
  one.state[V] = start.speed * KNOT;
  one.state[W] = (start.rate ?? 0) * FPM;
  one.restart(0);
  const states: Float64Array[] = [];
  for (let k = 1; k * each <= seconds + 1e-9; k++) {
    while (one.time < k * each) one.step(k * each);
    // Where the vertical speed is what is wanted, the balance has it.
    move(craft, law, one.state, balance, null);
    one.state[W] = balance.rise;
    states.push(one.state.slice());
  }
  return states;
}
const share = (value: number, wanted: number): number => Math.abs(value / wanted - 1);

test.each([
  [240, 30],
  [120, 30],
  [200, 45],
  [150, 15],
  [200, 25],
])('a steady turn at %d kt and %d° of bank is the circle of lib/air', (speed, bank) => {
  // The bank is a hand's breadth behind what is asked, so that a heading far off holds it at its limit.
  const states = flown({ turning: true, heading: 3.1, bankLimit: bank * RADIAN }, { speed }, 60, 0.5);
  const steady = states.filter((y) => Math.abs(y[BANK]! - bank * RADIAN) < 1e-7);
  expect(steady.length).toBeGreaterThan(8);
  const [a, b, c] = [steady[0]!, steady[Math.floor(steady.length / 2)]!, steady.at(-1)!];
  expect(share(c[V]!, speed * KNOT)).toBeLessThan(1e-6);
  const rate = (c[HEADING]! - a[HEADING]!) / RADIAN / ((steady.length - 1) * 0.5);
  expect(share(rate, turnRate(tas(speed), degrees(bank)))).toBeLessThan(1e-3);
  // Three points of the track make a circle.
  const far = (p: Float64Array, q: Float64Array): number => Math.hypot(p[EAST]! - q[EAST]!, p[NORTH]! - q[NORTH]!);
  const [ab, bc, ca] = [far(a, b), far(b, c), far(c, a)];
  const s = (ab + bc + ca) / 2;
  const radius = (ab * bc * ca) / (4 * Math.sqrt(s * (s - ab) * (s - bc) * (s - ca)));
  expect(share(radius, turnRadius(tas(speed), degrees(bank)))).toBeLessThan(1e-3);
});

test('turns flown are those of published figures', () => {
  const turn = (speed: number, bank: number): { rate: number; radius: number } => {
    const states = flown({ turning: true, heading: 3.1, bankLimit: bank * RADIAN }, { speed }, 30);
    const [a, b] = [states[19]!, states[20]!];
    const rate = (b[HEADING]! - a[HEADING]!) / RADIAN;
    return { rate, radius: (speed * KNOT) / (rate * RADIAN) };
  };
  expect(share(turn(240, 30).rate, published('turn-240-30')[0]!)).toBeLessThan(0.003);
  // Printed in whole seconds.
  expect(Math.abs(360 / turn(240, 30).rate - published('turn-240-30')[1]!)).toBeLessThan(0.5);
  const [slow, fast] = published('turn-radius-120-30');
  // The handbook reckons with a rounded constant.
  expect(share(turn(120, 30).radius / FOOT, slow!)).toBeLessThan(0.004);
  expect(share(turn(240, 30).radius / FOOT, fast!)).toBeLessThan(0.004);
  const [radius, seconds] = published('turn-200-45');
  expect(share(turn(200, 45).radius, radius!)).toBeLessThan(0.03);
  expect(share(360 / turn(200, 45).rate, seconds!)).toBeLessThan(0.03);
});

test.each([
  ['rod-3-120', 3, 120, 5],
  ['rod-3-135', 3, 135, 5],
  ['rod-3-150', 3, 150, 5],
  ['rod-3-165', 3, 165, 5],
  ['rod-2.5-150', 2.5, 150, 10],
  ['rod-3.5-120', 3.5, 120, 10],
  ['rod-3.5-150', 3.5, 150, 10],
  ['rod-4.0-120', 4, 120, 10],
])('the sink on a path is the published one: %s', (id, angle, ground, within) => {
  // 10 kt of wind on the nose: the ground speed is what counts.
  const slope = Math.tan(angle * RADIAN);
  // Flap and gear out, so that the engines work and the speed stays.
  const law = { path: 'glide', slope, wind: 10 * KNOT, zero: 0.15 } as const;
  const states = flown(law, { speed: ground + 10, altitude: 3000 }, 30);
  const sink = -states.at(-1)![W]! / FPM;
  expect(Math.abs(sink - published(id)[0]!)).toBeLessThanOrEqual(within);
});

test('a path of 3° loses, and a climb of 2.4 % gains, what is published for a mile', () => {
  const lost = (slope: number, speed: number): { perMile: number; rate: number } => {
    const states = flown({ path: 'glide', slope, zero: 0.1 }, { speed, altitude: 3000 }, 60);
    const [a, b] = [states[19]!, states.at(-1)!];
    const miles = (b[X]! - a[X]!) / NAUTICAL_MILE;
    return { perMile: (a[H]! - b[H]!) / FOOT / miles, rate: -b[W]! / FPM };
  };
  expect(Math.abs(lost(Math.tan(3 * RADIAN), 140).perMile - published('rod-318')[0]!)).toBeLessThan(1);
  const up = lost(-0.024, 150);
  const [perMile, rate] = published('seg2-fpnm');
  expect(Math.abs(-up.perMile - perMile!)).toBeLessThan(0.15);
  expect(Math.abs(-up.rate - rate!)).toBeLessThan(0.4);
});

test('a level acceleration with a constant excess is a straight line', () => {
  const drag = { ...tn182.drag, cd0: { ...tn182.drag.cd0, value: 0 }, wave: { ...tn182.drag.wave, factor: 0 } };
  const thrust = {
    ...tn182.thrust,
    densityPower: { ...tn182.thrust.densityPower, value: 0 },
    mach: { ...tn182.thrust.mach, polynomial: [0.3] },
  };
  const sheet = { ...tn182, drag, thrust };
  const states = flown({ thrust: 'rating', rating: 'take-off', zero: 0, induced: 0 }, { speed: 150, sheet }, 40);
  const gain = (2 * 121_000 * 0.3) / 60_000;
  for (const [k, y] of states.entries()) {
    const speed = 150 * KNOT + gain * (k + 1);
    expect(share(y[V]!, speed)).toBeLessThan(1e-6);
    expect(share(y[X]!, 150 * KNOT * (k + 1) + (gain * (k + 1) ** 2) / 2)).toBeLessThan(1e-6);
    expect(y[H]).toBe(0);
  }
});

// At a constant indicated speed the excess power climbs and accelerates: rate = Ps / (1 + (V/g) dV/dh).
test.each([
  ['climb', 'climb', 62_000, 250, 5000, 0],
  ['climb on a hot day', 'climb', 70_000, 280, 8000, 25],
  ['glide at idle', 'idle', 60_000, 220, 12_000, 0],
] as const)(
  'a steady %s holds the factor of a constant indicated speed',
  (_, rating, weight, speed, altitude, temperature) => {
    const target = speed * KNOT;
    const craft = craftOf(tn182, weight, temperature);
    const air = newBalance().air;
    const trueAt = (height: number): number => {
      craft.airAt(height, air);
      let [low, high] = [target, target * 2];
      for (let n = 0; n < 60; n++) {
        const middle = (low + high) / 2;
        if (calibrated(middle, air) < target) low = middle;
        else high = middle;
      }
      return low;
    };
    const start = trueAt(altitude * FOOT) / KNOT;
    const states = flown(
      { path: 'speed', target, thrust: 'rating', rating },
      { speed: start, altitude, weight, temperature },
      90,
    );
    const y = states.at(-1)!;
    craft.airAt(y[H]!, air);
    const zero = craft.zeroLift(0, false, false, 0);
    const drag = craft.drag(air, y[V]!, zero, craft.inducedOf(0), 1);
    const excess = (craft.thrust(air, y[V]!, y[H]!, rating, 2) - drag) / craft.weight;
    const slope = (trueAt(y[H]! + 5) - trueAt(y[H]! - 5)) / 10;
    expect(share(y[W]!, (y[V]! * excess) / (1 + (y[V]! / G) * slope))).toBeLessThan(1e-3);
    craft.airAt(y[H]!, air);
    expect(Math.abs(calibrated(y[V]!, air) / KNOT - speed)).toBeLessThan(1);
  },
);

test('a capture levels where the parabola says: the height needed is rate² / 11 583 ft', () => {
  for (const rate of [1000, 2000, 3000, 4000]) {
    const needed = rate ** 2 / 11_583;
    const altitude = 5000 * FOOT;
    const start = 5000 - needed;
    // Twenty feet before, where a level is held instead, the rate is that of the same parabola.
    const last = Math.sqrt(20 * 11_583);
    const seconds = (rate - last) / 60 / (0.05 * (G / FOOT));
    const y = flown({ path: 'capture', altitude }, { speed: 250, altitude: start, rate }, seconds, seconds).at(-1)!;
    expect(Math.abs((altitude - y[H]!) / FOOT - 20)).toBeLessThan(1);
    expect(share(y[W]! / FPM, last)).toBeLessThan(0.02);
  }
});

test('climbing into more head wind adds speed, and the ground goes by more slowly', () => {
  const still = flown({ thrust: 'rating' }, { speed: 220, rate: 2000 }, 30).at(-1)!;
  const shear = (10 * KNOT) / (1000 * FOOT);
  const blown = flown({ thrust: 'rating', shear }, { speed: 220, rate: 2000 }, 30).at(-1)!;
  // 1 000 ft up the head wind is 10 kt more: about so much more air speed, less what drag takes of it.
  expect((blown[V]! - still[V]!) / KNOT).toBeGreaterThan(8);
  expect((blown[V]! - still[V]!) / KNOT).toBeLessThan(10.5);
  expect(blown[X]!).toBeLessThan(still[X]!);
});
