import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LONGEST_NUMBER, parseDecimal } from '../../lib/units/decimal.ts';
import { IMPERIAL_FLEET, METRIC_FLEET } from '../../lib/units/fleet.ts';
import { formatMass, formatNumber } from '../../lib/units/format.ts';
import * as measure from '../../lib/units/measure.ts';
import { parseMass, parseQuantity } from '../../lib/units/parse.ts';
import { kilograms } from '../../lib/units/quantity.ts';

describe('a decimal', () => {
  it.each([
    ['61100', 61_100],
    ['61 100', 61_100],
    ['61\u202f100', 61_100],
    ['61.1', 61.1],
    ['.78', 0.78],
    ['0.785', 0.785],
    ['-28', -28],
    ['\u221228', -28],
    ['+5', 5],
    ['1 013.25', 1013.25],
    ['  210 ', 210],
  ])('%j is read', (text, value) => {
    expect(parseDecimal(text)).toEqual({ ok: true, value });
  });
  it.each([
    ['1.500', ['1 500', '1.5']],
    ['1,500', ['1 500', '1.5']],
    ['12.345', ['12 345', '12.3450']],
    ['1,5', ['1.5']],
    ['61,1', ['61.1']],
    ['0,785', ['0.7850']],
    ['1,013.25', ['1 013.25']],
    ["1'500", ['1 500', '1.5']],
    ['1.500.000', []],
    ['61 10', []],
    ['6 1100', []],
    ['12.', ['12']],
    ['1e308', []],
    ['NaN', []],
    ['Infinity', []],
    ['0x10', []],
    ['--5', []],
    ['', []],
    ['\u0663', []],
    ['9'.repeat(LONGEST_NUMBER + 1), []],
  ])('%j is refused in one sentence', (text, instead) => {
    const read = parseDecimal(text);
    expect(read).toEqual({ ok: false, error: { sentence: expect.stringMatching(/^[^\n]+\.$/), instead } });
    // What is offered instead is itself read.
    expect(instead.map((each) => parseDecimal(each).ok)).not.toContain(false);
  });
  it('never crashes, and reads a number only as what its figures say', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[-+ .,'’0-9e]{0,12}$/), (text) => {
        const read = parseDecimal(text);
        if (!read.ok) return;
        expect(Number(text.replaceAll(' ', ''))).toBe(read.value);
        expect(text).not.toMatch(/[,'’e]/);
      }),
      { numRuns: 5000 },
    );
  });
});

const range = { least: 40_000, most: 80_000 };

describe('a mass', () => {
  it.each([
    ['61.1 t', 61_100, '61.1 t = 61 100 kg'],
    ['61100 kg', 61_100, '61 100 kg'],
    ['61 100', 61_100, '61 100 kg'],
    ['61.1t', 61_100, '61.1 t = 61 100 kg'],
    ['134 700 LB', 61_098.892239, '134 700 lb = 61 099 kg'],
  ])('%j is understood and said back', (text, mass, understood) => {
    const read = parseMass(text, METRIC_FLEET, range);
    expect(read).toMatchObject({ ok: true, value: { understood } });
    expect(read.ok && read.value.mass).toBeCloseTo(mass, 6);
  });
  it('has the unit of the fleet when it is bare', () => {
    expect(parseMass('134 700', IMPERIAL_FLEET, range)).toMatchObject({ ok: true, value: { unit: 'lb' } });
  });
  it('is not guessed: 61.1 in a kg fleet is refused, and tonnes are offered', () => {
    expect(parseMass('61.1', METRIC_FLEET, range)).toEqual({
      ok: false,
      error: {
        sentence: '61.1 kg is less than 40 000 kg, the limit of this field: was 61.1 t meant?',
        instead: ['61.1 t'],
      },
    });
  });
  it.each([
    ['61,1 t', 'type the decimal sign as a point, 61.1', ['61.1 t']],
    ['61.100 t', 'can be read as 61 100', ['61 100 t', '61.1 t']],
    ['61.1 kt', 'kt is the unit of a speed: a mass is typed in kg, t or lb.', []],
    ['61 stone', '"stone" is not a unit known here', []],
    ['1e5 kg', 'is not a unit known here', []],
    ['100 t', '100 t is more than 80 t', []],
  ])('%j is refused', (text, sentence, instead) => {
    const read = parseMass(text, METRIC_FLEET, range);
    expect(read).toEqual({ ok: false, error: { sentence: expect.stringContaining(sentence), instead } });
  });
  it('reads what is written, in either fleet', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 40_000, max: 80_000 }),
        fc.constantFrom(METRIC_FLEET, IMPERIAL_FLEET),
        (kg, fleet) => {
          const read = parseMass(formatMass(kilograms(kg), fleet), fleet);
          expect(read.ok && Math.abs(read.value.mass - kg)).toBeLessThanOrEqual(0.2268);
        },
      ),
    );
  });
});

