// Expected values: worked by hand beside each, from published turn figures (ids of the reference's list), or by walking the
// same flight in small steps with other code. Geodesic ones by GeographicLib.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, offset, position } from '../../lib/air/geodesy.ts';
import type { Wind } from '../../lib/air/wind.ts';
import { deviate, type Plan } from '../../lib/flight/deviation.ts';
import { directTo } from '../../lib/flight/direct.ts';
import { turn } from '../../lib/flight/lateral.ts';
import { degrees, knots } from '../../lib/units/quantity.ts';
import { walked } from './walked.ts';

const wind = (from: number, speed: number): Wind => ({ from: degrees(from), speed: knots(speed) });
const calm = wind(0, 0);
const FEET = 6_076.115;

describe('a turn', () => {
  const half = (tas: number, bank: number) => turn(0, { tas, bank, wind: calm }, 0, 180, 'right');
  it('has the published radius and time', () => {
    // turn-radius-120-30 (FAA-H-8083-25, fig 4-51): 120 kt 2 215 ft, 240 kt 8 861 ft. Half a circle is two radii wide.
    // The handbook reckons with V²/(11.26 tan φ), which is 0.30 % more than metres and 9.80665 m/s² give.
    expect(Math.abs((half(120, 30).to.right * FEET) / 2 / 2_215 - 1)).toBeLessThan(0.0035);
    expect(Math.abs((half(240, 30).to.right * FEET) / 2 / 8_861 - 1)).toBeLessThan(0.0035);
    // turn-240-30 (fig 4-49): about 137 s for the circle, 0.3 %.
    expect(Math.abs((half(240, 30).hours * 2 * 3_600) / 137 - 1)).toBeLessThan(0.003);
    // turn-200-45 (published exam example): about 1 060 m, 3 %.
    expect(Math.abs((half(200, 45).to.right * 1_852) / 2 / 1_060 - 1)).toBeLessThan(0.03);
  });
  it('of a whole circle is carried by the wind alone', () => {
    const nearly = turn(0, { tas: 240, bank: 30, wind: wind(270, 60) }, 0, 359.9999999, 'right');
    // 60 kt from the west for the time of the circle.
    expect(nearly.to.right).toBeCloseTo(60 * nearly.hours, 4);
    expect(nearly.to.along).toBeCloseTo(0, 4);
  });
  it('goes the shorter way, or the way it is told', () => {
    expect(turn(0, { tas: 240, bank: 25, wind: calm }, 5, 350).to.right).toBeLessThan(0);
    expect(turn(0, { tas: 240, bank: 25, wind: calm }, 10, 350, 'right').hours).toBeGreaterThan(0.02);
  });
});

const START = position(52, 4);
const plan: Plan = {
  from: START,
  course: degrees(70),
  cell: { ahead: 60, depth: 10, left: -5, right: 5, toward: 0, speed: 0 },
  ...{ side: 'left', clearance: 20, leave: 30, rejoin: 30, tas: 420, bank: 25, wind: calm, lead: 0 },
};
const done = (changes: Partial<Plan>) => {
  const found = deviate({ ...plan, ...changes });
  if (!found.ok) throw new Error(found.error);
  return found.value;
};

