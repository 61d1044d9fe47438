// Topic 4, cold air and altimeters; topic 7, pressure and density altitude.
import { densityAltitudeFrom, pressureAltitudeFrom } from '../../../lib/air/altimeter.ts';
import { deviationAt } from '../../../lib/air/atmosphere.ts';
import { coldCorrection, roundUp } from '../../../lib/air/cold.ts';
import { celsiusToKelvin, fahrenheitToCelsius, inchesToHectopascals } from '../../../lib/units/convert.ts';
import { altitudeMsl, celsius, fahrenheit, feet, hectopascals, inchesOfMercury } from '../../../lib/units/quantity.ts';
import { abs, each, type Given, rel, type Uses } from './figures.ts';

const SEA = altitudeMsl(0);
const inches = (setting: number) => inchesToHectopascals(inchesOfMercury(setting));

const pressureAltitudeOf = (given: Given) => {
  const setting = given.has('hPa') ? hectopascals(given.one('hPa')) : inches(given.one('inHg'));
  return pressureAltitudeFrom(altitudeMsl(given.one(given.has('elev_ft') ? 'elev_ft' : 'alt_ft')), setting);
};
const densityAltitudeOf = (given: Given) => {
  const altitude = pressureAltitudeOf(given);
  const air = given.has('oat_C') ? celsius(given.one('oat_C')) : fahrenheitToCelsius(fahrenheit(given.one('oat_F')));
  return densityAltitudeFrom(altitude, deviationAt(altitude, celsiusToKelvin(air)));
};

const coldTable = each(['cold-10', 'cold-0', 'cold--10', 'cold--20', 'cold--40', 'cold--50'], {
  got: (given) =>
    given
      .many('heights_ft')
      .map((height) => roundUp(coldCorrection(feet(height), SEA, celsius(given.one('oat_C'))), 10)),
  within: abs(0),
  why: 'every cell, rounded up to 10 ft as the table is',
});
const coldExample = (within: number, height = 'h') => ({
  got: (given: Given) => [coldCorrection(feet(given.one(height)), SEA, celsius(given.one('t')))],
  within: abs(within),
});

const tableCell = (height: number, air: number): number => roundUp(coldCorrection(feet(height), SEA, celsius(air)), 10);
const mix = (from: number, to: number, share: number): number => from + (to - from) * share;
/** The printed table read as its manual reads it, between the cells around -12 °C. */
const interpolated = (given: Given): readonly number[] => {
  const share = (given.one('h') - 1000) / 500;
  const [warm, cold] = [-10, -20].map((air) => mix(tableCell(1000, air), tableCell(1500, air), share));
  return [mix(warm as number, cold as number, (-10 - given.one('t')) / 10)];
};

export const ALTITUDE: Uses = {
  ...coldTable,
  'cold-formula': {
    got: (given) => [coldCorrection(feet(given.one('H')), SEA, celsius(given.one('t0')))],
    within: abs(1),
  },
  'cold-kmso-1': coldExample(20),
  'cold-kmso-2': { got: interpolated, within: abs(10), why: 'read between the cells of the table, as printed' },
  'cold-kmso-3': {
    ...coldExample(40),
    got: (given) => [coldCorrection(feet(Math.min(given.one('h'), 5000)), SEA, celsius(given.one('t')))],
    why: 'read from the 5 000 ft column, as printed',
  },
  'alt-1000-inch': {
    got: () => [pressureAltitudeFrom(SEA, inches(28.92)) - pressureAltitudeFrom(SEA, inches(29.92))],
    within: rel(0.1),
    why: 'a rule of thumb; the exact figure near sea level is 938 ft',
  },
  'phak-da-1': {
    got: (given) => {
      const altitude = pressureAltitudeOf(given);
      return [altitude - given.one('elev_ft'), altitude, densityAltitudeOf(given)];
    },
    within: [abs(3), abs(3), abs(100)],
  },
  'pa-1000-996': { got: (given) => [pressureAltitudeOf(given)], within: rel(1e-5) },
  'pa-29.82': { got: (given) => [pressureAltitudeOf(given)], within: abs(1) },
  ...each(['da-6000-75F', 'da-5000-0C', 'da-9080-13'], {
    got: (given) => [densityAltitudeOf(given)],
    within: abs(2),
  }),
  'da-rule': {
    got: (given) => [densityAltitudeOf(given)],
    within: abs(150),
    why: 'a rule of thumb, as near as it claims to be',
  },
};