describe('a quantity', () => {
  it.each([
    [measure.MACH, 'M.78', 0.78, 'M 0.78'],
    [measure.MACH, '0.78 M', 0.78, 'M 0.78'],
    [measure.LEVEL, 'FL100', 100, 'FL 100'],
    [measure.PRESSURE, '29.92 inHg', 1013.2076, '29.92 inHg = 1013.2 hPa'],
    [measure.PRESSURE, '1 013 hPa', 1013, '1013 hPa'],
    [measure.TEMPERATURE, '-28°C', -28, '-28 °C'],
    [measure.TEMPERATURE, '14 F', -10, '14 °F = -10 °C'],
    [measure.TEMPERATURE, '268.15 K', -5, '268.15 K = -5 °C'],
    [measure.HEIGHT, "1000'", 1000, '1 000 ft'],
    [measure.HEIGHT, '304.8 m', 1000, '304.8 m = 1 000 ft'],
    [measure.DURATION, '2 min', 120, '2 min = 120 s'],
    [measure.RATE, '-700 fpm', -700, '-700 ft/min'],
    [measure.GRADIENT, '152 ft/NM', 2.5016, '152 ft/NM = 2.5 %'],
    [measure.ANGLE, '3 deg', 3, '3°'],
    [measure.DISTANCE, '18.52 km', 10, '18.52 km = 10 NM'],
  ])('$name $1', (kind, text, value, understood) => {
    const read = parseQuantity(kind, text);
    expect(read).toMatchObject({ ok: true, value: { understood } });
    expect(read.ok && read.value.value).toBeCloseTo(value, 3);
  });
  it('has a unit or none is assumed', () => {
    expect(parseQuantity(measure.SPEED, '210')).toEqual({
      ok: false,
      error: { sentence: '210 has no unit: type 210 kt or 210 m/s.', instead: ['210 kt', '210 m/s'] },
    });
    expect(parseQuantity(measure.SPEED, '210', { unit: 'kt' })).toMatchObject({ ok: true, value: { value: 210 } });
  });
  it('has one unit', () => {
    expect(parseQuantity(measure.LEVEL, 'FL 100 kt')).toMatchObject({ ok: false, error: { instead: [] } });
  });
  it('reads every unit it writes, of every measure', () => {
    for (const kind of measure.MEASURES) {
      for (const unit of kind.units) {
        const text = unit.before ? `${unit.sign} 12` : `${formatNumber(12)} ${unit.sign}`;
        expect(parseQuantity(kind, text), text).toMatchObject({ ok: true, value: { unit: unit.sign } });
      }
    }
  });
  it('never crashes on what is typed', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...measure.MEASURES),
        fc.string({ unit: 'grapheme', maxLength: 30 }),
        (kind, text) => {
          const read = parseQuantity(kind, text);
          expect(read.ok ? Number.isFinite(read.value.value) : read.error.sentence.endsWith('.')).toBe(true);
        },
      ),
      { numRuns: 3000 },
    );
  });
});
