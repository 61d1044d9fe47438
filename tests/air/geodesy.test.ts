import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { course, distance, leg, offset, position, travel, travelMiles } from '../../lib/air/geodesy.ts';
import { turnTo } from '../../lib/air/wind.ts';
import { degrees, metres, nauticalMiles } from '../../lib/units/quantity.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const places = fc.tuple(number(-85, 85), number(-180, 180)).map(([lat, lon]) => position(lat, lon));
const courses = number(0, 360).map(degrees);

describe('geodesics', () => {
  it('come back to where they went', () => {
    fc.assert(
      fc.property(places, courses, number(1000, 5e6), (from, along, length) => {
        const there = travel(from, along, metres(length));
        const found = leg(from, there.at);
        expect(Math.abs(found.distance - length)).toBeLessThan(1e-5);
        expect(Math.abs(turnTo(found.course, along)) * length).toBeLessThan(1e-2);
        const home = travel(there.at, there.arriving, metres(-length));
        expect(leg(home.at, from).distance).toBeLessThan(1e-5);
      }),
    );
  });
  it('cross the date line', () => {
    const [west, east] = [position(10, 179.9), position(10, -179.9)];
    expect(distance(west, east)).toBeLessThan(12);
    expect(course(west, east)).toBeCloseTo(90, 1);
    expect(travelMiles(west, degrees(90), nauticalMiles(30)).longitude).toBeLessThan(-179);
  });
  it('have nought between equal places', () => {
    expect(distance(position(51, 4), position(51, 364))).toBe(0);
  });
  it('take no latitude beyond the pole', () => {
    expect(() => position(90.1, 0)).toThrow('no latitude');
  });
});

describe('cross-track', () => {
  it('finds the point abeam: it lies on the course, square to the way there', () => {
    fc.assert(
      fc.property(places, courses, number(-1e6, 1e6), number(-4e5, 4e5), (start, along, gone, aside) => {
        const base = travel(start, along, metres(gone));
        const point = travel(base.at, degrees(base.arriving + 90), metres(aside)).at;
        const found = offset(start, along, point);
        expect(Math.abs(found.cross - aside)).toBeLessThan(1e-4);
        expect(Math.abs(found.along - gone)).toBeLessThan(1e-3);
        expect(leg(found.abeam, base.at).distance).toBeLessThan(1e-3);
      }),
    );
  });
  it('is nought on the course, and right is positive', () => {
    const start = position(55, 3);
    const on = travel(start, degrees(90), metres(50_000)).at;
    expect(Math.abs(offset(start, degrees(90), on).cross)).toBeLessThan(1e-5);
    expect(offset(start, degrees(0), position(55, 3.1)).cross).toBeGreaterThan(6000);
    expect(offset(start, degrees(0), position(54, 3)).along).toBeLessThan(-100_000);
  });
  it('refuses the far side of the earth', () => {
    expect(() => offset(position(0, 0), degrees(0), position(0, 170))).toThrow('quarter of the earth');
  });
});
