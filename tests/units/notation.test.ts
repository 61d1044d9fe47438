import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { IMPERIAL_FLEET, METRIC_FLEET } from '../../lib/units/fleet.ts';
import { formatDeviation, formatPressure, formatTime, formatWind } from '../../lib/units/format.ts';
import { parseDeviation, parseSetting, parseTime, parseWind } from '../../lib/units/notation.ts';
import { degrees, deviation, hectopascals, knots } from '../../lib/units/quantity.ts';

const refused = (sentence: string, instead: readonly string[] = []) => ({
  ok: false,
  error: { sentence: expect.stringContaining(sentence), instead },
});

describe('a deviation', () => {
  it.each([
    ['ISA+15', 15],
    ['isa - 8', -8],
    ['ISA', 0],
    ['ISA+7.5 °C', 7.5],
  ])('%j is read', (text, value) => {
    expect(parseDeviation(text)).toEqual({ ok: true, value });
  });
  it.each([
    ['15', 'type ISA+15.', ['ISA+15']],
    ['-8', 'type ISA-8.', ['ISA-8']],
    ['ISA+1,5', 'as a point, +1.5', ['ISA+1.5']],
    ['ISA+100', 'outside ISA-60 to ISA+60', []],
    ['hot', 'no deviation', []],
  ])('%j is refused', (text, sentence, instead) => {
    expect(parseDeviation(text)).toEqual(refused(sentence, instead));
  });
  it('reads what is written', () => {
    fc.assert(
      fc.property(fc.integer({ min: -60, max: 60 }), (off) => {
        expect(parseDeviation(formatDeviation(deviation(off)))).toEqual({ ok: true, value: off });
      }),
    );
  });
});

describe('a wind', () => {
  it('reads what is written', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 360 }), fc.integer({ min: 1, max: 200 }), (from, speed) => {
        expect(parseWind(formatWind(degrees(from), knots(speed)))).toEqual({ ok: true, value: { from, speed } });
      }),
    );
    expect(parseWind('calm')).toEqual({ ok: true, value: { from: 360, speed: 0 } });
    expect(parseWind('000/10')).toEqual({ ok: true, value: { from: 360, speed: 10 } });
  });
  it.each(['22/30', '220', '220/30 m/s', '400/10', '', '220/-3'])('%j is refused', (text) => {
    expect(parseWind(text)).toEqual(refused('type'));
  });
});

describe('an altimeter setting', () => {
  it.each([
    ['1013', METRIC_FLEET, 1013],
    ['29.92', IMPERIAL_FLEET, 1013.2076],
    ['QNH 1 013 hPa', METRIC_FLEET, 1013],
    ['Q0998', IMPERIAL_FLEET, 998],
    ['A2992', METRIC_FLEET, 1013.2076],
    ['29.92 inHg', METRIC_FLEET, 1013.2076],
  ])('%j is read', (text, fleet, value) => {
    const read = parseSetting(text, fleet);
    expect(read.ok && read.value).toBeCloseTo(value, 4);
  });
  it('is not guessed from the other unit', () => {
    expect(parseSetting('29.92', METRIC_FLEET)).toEqual(refused('was 29.92 inHg meant?', ['29.92 inHg']));
    expect(parseSetting('1013', IMPERIAL_FLEET)).toEqual(refused('was 1013 hPa meant?', ['1013 hPa']));
    expect(parseSetting('2992', METRIC_FLEET)).toEqual(refused('more than 1085 hPa'));
    expect(parseSetting('Q2992', METRIC_FLEET)).toEqual(refused('870 hPa to 1085 hPa'));
  });
  it('reads what is written, in either fleet', () => {
    fc.assert(
      fc.property(fc.integer({ min: 880, max: 1080 }), fc.constantFrom(METRIC_FLEET, IMPERIAL_FLEET), (hPa, fleet) => {
        const read = parseSetting(formatPressure(hectopascals(hPa), fleet), fleet);
        expect(read.ok && Math.abs(read.value - hPa)).toBeLessThan(0.17);
      }),
    );
  });
});

describe('a time of day', () => {
  it('reads what is written', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1439 }), (total) => {
        expect(parseTime(formatTime(new Date(total * 60_000)))).toEqual({ ok: true, value: total });
      }),
    );
    expect([parseTime('1405Z'), parseTime('14:05')]).toEqual([
      { ok: true, value: 845 },
      { ok: true, value: 845 },
    ]);
  });
  it.each(['25:00Z', '12:60Z', '2 pm', '14.05', ''])('%j is refused', (text) => {
    expect(parseTime(text)).toEqual(refused('such as 14:05Z'));
  });
  it('offers the time that a bare number may be', () => {
    expect(parseTime('1405')).toEqual(refused('may be a number', ['14:05Z']));
  });
});
