import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseDecimal } from '../../lib/units/decimal.ts';
import { IMPERIAL_FLEET, METRIC_FLEET } from '../../lib/units/fleet.ts';
import * as format from '../../lib/units/format.ts';
import {
  celsius,
  degrees,
  deviation,
  feet,
  feetPerMinute,
  flightLevel,
  hectopascals,
  kilograms,
  knots,
  mach,
  metres,
  nauticalMiles,
  percent,
  radians,
  seconds,
} from '../../lib/units/quantity.ts';

describe('quantities in the order of the trade', () => {
  it.each([
    [format.formatSpeed(knots(210)), '210 kt'],
    [format.formatSpeed(knots(11.62), 1), '11.6 kt'],
    [format.formatMargin(knots(5)), '+5 kt'],
    [format.formatMargin(knots(-10)), '-10 kt'],
    [format.formatMargin(knots(-0.2)), '0 kt'],
    [format.formatMach(mach(0.81)), 'M 0.81'],
    [format.formatHeight(feet(1000), 'AAL'), '1 000 ft AAL'],
    [format.formatHeight(feet(777.4)), '777 ft'],
    [format.formatLevel(flightLevel(100)), 'FL 100'],
    [format.formatLevel(flightLevel(85)), 'FL 085'],
    [format.formatRate(feetPerMinute(-700)), '-700 ft/min'],
    [format.formatRate(feetPerMinute(4190)), '+4 190 ft/min'],
    [format.formatPercent(percent(2.4)), '2.4 %'],
    [format.formatTonnes(kilograms(78_600)), '78.6 t'],
    [format.formatMass(kilograms(61_100), METRIC_FLEET), '61 100 kg'],
    [format.formatMass(kilograms(61_100), IMPERIAL_FLEET), '134 702 lb'],
    [format.formatPressure(hectopascals(1013.25), METRIC_FLEET), '1013 hPa'],
    [format.formatPressure(hectopascals(1013.25), IMPERIAL_FLEET), '29.92 inHg'],
    [format.formatTemperature(celsius(-28)), '-28 °C'],
    [format.formatDeviation(deviation(15)), 'ISA+15'],
    [format.formatDeviation(deviation(-8)), 'ISA-8'],
    [format.formatDeviation(deviation(-0.3)), 'ISA'],
    [format.formatMiles(nauticalMiles(8.3)), '8.3 NM'],
    [format.formatMetres(metres(2150)), '2 150 m'],
    [format.formatMetresAsMiles(metres(1852)), '1.0 NM'],
    [format.formatFeetAsMetres(feet(1000)), '305 m'],
    [format.formatAngle(degrees(3), 1), '3.0°'],
    [format.formatRadians(radians(Math.PI / 6)), '30°'],
    [format.formatCourse(degrees(81.2)), '081°'],
    [format.formatCourse(degrees(359.6)), '360°'],
    [format.formatCourse(degrees(-90)), '270°'],
    [format.formatWind(degrees(220), knots(30)), '220/30 kt'],
    [format.formatWind(degrees(220), knots(0.2)), 'calm'],
    [format.formatSeconds(seconds(26.4)), '26 s'],
    [format.formatSeconds(seconds(125)), '2 min 05 s'],
    [format.formatSeconds(seconds(-3)), '-3 s'],
    [format.formatTime(new Date('2026-03-09T14:05:59.999Z')), '14:05Z'],
    [format.formatMoment(new Date('2026-03-09T16:05:00+02:00')), '2026-03-09 14:05Z'],
  ])('%s', (got, want) => {
    expect(got).toBe(want);
  });
});

describe('formatNumber', () => {
  it('rounds halves away from nothing and gives nothing no sign', () => {
    expect([0.5, 1.5, -0.5, -0.4, 2.25].map((value) => format.formatNumber(value, 0))).toEqual([
      '1',
      '2',
      '-1',
      '0',
      '2',
    ]);
    expect(format.formatNumber(-0.04, 1)).toBe('0.0');
  });
  it('sets thousands apart', () => {
    expect(format.formatNumber(1_234_567.891, 2)).toBe('1 234 567.89');
    expect(format.formatNumber(-1000)).toBe('-1 000');
    expect(format.formatNumber(999)).toBe('999');
  });
  it('survives what no quantity is', () => {
    expect([Number.NaN, Number.POSITIVE_INFINITY, 1e308].map((value) => format.formatNumber(value))).toEqual([
      'NaN',
      'Infinity',
      '1e+308',
    ]);
  });
  it('writes what parseDecimal reads', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), fc.constantFrom(0, 1, 2, 4), (value, places) => {
        const read = parseDecimal(format.formatNumber(value, places));
        expect(read.ok).toBe(true);
        if (read.ok) expect(Math.abs(read.value - value)).toBeLessThanOrEqual(0.5 * 10 ** -places + 1e-6);
      }),
    );
  });
});

describe('typeset', () => {
  it.each([
    ['1 000 ft AAL', '1\u202f000\u00a0ft\u00a0AAL'],
    ['210 kt', '210\u00a0kt'],
    ['FL 100', 'FL\u00a0100'],
    ['ISA-8', 'ISA\u22128'],
    ['-28 °C', '\u221228\u00a0°C'],
    ['V2 - 10 to 2026-03-09', 'V2 - 10 to 2026-03-09'],
    ['78.6 t then 3 turns', '78.6\u00a0t then 3 turns'],
  ])('%s', (text, want) => {
    expect(format.typeset(text)).toBe(want);
  });
});
