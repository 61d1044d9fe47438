// Topic 2, airspeed conversions, and the temperatures of topic 10.
import {
  casToEas,
  casToMach,
  casToTas,
  crossover,
  impactPressure,
  impactRatio,
  machToTas,
} from '../../../lib/air/airspeed.ts';
import { staticTemperature, totalTemperature } from '../../../lib/air/total-temperature.ts';
import { plain } from '../../../lib/base/arithmetic.ts';
import {
  celsiusToFahrenheit,
  celsiusToKelvin,
  fahrenheitToCelsius,
  levelToAltitude,
  metresPerSecondToKnots,
} from '../../../lib/units/convert.ts';
import {
  cas,
  celsius,
  type Fahrenheit,
  fahrenheit,
  flightLevel,
  mach,
  metresPerSecond,
  pressureAltitude,
} from '../../../lib/units/quantity.ts';
import { POUND_PER_SQUARE_FOOT, STATUTE_MILE } from './atmosphere.ts';
import { abs, each, type Given, rel, type Uses } from './figures.ts';

const MILLIMETRE_OF_MERCURY = 133.322387415;
const fromKmh = (speed: number) => cas(metresPerSecondToKnots(metresPerSecond(speed / 3.6)));
const fromMph = (speed: number) => cas(metresPerSecondToKnots(metresPerSecond((speed * STATUTE_MILE) / 3600)));
const toMph = (knots: number): number => (knots * 1852) / STATUTE_MILE;
const still = (indicated: Fahrenheit, m: number, recovery: number): number =>
  celsiusToFahrenheit(staticTemperature(fahrenheitToCelsius(indicated), mach(m), recovery));

/** Mach number of a true speed in air whose own temperature follows from it: a fixed point, near in a few rounds. */
function stillFromTas(given: Given): number {
  const speed = given.one('tas_kmh') / 3.6;
  let t = celsiusToKelvin(fahrenheitToCelsius(fahrenheit(given.one('tat_F'))));
  const indicated = fahrenheitToCelsius(fahrenheit(given.one('tat_F')));
  for (let round = 0; round < 60; round++) {
    const m = mach(speed / Math.sqrt(1.4 * 287.05287 * t));
    t = celsiusToKelvin(staticTemperature(indicated, m, given.one('k')));
  }
  return celsiusToFahrenheit(celsius(t - 273.15));
}

export const AIRSPEED: Uses = {
  'qc-244kt': { got: (given) => [impactPressure(cas(given.one('cas_kt')))], within: rel(2e-5) },
  'qc-280kt': {
    got: (given) => [impactPressure(cas(given.one('cas_kt'))) / MILLIMETRE_OF_MERCURY],
    within: rel(2e-5),
  },
  'qc-299kmh': { got: (given) => [impactPressure(fromKmh(given.one('cas_kmh')))], within: rel(1e-5) },
  'qc-300kmh': {
    got: (given) => [impactPressure(fromKmh(given.one('cas_kmh'))) / MILLIMETRE_OF_MERCURY],
    within: rel(1e-5),
  },
  ...each(['mach-qcp-0.8', 'mach-qcp-0.999', 'mach-qcp-1'], {
    got: (given) => [impactRatio(plain, given.one('M'))],
    within: rel(1e-5),
  }),
  ...each(['aim-250-fl240', 'aim-250-fl270', 'aim-250-fl280', 'aim-250-fl290'], {
    got: (given) => [casToMach(cas(given.one('cas_kt')), levelToAltitude(flightLevel(given.one('FL'))))],
    within: abs(0.012),
    why: 'printed to two places, rounded up',
  }),
  'tas-mach-sl': {
    got: () => {
      const sea = pressureAltitude(0);
      return [machToTas(mach(1), sea), toMph(machToTas(mach(0.5), sea))];
    },
    within: rel(1e-5),
  },
  'sat-m07': {
    got: (given) => [still(fahrenheit(given.one('tat_F')), given.one('M'), given.one('k'))],
    within: rel(1e-5),
  },
  'sat-1000kmh': { got: (given) => [stillFromTas(given)], within: abs(1e-3) },
  ...each(
    ['250-78', '280-78', '300-78', '300-80', '310-84', '290-74', '340-82', '320-80'].map((pair) => `xover-${pair}`),
    {
      got: (given) => {
        const found = crossover(cas(given.one('cas_kt')), mach(given.one('M')));
        return [found.ok ? found.value : Number.NaN];
      },
      within: abs(5),
    },
  ),
  ...each(['eas-250-10000', 'eas-250-20000', 'eas-300-30000', 'eas-280-35000'], {
    got: (given) => {
      const speed = cas(given.one('cas_kt'));
      const altitude = pressureAltitude(given.one('H_ft'));
      return [casToMach(speed, altitude), casToTas(speed, altitude), casToEas(speed, altitude)];
    },
    within: rel(1e-4),
  }),
  'tat-rise': {
    got: (given) => [totalTemperature(celsius(given.one('sat_C')), mach(given.one('M')))],
    within: abs(0.05),
  },
  'sat-k': {
    got: () => [
      celsiusToKelvin(staticTemperature(celsius(15), mach(0.7), 0.8)) / celsiusToKelvin(celsius(15)),
      celsiusToKelvin(staticTemperature(celsius(-20), mach(0.5), 1)) / celsiusToKelvin(celsius(-20)),
    ],
    want: [1 / (1 + 0.2 * 0.8 * 0.49), 1 / (1 + 0.2 * 0.25)],
    within: rel(1e-14),
    why: 'a formula, tested at two points',
  },
  'qc-700mph': {
    got: (given) => [impactPressure(fromMph(given.one('cas_mph'))) / POUND_PER_SQUARE_FOOT],
    within: rel(1e-5),
  },
};
