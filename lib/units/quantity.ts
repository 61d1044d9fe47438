/**
 * Quantities: numbers that know their unit, and the compiler keeps apart. This folder holds what a number means, how it
 * is converted, written and read. It may import base only, and knows neither air nor aircraft.
 *
 * Two marks: the unit (`Knots`), and for speeds and heights what is measured (`Cas`, `HeightAal`). A `Cas` may be
 * used where any `Knots` will do; a `Cas` and a `Tas` can't be mixed. Every constructor throws on what isn't finite.
 */
import { assert } from '../base/assert.ts';
import type { Brand } from '../base/brand.ts';

/** What a unit-bearing number measures. A second mark beside the unit; it exists for the compiler alone. */
declare const measured: unique symbol;
type Of<Unit, What extends string> = Unit & { readonly [measured]: What };

export type Knots = Brand<number, 'kt'>;
export type Mach = Brand<number, 'M'>;
export type MetresPerSecond = Brand<number, 'm/s'>;
export type FeetPerMinute = Brand<number, 'ft/min'>;
export type Feet = Brand<number, 'ft'>;
export type Metres = Brand<number, 'm'>;
export type NauticalMiles = Brand<number, 'NM'>;
/** Hundreds of feet of pressure altitude. */
export type FlightLevel = Brand<number, 'FL'>;
export type Kilograms = Brand<number, 'kg'>;
export type Pounds = Brand<number, 'lb'>;
export type Tonnes = Brand<number, 't'>;
export type Celsius = Brand<number, '°C'>;
export type Fahrenheit = Brand<number, '°F'>;
export type Kelvin = Brand<number, 'K'>;
/** A difference of temperature, as in ISA+15. */
export type Deviation = Brand<number, 'ISA'>;
export type Hectopascals = Brand<number, 'hPa'>;
export type Pascals = Brand<number, 'Pa'>;
export type InchesOfMercury = Brand<number, 'inHg'>;
export type KilogramsPerCubicMetre = Brand<number, 'kg/m³'>;
export type Degrees = Brand<number, '°'>;
export type Radians = Brand<number, 'rad'>;
export type DegreesPerSecond = Brand<number, '°/s'>;
export type Seconds = Brand<number, 's'>;
export type Minutes = Brand<number, 'min'>;
/** Rise over run times 100. */
export type Percent = Brand<number, '%'>;
export type FeetPerNauticalMile = Brand<number, 'ft/NM'>;
/** Lift over weight. */
export type LoadFactor = Brand<number, 'g'>;

/** Indicated speed, instrument and position error taken as nil: the sheet's speeds are calibrated. */
export type Cas = Of<Knots, 'calibrated'>;
export type Eas = Of<Knots, 'equivalent'>;
export type Tas = Of<Knots, 'true'>;
export type GroundSpeed = Of<Knots, 'ground'>;

/** Above aerodrome level. */
export type HeightAal = Of<Feet, 'AAL'>;
/** By radio altimeter, above what is underneath. */
/** Above mean sea level. */
export type AltitudeMsl = Of<Feet, 'MSL'>;
export type PressureAltitude = Of<Feet, 'pressure'>;
export type DensityAltitude = Of<Feet, 'density'>;

const of =
  <Q extends number>(unit: string) =>
  (value: number): Q => {
    assert(Number.isFinite(value), `${value} ${unit} is not a quantity`);
    return value as Q;
  };

export const knots = of<Knots>('kt');
export const mach = of<Mach>('Mach');
export const metresPerSecond = of<MetresPerSecond>('m/s');
export const feetPerMinute = of<FeetPerMinute>('ft/min');
export const feet = of<Feet>('ft');
export const metres = of<Metres>('m');
export const nauticalMiles = of<NauticalMiles>('NM');
export const flightLevel = of<FlightLevel>('FL');
export const kilograms = of<Kilograms>('kg');
export const pounds = of<Pounds>('lb');
export const tonnes = of<Tonnes>('t');
export const celsius = of<Celsius>('°C');
export const fahrenheit = of<Fahrenheit>('°F');
export const kelvin = of<Kelvin>('K');
export const deviation = of<Deviation>('°C of deviation');
export const hectopascals = of<Hectopascals>('hPa');
export const pascals = of<Pascals>('Pa');
export const inchesOfMercury = of<InchesOfMercury>('inHg');
export const kilogramsPerCubicMetre = of<KilogramsPerCubicMetre>('kg/m³');
export const degrees = of<Degrees>('°');
export const radians = of<Radians>('rad');
export const degreesPerSecond = of<DegreesPerSecond>('°/s');
export const seconds = of<Seconds>('s');
export const minutes = of<Minutes>('min');
export const percent = of<Percent>('%');
export const feetPerNauticalMile = of<FeetPerNauticalMile>('ft/NM');
export const loadFactor = of<LoadFactor>('g');

export const cas = of<Cas>('kt CAS');
export const eas = of<Eas>('kt EAS');
export const tas = of<Tas>('kt TAS');
export const groundSpeed = of<GroundSpeed>('kt GS');
export const altitudeMsl = of<AltitudeMsl>('ft MSL');
export const pressureAltitude = of<PressureAltitude>('ft of pressure altitude');
export const densityAltitude = of<DensityAltitude>('ft of density altitude');