describe('a deviation in still air around a cell that stands', () => {
  // r = V²/(g tan φ) = (420 kt)²/(9.80665 tan 25°) = 10 209 m = 5.512 NM; r tan 15° = 1.477 NM.
  // Offset: edge 5 + clearance 20 = 25 NM. The legs are tangent to the circle of 20 NM about the near left corner, so they
  // meet 20 tan 15° = 5.359 NM before it: 60 - 5.359 = 54.641. At 30° the track is left 25 / tan 30° = 43.301 NM before,
  // at 11.340, and the turn begins 1.477 NM before that, at 9.863: 50.137 NM from the cell. Behind it all is the mirror.
  const found = done({});
  it('begins at the latest where the hand-worked figure says', () => {
    expect(found.offset).toBeCloseTo(25, 4);
    expect(found.points[0]!.along).toBeCloseTo(9.863, 2);
    expect(found.toCell).toBeCloseTo(50.137, 2);
    expect(found.stepNames).toBe(55);
    expect(found.points.at(-1)).toMatchObject({ name: 'on the track again' });
    expect(found.points.at(-1)!.along).toBeCloseTo(120.137, 2);
    expect(found.points.at(-1)!.right).toBeCloseTo(0, 6);
  });
  it('adds the miles and minutes of the hand-worked path', () => {
    // Two legs of 50 - 2 × 1.477, four arcs of r π/6 = 2.886, 17.764 beside the cell: 123.401; the track: 110.275.
    expect(found.miles).toBeCloseTo(123.401, 1);
    expect(found.milesAdded).toBeCloseTo(13.126, 1);
    expect(found.minutesAdded).toBeCloseTo(1.875, 1);
    expect(found.closest).toBeCloseTo(20, 3);
  });
  it('names a greater distance where the crew needs time: 120 s at 420 kt are 14 NM', () => {
    expect(done({ lead: 120 }).stepNames).toBe(65);
    expect(done({ lead: 120 }).toCell).toBeCloseTo(found.toCell, 6);
  });
  it('lies on the earth where it should, by GeographicLib', () => {
    const beside = offset(START, degrees(70), found.points[1]!.at);
    expect(beside.cross / 1_852).toBeCloseTo(-25, 3);
    const back = offset(START, degrees(70), found.points.at(-1)!.at);
    expect(back.cross / 1_852).toBeCloseTo(0, 3);
    expect(distance(START, found.points[0]!.at)).toBeCloseTo(found.points[0]!.along, 6);
  });
  it('is the mirror on the other side', () => {
    expect(done({ side: 'right' }).points[0]!.along).toBeCloseTo(found.points[0]!.along, 5);
    expect(done({ side: 'right' }).points[1]!.right).toBeCloseTo(25, 4);
  });
  it('keeps to the track changes of the seed’s own table, distance wanted over distance to the cell, within 1°', () => {
    // 20 NM wanted at 80, 60, 50, 40 NM: 14, 18, 22, 27°: a bare line from the track to a point abeam the edge. The latest
    // point with that angle and a turn lies before it, by what the tangent to the circle and the turn take.
    for (const [at, angle] of [
      [80, 14],
      [60, 18],
      [50, 22],
      [40, 27],
    ] as const) {
      expect(Math.abs((Math.atan(20 / at) * 180) / Math.PI - angle)).toBeLessThan(1);
      const flat = done({ cell: { ...plan.cell, ahead: 200, left: 0 }, leave: angle });
      // tan(½ angle) × (20 NM + r), hand-worked as above.
      const more = (20 + 5.512) * Math.tan((angle * Math.PI) / 360);
      expect(flat.toCell).toBeCloseTo(20 / Math.tan((angle * Math.PI) / 180) + more, 1);
    }
  });
});

describe('a deviation with wind and a moving cell', () => {
  const cells = fc.record({
    drift: fc.integer({ min: 0, max: 40 }),
    toward: fc.integer({ min: 0, max: 359 }),
    from: fc.integer({ min: 0, max: 359 }),
    strength: fc.integer({ min: 0, max: 120 }),
    clearance: fc.constantFrom(10, 20),
    leave: fc.integer({ min: 20, max: 45 }),
    side: fc.constantFrom<'left' | 'right'>('left', 'right'),
  });
  const changed = ({
    drift,
    toward,
    from,
    strength,
    ...rest
  }: typeof cells extends fc.Arbitrary<infer T> ? T : never) => ({
    ...rest,
    wind: wind(from, strength),
    cell: { ...plan.cell, ahead: 120, toward, speed: drift },
  });
  it('keeps the clearance and no more, walked second by second with other code', () => {
    fc.assert(
      fc.property(cells, (each) => {
        const flown = { ...plan, ...changed(each) };
        const found = deviate(flown);
        if (!found.ok) return;
        const { nearest, back } = walked(flown, found.value);
        expect(Math.abs(nearest - each.clearance)).toBeLessThan(0.1);
        expect(Math.abs(back.right)).toBeLessThan(0.1);
        expect(Math.abs(back.along - found.value.points.at(-1)!.along)).toBeLessThan(0.2);
      }),
      {
        numRuns: 60,
        // The cell comes the other way: nobody turns away from a cell that is behind already.
        examples: [[{ drift: 33, toward: 241, from: 0, strength: 0, clearance: 10, leave: 20, side: 'left' }]],
      },
    );
  });
  it('comes too near when it begins 1 NM later', () => {
    const flown = { ...plan, wind: wind(340, 60), cell: { ...plan.cell, toward: 70, speed: 20 } };
    const found = deviate(flown);
    if (!found.ok) throw new Error(found.error);
    expect(walked(flown, found.value, 1).nearest).toBeLessThan(19.8);
  });
  it('begins nearer to a cell that goes the other way, and earlier for one that comes along', () => {
    const away = done({ cell: { ...plan.cell, ahead: 100, toward: 160, speed: 30 } });
    const along = done({ cell: { ...plan.cell, ahead: 100, toward: 340, speed: 30 } });
    expect(away.toCell).toBeLessThan(along.toCell - 3);
    expect(along.offset).toBeGreaterThan(away.offset);
  });
});

