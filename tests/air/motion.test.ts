import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  angleOfGradient,
  distanceFor,
  gradientOfAngle,
  gradientOfRate,
  heightOver,
  levelOffHeight,
  rateOfAngle,
  rateOfGradient,
} from '../../lib/air/path.ts';
import {
  bankForLoadFactor,
  bankForRadius,
  bankForRate,
  loadFactorOf,
  turnAnticipation,
  turnRadius,
  turnRate,
} from '../../lib/air/turn.ts';
import {
  crosswind,
  headwind,
  holdCourse,
  normalise,
  speedOverGround,
  tailwind,
  turnTo,
  windMet,
} from '../../lib/air/wind.ts';
import { milesToFeet } from '../../lib/units/convert.ts';
import {
  degrees,
  feet,
  feetPerMinute,
  groundSpeed,
  knots,
  nauticalMiles,
  percent,
  seconds,
  tas,
} from '../../lib/units/quantity.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const speeds = number(60, 550).map(knots);
const banks = number(1, 60).map(degrees);
const courses = number(-720, 720).map(degrees);

describe('turns', () => {
  it('give the bank back from rate, radius and load factor', () => {
    fc.assert(
      fc.property(speeds, banks, (speed, bank) => {
        expect(bankForRate(speed, turnRate(speed, bank))).toBeCloseTo(bank, 9);
        expect(bankForRadius(speed, turnRadius(speed, bank))).toBeCloseTo(bank, 9);
        expect(bankForLoadFactor(loadFactorOf(bank))).toBeCloseTo(bank, 9);
      }),
    );
  });
  it('begin earlier for a larger change, and by the time it takes to bank', () => {
    const [speed, bank] = [knots(180), degrees(25)];
    expect(turnAnticipation(speed, bank, degrees(90))).toBeGreaterThan(turnAnticipation(speed, bank, degrees(-30)));
    const delay = turnAnticipation(speed, bank, degrees(30), seconds(5)) - turnAnticipation(speed, bank, degrees(30));
    expect(delay).toBeCloseTo((180 * 5) / 3600, 12);
  });
  it('refuse wings level, a knife edge, a standstill and a turn back', () => {
    expect(() => turnRadius(knots(200), degrees(0))).toThrow('no level turn');
    expect(() => turnRadius(knots(200), degrees(90))).toThrow('no level turn');
    expect(() => turnRate(knots(0), degrees(20))).toThrow('no radius');
    expect(() => turnAnticipation(knots(200), degrees(25), degrees(180))).toThrow('no place');
  });
});

describe('wind', () => {
  it('is taken apart and put together', () => {
    fc.assert(
      fc.property(courses, number(0, 80).map(knots), courses, (from, speed, course) => {
        const wind = { from, speed };
        expect(Math.hypot(headwind(wind, course), crosswind(wind, course))).toBeCloseTo(speed, 9);
        expect(tailwind(wind, course) + headwind(wind, course)).toBe(0);
      }),
    );
  });
  it('is found again from the triangle it makes', () => {
    fc.assert(
      fc.property(
        courses,
        number(100, 480).map(tas),
        number(5, 90).map(knots),
        courses,
        (course, speed, wind, from) => {
          const held = holdCourse(course, speed, { from, speed: wind });
          expect(held.ok).toBe(true);
          if (!held.ok) return;
          const met = windMet(held.value.heading, speed, course, held.value.groundSpeed);
          expect(met.speed).toBeCloseTo(wind, 7);
          expect(turnTo(from, met.from)).toBeCloseTo(0, 5);
        },
      ),
    );
  });
  it('may be too strong to hold a course or to make way', () => {
    expect(holdCourse(degrees(0), tas(60), { from: degrees(90), speed: knots(70) }).ok).toBe(false);
    expect(holdCourse(degrees(0), tas(60), { from: degrees(0), speed: knots(60) }).ok).toBe(false);
  });
  it('slows an approach into it', () => {
    expect(speedOverGround(tas(140), degrees(0), knots(20))).toBe(120);
    expect(speedOverGround(tas(140), degrees(3), knots(-10))).toBeCloseTo(149.808, 3);
  });
});

describe('directions', () => {
  it('are brought to a circle', () => {
    expect([-10, 0, 360, 725, -360, -1e-15].map((each) => normalise(degrees(each)))).toEqual([350, 0, 0, 5, 0, 0]);
  });
  it('turn the short way, right being positive', () => {
    expect(turnTo(degrees(350), degrees(10))).toBe(20);
    expect(turnTo(degrees(10), degrees(350))).toBe(-20);
    expect(turnTo(degrees(90), degrees(270))).toBe(180);
  });
});

describe('paths', () => {
  it('give gradient, angle and rate back', () => {
    fc.assert(
      fc.property(number(-30, 30).map(percent), number(60, 500), (gradient, made) => {
        expect(gradientOfAngle(angleOfGradient(gradient))).toBeCloseTo(gradient, 10);
        expect(gradientOfRate(rateOfGradient(gradient, knots(made)), groundSpeed(made))).toBeCloseTo(gradient, 10);
      }),
    );
  });
  it('take the distance that gains their height', () => {
    fc.assert(
      fc.property(number(100, 40_000).map(feet), number(0.5, 20).map(percent), (height, gradient) => {
        expect(heightOver(distanceFor(height, gradient), gradient)).toBeCloseTo(height, 6);
      }),
    );
    expect(distanceFor(milesToFeet(nauticalMiles(3)), percent(-10))).toBeCloseTo(30, 12);
    expect(() => distanceFor(feet(100), percent(0))).toThrow('level path');
  });
  it('sink at 101.27 × ground speed × tan γ', () => {
    expect(rateOfAngle(degrees(3), knots(1)) / Math.tan(Math.PI / 60)).toBeCloseTo(101.27, 2);
  });
  it('level off from 3 000 ft/min in 777 ft', () => {
    expect(levelOffHeight(feetPerMinute(-3000))).toBeCloseTo(777, 0);
    expect(levelOffHeight(feetPerMinute(6000)) / levelOffHeight(feetPerMinute(3000))).toBeCloseTo(4, 12);
  });
});
