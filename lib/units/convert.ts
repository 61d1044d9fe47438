/**
 * Conversions by the factors that define the units. Exact by definition: the foot 0.3048 m and the pound 0.45359237 kg
 * (international yard and pound agreement, 1959), the nautical mile 1852 m, 0 °C = 273.15 K. The inch of mercury is the conventional one,
 * 3386.389 Pa (millimetre of mercury 133.322387415 Pa × 25.4, rounded as usual in altimetry).
 * Each way rounds once or twice: a trip there and back agrees to the last bits, never more (tested at 40 digits).
 */
import {
  type Celsius,
  celsius,
  type Degrees,
  degrees,
  type Fahrenheit,
  type Feet,
  type FeetPerMinute,
  type FeetPerNauticalMile,
  type FlightLevel,
  fahrenheit,
  feet,
  feetPerMinute,
  feetPerNauticalMile,
  flightLevel,
  type Hectopascals,
  hectopascals,
  type InchesOfMercury,
  inchesOfMercury,
  type Kelvin,
  type Kilograms,
  type Knots,
  kelvin,
  kilograms,
  knots,
  type Metres,
  type MetresPerSecond,
  type Minutes,
  metres,
  metresPerSecond,
  minutes,
  type NauticalMiles,
  nauticalMiles,
  type Pascals,
  type Percent,
  type Pounds,
  type PressureAltitude,
  pascals,
  percent,
  pounds,
  pressureAltitude,
  type Radians,
  radians,
  type Seconds,
  seconds,
  type Tonnes,
  tonnes,
} from './quantity.ts';

/** Metres in a foot. */
export const FOOT = 0.3048;
/** Metres in a nautical mile. */
export const NAUTICAL_MILE = 1852;
/** Kilograms in a pound. */
export const POUND = 0.45359237;
/** Pascals in an inch of mercury. */
export const INCH_OF_MERCURY = 3386.389;
/** Kelvins at 0 °C. */
export const ICE_POINT = 273.15;

export const feetToMetres = (value: Feet): Metres => metres(value * FOOT);
export const metresToFeet = (value: Metres): Feet => feet(value / FOOT);
export const milesToMetres = (value: NauticalMiles): Metres => metres(value * NAUTICAL_MILE);
export const metresToMiles = (value: Metres): NauticalMiles => nauticalMiles(value / NAUTICAL_MILE);
export const feetToMiles = (value: Feet): NauticalMiles => nauticalMiles((value * FOOT) / NAUTICAL_MILE);
export const milesToFeet = (value: NauticalMiles): Feet => feet((value * NAUTICAL_MILE) / FOOT);

export const knotsToMetresPerSecond = (value: Knots): MetresPerSecond =>
  metresPerSecond((value * NAUTICAL_MILE) / 3600);
export const metresPerSecondToKnots = (value: MetresPerSecond): Knots => knots((value * 3600) / NAUTICAL_MILE);
export const feetPerMinuteToMetresPerSecond = (value: FeetPerMinute): MetresPerSecond =>
  metresPerSecond((value * FOOT) / 60);
export const metresPerSecondToFeetPerMinute = (value: MetresPerSecond): FeetPerMinute =>
  feetPerMinute((value * 60) / FOOT);

export const poundsToKilograms = (value: Pounds): Kilograms => kilograms(value * POUND);
export const kilogramsToPounds = (value: Kilograms): Pounds => pounds(value / POUND);
export const tonnesToKilograms = (value: Tonnes): Kilograms => kilograms(value * 1000);
export const kilogramsToTonnes = (value: Kilograms): Tonnes => tonnes(value / 1000);

export const celsiusToKelvin = (value: Celsius): Kelvin => kelvin(value + ICE_POINT);
export const kelvinToCelsius = (value: Kelvin): Celsius => celsius(value - ICE_POINT);
export const celsiusToFahrenheit = (value: Celsius): Fahrenheit => fahrenheit((value * 9) / 5 + 32);
export const fahrenheitToCelsius = (value: Fahrenheit): Celsius => celsius(((value - 32) * 5) / 9);

export const inchesToHectopascals = (value: InchesOfMercury): Hectopascals =>
  hectopascals((value * INCH_OF_MERCURY) / 100);
export const hectopascalsToInches = (value: Hectopascals): InchesOfMercury =>
  inchesOfMercury((value * 100) / INCH_OF_MERCURY);
export const hectopascalsToPascals = (value: Hectopascals): Pascals => pascals(value * 100);
export const pascalsToHectopascals = (value: Pascals): Hectopascals => hectopascals(value / 100);

export const degreesToRadians = (value: Degrees): Radians => radians((value * Math.PI) / 180);
export const radiansToDegrees = (value: Radians): Degrees => degrees((value * 180) / Math.PI);
export const minutesToSeconds = (value: Minutes): Seconds => seconds(value * 60);
export const secondsToMinutes = (value: Seconds): Minutes => minutes(value / 60);

export const levelToAltitude = (value: FlightLevel): PressureAltitude => pressureAltitude(value * 100);
export const altitudeToLevel = (value: PressureAltitude): FlightLevel => flightLevel(value / 100);

export const percentToFeetPerMile = (value: Percent): FeetPerNauticalMile =>
  feetPerNauticalMile(((value / 100) * NAUTICAL_MILE) / FOOT);
export const feetPerMileToPercent = (value: FeetPerNauticalMile): Percent =>
  percent(((value * FOOT) / NAUTICAL_MILE) * 100);