describe('what can’t be flown', () => {
  const why = (changes: Partial<Plan>) => {
    const found = deviate({ ...plan, ...changes });
    return found.ok ? '' : found.error;
  };
  it('is said', () => {
    expect(why({ cell: { ...plan.cell, left: 25, right: 30 } })).toBe(
      'The track passes the cell at this clearance already.',
    );
    expect(why({ wind: wind(160, 500) })).toContain("can't be held");
    expect(why({ cell: { ...plan.cell, toward: 70, speed: 430 } })).toContain('it is not passed');
    expect(why({ clearance: 2, leave: 60, rejoin: 60, bank: 10, cell: { ...plan.cell, left: 0 } })).toContain(
      'smaller angles',
    );
  });
  it('is begun too late: the latest point is behind', () => {
    const late = done({ cell: { ...plan.cell, ahead: 30 } });
    expect(late.tooLate).toBe(true);
    expect(late.points[0]!.along).toBeCloseTo(9.863 - 30, 2);
  });
});

describe('direct to a waypoint', () => {
  const [a, b, c] = [position(50.5, 4), position(50.5, 5), position(50, 5)];
  const north = { from: position(50, 4), track: degrees(0), route: [a, b, c], tas: 300, bank: 25 };
  it('turns by the shorter side and saves what the route is longer', () => {
    const found = directTo({ ...north, wind: calm });
    if (!found.ok) throw new Error(found.error);
    const { turn: side, change, miles, routeMiles, milesSaved, minutesSaved, out, course } = found.value;
    expect(side).toBe('right');
    // r = (300 kt)²/(g tan 25°) = 5 209 m = 2.812 NM; due east nearly: half a right angle more than 90° back to the waypoint,
    // since the turn ends about r north of it: 90° + atan(2.8 / 35.9) = 94.5°.
    expect(change).toBeCloseTo(94.3, 0);
    expect(course).toBeCloseTo(change, 6);
    // By GeographicLib: 30.03 + 38.27 + 30.03 NM by the route.
    expect(routeMiles).toBeCloseTo(30.03 + 38.3 + 30.03, 0);
    expect(miles).toBeCloseTo(2.812 * ((change * Math.PI) / 180) + distance(out, c), 2);
    expect(milesSaved).toBeCloseTo(routeMiles - miles, 9);
    expect(minutesSaved).toBeCloseTo((milesSaved / 300) * 60, 3);
  });
  it('holds the course against the wind', () => {
    const found = directTo({ ...north, wind: wind(0, 60) });
    if (!found.ok) throw new Error(found.error);
    // Crosswind 60 sin(angle) / 300: about 11.5° into the wind, to the left of an easterly course.
    expect(found.value.heading).toBeCloseTo(found.value.course - 11.5, 0);
  });
  it('says so where the waypoint lies inside the turn', () => {
    const near = directTo({ ...north, route: [position(50, 4.03)], wind: calm });
    expect(near.ok ? '' : near.error).toContain('inside the turn');
    expect(directTo({ ...north, route: [], wind: calm }).ok).toBe(false);
  });
});
