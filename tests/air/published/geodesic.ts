// Topic 9, geodesy.
import { type Figure as Earth, leg, position, sphere, travel, WGS84 } from '../../../lib/air/geodesy.ts';
import { turnTo } from '../../../lib/air/wind.ts';
import { milesToMetres } from '../../../lib/units/convert.ts';
import { degrees, metres, nauticalMiles } from '../../../lib/units/quantity.ts';
import { abs, each, type Given, type Uses } from './figures.ts';

const place = (given: Given, name: string) => {
  const [latitude = Number.NaN, longitude = Number.NaN] = given.many(name);
  return position(latitude, longitude);
};
const between = (given: Given, on: Earth = WGS84) => leg(place(given, 'p1'), place(given, 'p2'), on);
/** Courses as the tests of the library print them, −180° to 180°. */
const signed = (course: number): number => turnTo(degrees(0), degrees(course));
const back = (course: number): number => (course + 180) % 360;

/** The sphere on which a minute of arc is a nautical mile. */
const MINUTE_SPHERE = sphere(metres((1852 * 60 * 180) / Math.PI));
const METRE_SPHERE = sphere(metres(6_371_000));
const ORIGIN = position(0, 0);

export const GEODESIC: Uses = {
  'geo-gs0': {
    got: (given) => [between(given).course, between(given).arriving, between(given).distance],
    within: [abs(0.5e-5), abs(0.5e-5), abs(0.5)],
  },
  'geo-gs1': {
    got: (given) => {
      const found = travel(place(given, 'p1'), degrees(given.one('azi')), metres(given.one('s')));
      return [found.at.latitude, found.at.longitude, found.arriving];
    },
    within: abs(0.5e-5),
  },
  ...each(['geo-t2', 'geo-t5'], {
    got: (given) => [between(given).distance, signed(between(given).course), signed(between(given).arriving)],
    within: [abs(1e-6), abs(1e-10), abs(1e-10)],
  }),
  'geo-eq1': { got: (given) => [between(given).distance], within: abs(0.5e-3) },
  'geo-mer': { got: (given) => [between(given).distance, 2 * between(given).distance], within: abs(1e-3) },
  'geo-antipodal': {
    got: () => {
      const over = leg(ORIGIN, position(0, 180));
      const beside = leg(ORIGIN, position(0, 179.5));
      return [over.course, over.distance, beside.course, beside.distance];
    },
    within: [abs(0.5e-5), abs(0.5), abs(0.5e-5), abs(0.5)],
  },
  'geo-vincenty-fail': {
    got: () => [leg(ORIGIN, position(0.5, 179.7)).distance, leg(ORIGIN, position(0.5, 179.5)).distance],
    want: [19944127.421, 19936288.579],
    within: abs(1e-3),
    why: 'the first is the distance another method fails to find',
  },
  'geo-flinders': {
    got: (given) => [between(given).distance, between(given).course, back(between(given).arriving)],
    within: [abs(1e-3), abs(0.01 / 3600), abs(0.01 / 3600)],
  },
  'geo-gc-camb': {
    got: (given) => {
      const found = between(given, METRE_SPHERE);
      const middle = travel(place(given, 'p1'), found.course, metres(found.distance / 2), METRE_SPHERE).at;
      return [found.distance, found.course, found.arriving, middle.latitude, middle.longitude];
    },
    within: [abs(0.5), abs(0.05), abs(0.05), abs(0.5e-4), abs(0.5e-4)],
    why: 'on the sphere the figure was made for',
  },
  'geo-lax-jfk': {
    got: (given) => [between(given, MINUTE_SPHERE).distance / 1852, between(given, MINUTE_SPHERE).course],
    within: abs(0.5),
    why: 'on the sphere the figure was made for',
  },
  'geo-lax-100': {
    got: (given) => {
      const length = milesToMetres(nauticalMiles(given.one('d_nm')));
      const found = travel(place(given, 'p1'), degrees(given.one('tc')), length, MINUTE_SPHERE).at;
      return [found.latitude, found.longitude];
    },
    want: [34 + 37 / 60, -(116 + 33 / 60)],
    within: abs(0.5 / 60),
    why: 'on the sphere the figure was made for',
  },
};
