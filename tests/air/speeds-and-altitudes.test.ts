import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  casToEas,
  casToMach,
  casToTas,
  crossover,
  easToCas,
  easToTas,
  machToCas,
  machToEas,
  machToTas,
  tasToCas,
  tasToEas,
} from '../../lib/air/airspeed.ts';
import {
  altitudeOfPressure,
  densityAltitudeFrom,
  indicatedAltitude,
  pressureAltitudeFrom,
  qfeFrom,
  qnhFrom,
  STANDARD_SETTING,
} from '../../lib/air/altimeter.ts';
import { airAt, deviationAt } from '../../lib/air/atmosphere.ts';
import { staticTemperature, totalTemperature } from '../../lib/air/total-temperature.ts';
import {
  altitudeMsl,
  cas,
  celsius,
  deviation,
  hectopascals,
  mach,
  pressureAltitude,
  tas,
} from '../../lib/units/quantity.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const altitudes = number(-2000, 65_000).map(pressureAltitude);
const slow = number(60, 330).map(cas);
const low = number(-1000, 30_000).map(pressureAltitude);
const days = number(-40, 40).map(deviation);
const fields = number(-1000, 14_000).map(altitudeMsl);
const settings = number(940, 1060).map(hectopascals);

describe('air', () => {
  it('is the standard sea-level air at nought', () => {
    expect(airAt(pressureAltitude(0))).toMatchObject({ temperature: 288.15, pressure: 101_325, theta: 1, delta: 1 });
  });
  it('has no step at the tropopause', () => {
    const [below, above] = [36_089, 36_090].map((height) => airAt(pressureAltitude(height)));
    expect(Math.abs((below?.pressure ?? 0) - (above?.pressure ?? 0))).toBeLessThan(1.1);
  });
  it('keeps pressure and moves temperature off the standard day', () => {
    fc.assert(
      fc.property(altitudes, days, (altitude, off) => {
        const [standard, day] = [airAt(altitude), airAt(altitude, off)];
        expect(day.pressure).toBe(standard.pressure);
        expect(day.temperature - standard.temperature).toBeCloseTo(off, 10);
        expect(deviationAt(altitude, day.temperature)).toBeCloseTo(off, 10);
      }),
    );
  });
  it('thins without end on the way up', () => {
    fc.assert(
      fc.property(altitudes, number(1, 500), days, (altitude, step, off) => {
        const higher = airAt(pressureAltitude(Math.min(altitude + step, 65_500)), off);
        expect(higher.density).toBeLessThan(airAt(altitude, off).density);
      }),
    );
  });
  it('refuses what is outside', () => {
    expect(() => airAt(pressureAltitude(70_000))).toThrow('outside the atmosphere');
    expect(() => airAt(pressureAltitude(0), deviation(-300))).toThrow('leaves no temperature');
  });
});

describe('altimeters', () => {
  it('find the altitude of a pressure again', () => {
    fc.assert(
      fc.property(altitudes, (altitude) => {
        expect(Math.abs(altitudeOfPressure(airAt(altitude).pressure) - altitude)).toBeLessThan(1e-8);
      }),
    );
  });
  it('show what they were shown, and pressure altitude on the standard setting', () => {
    fc.assert(
      fc.property(fields, settings, (altitude, qnh) => {
        expect(indicatedAltitude(pressureAltitudeFrom(altitude, qnh), qnh)).toBeCloseTo(altitude, 8);
        expect(pressureAltitudeFrom(altitude, STANDARD_SETTING)).toBeCloseTo(altitude, 8);
      }),
    );
  });
  it('go from QNH to QFE and back', () => {
    fc.assert(
      fc.property(fields, settings, (elevation, qnh) => {
        expect(qnhFrom(elevation, qfeFrom(elevation, qnh))).toBeCloseTo(qnh, 8);
      }),
    );
  });
  it('have a density altitude equal to pressure altitude on the standard day, above it on a warm one', () => {
    fc.assert(
      fc.property(altitudes, days, (altitude, off) => {
        expect(densityAltitudeFrom(altitude, deviation(0))).toBeCloseTo(altitude, 6);
        expect(Math.sign(densityAltitudeFrom(altitude, off) - altitude) * Math.sign(off)).toBeGreaterThanOrEqual(
          Math.abs(off) < 1e-9 ? -1 : 1,
        );
      }),
    );
  });
});

describe('airspeeds', () => {
  it('come back from every other', () => {
    fc.assert(
      fc.property(slow, low, days, (speed, altitude, off) => {
        expect(machToCas(casToMach(speed, altitude), altitude)).toBeCloseTo(speed, 8);
        expect(easToCas(casToEas(speed, altitude), altitude)).toBeCloseTo(speed, 8);
        expect(tasToCas(casToTas(speed, altitude, off), altitude, off)).toBeCloseTo(speed, 8);
        const through = easToTas(casToEas(speed, altitude), altitude, off);
        expect(through).toBeCloseTo(casToTas(speed, altitude, off), 8);
        expect(tasToEas(through, altitude, off)).toBeCloseTo(casToEas(speed, altitude), 8);
      }),
    );
  });
  it('are one and the same at sea level on the standard day', () => {
    const sea = pressureAltitude(0);
    expect(casToTas(cas(250), sea)).toBeCloseTo(250, 10);
    expect(casToEas(cas(250), sea)).toBeCloseTo(250, 10);
  });
  it('stand in the order EAS, CAS, TAS in the air above sea level', () => {
    fc.assert(
      fc.property(slow, number(100, 30_000).map(pressureAltitude), (speed, altitude) => {
        expect(casToEas(speed, altitude)).toBeLessThan(speed);
        expect(casToTas(speed, altitude)).toBeGreaterThan(speed);
      }),
    );
  });
  it('refuse to be supersonic, negative or nothing', () => {
    expect(() => casToMach(cas(400), pressureAltitude(40_000))).toThrow('outside 0 to 1');
    expect(() => casToMach(cas(-1), pressureAltitude(0))).toThrow('no airspeed');
    expect(() => machToEas(mach(1.2), pressureAltitude(0))).toThrow('outside 0 to 1');
    expect(() => tasToCas(tas(700), pressureAltitude(0))).toThrow('outside 0 to 1');
  });
});

describe('crossover', () => {
  it('of 345 kt and M 0.81 is 24 606 ft, as in the flight study', () => {
    expect(crossover(cas(345), mach(0.81))).toMatchObject({ ok: true, value: expect.closeTo(24_606, -0.5) });
  });
  it('is where both are the same true speed, whatever the day', () => {
    fc.assert(
      fc.property(number(200, 350).map(cas), number(0.6, 0.9).map(mach), days, (speed, m, off) => {
        const found = crossover(speed, m);
        fc.pre(found.ok);
        expect(casToTas(speed, found.value, off)).toBeCloseTo(machToTas(m, found.value, off), 6);
      }),
    );
  });
  it('says so when they never meet', () => {
    expect(crossover(cas(60), mach(0.99))).toEqual({ ok: false, error: expect.stringContaining("don't meet") });
  });
});

describe('total temperature', () => {
  it('gives the static temperature back', () => {
    fc.assert(
      fc.property(number(-80, 50), number(0, 1), number(0, 1), (air, m, recovery) => {
        const total = totalTemperature(celsius(air), mach(m), recovery);
        expect(total).toBeGreaterThanOrEqual(air - 1e-9);
        expect(staticTemperature(total, mach(m), recovery)).toBeCloseTo(air, 9);
      }),
    );
  });
});
