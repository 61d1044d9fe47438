/**
 * The standard atmosphere, from 5 000 m below the sea to 20 km, with a temperature deviation. This folder is physics
 * only: it may import base and units, and knows no aircraft, no rule and no procedure.
 *
 * Source of the formulas and constants: ISO 2533 / ICAO Doc 7488 (values from memory, checked against published tables
 * in the tests). Off the standard day pressure keeps its altitude and temperature is shifted.
 *
 * The formulas are written over `Arithmetic` in SI units (m, K, Pa, kg/m³, m/s), height being geopotential; the two
 * layers are joined by min and max, so that they hold for intervals without a case. Branded wrappers follow below.
 */
import { type Arithmetic, plain } from '../base/arithmetic.ts';
import { assert } from '../base/assert.ts';
import { feetToMetres } from '../units/convert.ts';
import {
  type Deviation,
  deviation,
  feet,
  type Kelvin,
  type KilogramsPerCubicMetre,
  kelvin,
  kilogramsPerCubicMetre,
  type Metres,
  type MetresPerSecond,
  metres,
  metresPerSecond,
  type Pascals,
  type PressureAltitude,
  pascals,
} from '../units/quantity.ts';

/** Standard acceleration of gravity, m/s². */
export const GRAVITY = 9.80665;
/** Specific gas constant of air, J/(kg K). */
export const GAS = 287.05287;
/** Ratio of specific heats of air. */
export const HEAT_RATIO = 1.4;
/** Sea level: K, Pa, kg/m³, m/s. */
export const SEA_TEMPERATURE = 288.15;
export const SEA_PRESSURE = 101_325;
export const SEA_DENSITY = SEA_PRESSURE / (GAS * SEA_TEMPERATURE);
export const SEA_SOUND = Math.sqrt(HEAT_RATIO * GAS * SEA_TEMPERATURE);
/** Fall of temperature with height below the tropopause, K/m. */
export const LAPSE = 0.0065;
/** Height of the tropopause, m, and the temperature above it, K. */
export const TROPOPAUSE = 11_000;
export const STRATOSPHERE_TEMPERATURE = SEA_TEMPERATURE - LAPSE * TROPOPAUSE;
/** Exponent of pressure over temperature below the tropopause: 5.2559. */
export const PRESSURE_EXPONENT = GRAVITY / (GAS * LAPSE);
/** Metres over which pressure falls by e above the tropopause. */
export const SCALE_HEIGHT = (GAS * STRATOSPHERE_TEMPERATURE) / GRAVITY;
/** Where these formulas hold, m. */
export const LOWEST = -5004;
export const HIGHEST = 20_000;
/** Radius by which geometric height becomes geopotential, m. */
const EARTH_RADIUS = 6_356_766;

/** K at height h m on the standard day: T = 288.15 − 0.0065 h up to 11 km, 216.65 above. */
export const standardTemperature = <N>(a: Arithmetic<N>, h: N): N =>
  a.sub(a.of(SEA_TEMPERATURE), a.mul(a.of(LAPSE), a.min(h, a.of(TROPOPAUSE))));

/** p/p0 at pressure height h m: (T/288.15)^5.2559 × exp(−(h − 11 000)/6 341.6 above 11 km). */
export const pressureRatio = <N>(a: Arithmetic<N>, h: N): N => {
  const below = a.pow(a.div(standardTemperature(a, h), a.of(SEA_TEMPERATURE)), PRESSURE_EXPONENT);
  const above = a.max(a.sub(h, a.of(TROPOPAUSE)), a.of(0));
  return a.mul(below, a.exp(a.div(above, a.of(-SCALE_HEIGHT))));
};

/** Pa at pressure height h m. */
export const pressureAt = <N>(a: Arithmetic<N>, h: N): N => a.mul(a.of(SEA_PRESSURE), pressureRatio(a, h));

/** K at pressure height h m on a day `off` K from standard. */
export const temperatureAt = <N>(a: Arithmetic<N>, h: N, off: N): N => a.add(standardTemperature(a, h), off);

/** kg/m³ of air at p Pa and t K: ρ = p/(R T). */
export const densityOf = <N>(a: Arithmetic<N>, p: N, t: N): N => a.div(p, a.mul(a.of(GAS), t));

/** ρ/ρ0 at pressure height h m on a day `off` K from standard. */
export const densityRatio = <N>(a: Arithmetic<N>, h: N, off: N): N =>
  a.mul(pressureRatio(a, h), a.div(a.of(SEA_TEMPERATURE), temperatureAt(a, h, off)));

/** m/s in air of t K: a = √(1.4 R T). */
export const soundSpeedOf = <N>(a: Arithmetic<N>, t: N): N => a.sqrt(a.mul(a.of(HEAT_RATIO * GAS), t));

/** Air at one place: what the wrappers return. */
export interface Air {
  readonly temperature: Kelvin;
  readonly pressure: Pascals;
  readonly density: KilogramsPerCubicMetre;
  readonly soundSpeed: MetresPerSecond;
  /** Temperature, pressure and density over their values at sea level on the standard day. */
  readonly theta: number;
  readonly delta: number;
  readonly sigma: number;
}

const STANDARD = deviation(0);

/** Air at a pressure altitude on a day so far from standard. Throws outside −5 004 m to 20 000 m and at or below 0 K. */
export function airAt(altitude: PressureAltitude, off: Deviation = STANDARD): Air {
  const h = heightOf(altitude);
  const temperature = temperatureAt(plain, h, off);
  assert(temperature > 0, `a deviation of ${off} °C leaves no temperature at ${altitude} ft`);
  const pressure = pressureAt(plain, h);
  const density = densityOf(plain, pressure, temperature);
  return {
    temperature: kelvin(temperature),
    pressure: pascals(pressure),
    density: kilogramsPerCubicMetre(density),
    soundSpeed: metresPerSecond(soundSpeedOf(plain, temperature)),
    theta: temperature / SEA_TEMPERATURE,
    delta: pressure / SEA_PRESSURE,
    sigma: density / SEA_DENSITY,
  };
}

/** Metres of a pressure altitude, with the limits of the atmosphere kept. */
export function heightOf(altitude: PressureAltitude): Metres {
  const h = feetToMetres(feet(altitude));
  assert(h >= LOWEST && h <= HIGHEST, `${altitude} ft is outside the atmosphere known here, -16 417 to 65 616 ft`);
  return h;
}

/** How far the day is from standard, from the temperature met at a pressure altitude. */
export const deviationAt = (altitude: PressureAltitude, temperature: Kelvin): Deviation =>
  deviation(temperature - standardTemperature(plain, heightOf(altitude)));

/** Geopotential height of a geometric one, r z/(r + z) with r 6 356 766 m (U.S. Standard Atmosphere 1976). */
export const geopotential = (z: Metres): Metres => metres((EARTH_RADIUS * z) / (EARTH_RADIUS + z));
