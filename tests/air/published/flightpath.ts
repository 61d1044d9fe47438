// Topics 4 and 7, gradients and rates of descent; topics 7 and 10, wind.
import {
  angleOfFeetPerMile,
  feetPerMileOfAngle,
  gradientOfAngle,
  heightOver,
  rateOfAngle,
  rateOfFeetPerMile,
  rateOfGradient,
} from '../../../lib/air/path.ts';
import { crosswind, headwind, holdCourse, windForCrosswind, windForHeadwind } from '../../../lib/air/wind.ts';
import { percentToFeetPerMile } from '../../../lib/units/convert.ts';
import { degrees, feetPerNauticalMile, knots, nauticalMiles, percent, tas } from '../../../lib/units/quantity.ts';
import { abs, each, type Given, type Uses } from './figures.ts';

const perMile = (gradient: number): number => percentToFeetPerMile(percent(gradient));
const sink = (given: Given): readonly number[] => [rateOfAngle(degrees(given.one('angle')), knots(given.one('gs')))];
const windOf = (given: Given) => ({ from: degrees(given.one('wind_dir')), speed: knots(given.one('wind_kt')) });
const onRunway = (given: Given) => {
  const runway = degrees(given.one('rwy_deg'));
  return [headwind(windOf(given), runway), crosswind(windOf(given), runway)] as const;
};
const components = (within: number) => ({
  got: (given: Given) => {
    const [against, across] = onRunway(given);
    return [against, Math.abs(across)];
  },
  within: abs(within),
});

export const FLIGHT_PATH: Uses = {
  'dep-icao-33': {
    got: (given) => [perMile(100 * given.one('gradient'))],
    want: [200.5],
    within: abs(0.1),
    why: 'the parts 2.5 % and 0.8 % are a rule, only the conversion is ours',
  },
  'grad-fpnm-fpm': {
    got: (given) => [rateOfFeetPerMile(feetPerNauticalMile(given.one('ftnm')), knots(given.one('gs')))],
    within: abs(1e-9),
  },
  'missed-2.5': { got: (given) => [perMile(100 * given.one('gradient'))], within: abs(0.1) },
  ...each(
    ['30', '60', '75', '120', '135', '150', '165'].map((speed) => `rod-3-${speed}`),
    { got: sink, within: abs(5) },
  ),
  ...each(['rod-2.5-90', 'rod-2.5-150', 'rod-3.5-90', 'rod-3.5-120', 'rod-3.5-150', 'rod-4.0-120', 'rod-6.0-90'], {
    got: sink,
    within: abs(10),
  }),
  'rod-318': {
    got: (given) => {
      const path = degrees(given.one('angle'));
      const lost = heightOver(nauticalMiles(1), gradientOfAngle(path));
      const profile = [1, 2, 3, 4].map((mile) => 1970 - mile * lost);
      return [feetPerMileOfAngle(path), gradientOfAngle(path), ...profile];
    },
    within: [abs(1), abs(0.005), abs(1), abs(1), abs(1.5), abs(2)],
    why: 'the printed profile loses a rounded 318 ft each mile, ours 318.4 ft',
  },
  'tod-3to1-angle': {
    got: () => [1000 / 3, angleOfFeetPerMile(feetPerNauticalMile(1000 / 3))],
    within: [abs(0.05), abs(0.01)],
  },
  'seg2-fpnm': {
    got: (given) => [
      perMile(given.one('gradient')),
      rateOfGradient(percent(given.one('gradient')), knots(given.one('gs'))),
    ],
    within: abs(0.1),
  },
  ...each(['xw-18-220-30', 'xw-25-210-25', 'xw-13-180-25'], components(0.5)),
  'xw-17-140-25': components(0.7),
  'xw-min-max': {
    got: (given) => {
      const from = degrees(given.one('rel'));
      const against = windForHeadwind(knots(10), from, degrees(0));
      return [against.ok ? against.value : Number.NaN, windForCrosswind(knots(35), from, degrees(0))];
    },
    within: abs(0.5),
  },
  'xw-adrpy': { got: onRunway, within: abs(0.005) },
  ...each(['wind-1', 'wind-2', 'wind-3'], {
    got: (given) => {
      const found = holdCourse(degrees(given.one('course')), tas(given.one('tas')), windOf(given));
      return found.ok ? [found.value.correction, found.value.groundSpeed] : [];
    },
    within: [abs(0.05), abs(0.1)],
  }),
};
