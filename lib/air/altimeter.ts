/**
 * Altitudes as instruments and tables give them: pressure altitude from a setting, density altitude from a temperature,
 * and the settings themselves. An altimeter shifts its scale by the standard altitude of the pressure set (ICAO Doc 7488
 * atmosphere): indicated = altitude(p) − altitude(setting).
 */
import { plain } from '../base/arithmetic.ts';
import { assert } from '../base/assert.ts';
import { hectopascalsToPascals, metresToFeet, pascalsToHectopascals } from '../units/convert.ts';
import {
  type AltitudeMsl,
  altitudeMsl,
  type DensityAltitude,
  type Deviation,
  densityAltitude,
  type Hectopascals,
  hectopascals,
  type Metres,
  metres,
  type Pascals,
  type PressureAltitude,
  pascals,
  pressureAltitude,
} from '../units/quantity.ts';
import {
  airAt,
  HIGHEST,
  heightOf,
  LAPSE,
  LOWEST,
  PRESSURE_EXPONENT,
  pressureAt,
  pressureRatio,
  SCALE_HEIGHT,
  SEA_DENSITY,
  SEA_PRESSURE,
  SEA_TEMPERATURE,
  STRATOSPHERE_TEMPERATURE,
  TROPOPAUSE,
} from './atmosphere.ts';

/** The setting at which altimeters read flight levels. */
export const STANDARD_SETTING: Hectopascals = hectopascals(1013.25);

const TROPOPAUSE_RATIO = pressureRatio(plain, TROPOPAUSE);
const TROPOPAUSE_DENSITY_RATIO = (TROPOPAUSE_RATIO * SEA_TEMPERATURE) / STRATOSPHERE_TEMPERATURE;

/** Inverse of a ratio that falls as a power of temperature up to the tropopause and exponentially above. */
function heightFor(ratio: number, atTropopause: number, exponent: number): Metres {
  const h =
    ratio >= atTropopause
      ? (SEA_TEMPERATURE / LAPSE) * (1 - ratio ** (1 / exponent))
      : TROPOPAUSE - SCALE_HEIGHT * Math.log(ratio / atTropopause);
  return metres(h);
}

/** Standard altitude of a pressure, m: the inverse of `pressureAt`. Not limited to the layers known. */
export const heightOfPressure = (p: Pascals): Metres => {
  assert(p > 0, `${p} Pa is no pressure of air`);
  return heightFor(p / SEA_PRESSURE, TROPOPAUSE_RATIO, PRESSURE_EXPONENT);
};

/** The altitude an altimeter set to 1013.25 hPa shows in air of this pressure. */
export const altitudeOfPressure = (p: Pascals): PressureAltitude => {
  const h = heightOfPressure(p);
  assert(h >= LOWEST - 1 && h <= HIGHEST + 1, `${p} Pa is outside the atmosphere known here`);
  return pressureAltitude(metresToFeet(h));
};

/** Feet by which pressure altitude exceeds altitude while the setting is this: 27 ft or so for each hPa below standard. */
const shift = (qnh: Hectopascals): number => metresToFeet(heightOfPressure(hectopascalsToPascals(qnh)));

/** Pressure altitude where an altimeter with this QNH shows this altitude. */
export const pressureAltitudeFrom = (altitude: AltitudeMsl, qnh: Hectopascals): PressureAltitude =>
  pressureAltitude(altitude + shift(qnh));

/** What an altimeter with this QNH shows at a pressure altitude. */
export const indicatedAltitude = (altitude: PressureAltitude, qnh: Hectopascals): AltitudeMsl =>
  altitudeMsl(altitude - shift(qnh));

/** QFE of an aerodrome: the pressure at its elevation when the QNH is this. */
export const qfeFrom = (elevation: AltitudeMsl, qnh: Hectopascals): Hectopascals =>
  pascalsToHectopascals(pascals(pressureAt(plain, heightOf(pressureAltitudeFrom(elevation, qnh)))));

/** QNH of an aerodrome from the pressure measured at its elevation. */
export const qnhFrom = (elevation: AltitudeMsl, qfe: Hectopascals): Hectopascals => {
  const sea = altitudeOfPressure(hectopascalsToPascals(qfe)) - elevation;
  return pascalsToHectopascals(pascals(pressureAt(plain, heightOf(pressureAltitude(sea)))));
};

/** The altitude at which the standard day has the density met here. */
export const densityAltitudeFrom = (altitude: PressureAltitude, off: Deviation): DensityAltitude => {
  const { density } = airAt(altitude, off);
  const h = heightFor(density / SEA_DENSITY, TROPOPAUSE_DENSITY_RATIO, PRESSURE_EXPONENT - 1);
  return densityAltitude(metresToFeet(h));
};
