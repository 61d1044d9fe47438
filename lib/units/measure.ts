/** What may be typed in a field: for each measure its units, the words they go by, and how each becomes the unit that is kept. */
import { FOOT, ICE_POINT, INCH_OF_MERCURY, NAUTICAL_MILE, POUND } from './convert.ts';

export interface Unit {
  /** How the unit is written back. */
  readonly sign: string;
  /** How else it may be typed, in lower case. */
  readonly words: readonly string[];
  /** True when the sign stands before the figures: FL 100, M 0.78. */
  readonly before?: true;
  /** kept = typed × factor + offset */
  readonly factor: number;
  readonly offset?: number;
  /** Places shown when the understood value is told back. */
  readonly places: number;
}

export interface Measure {
  readonly name: string;
  /** The first unit is the one that is kept. */
  readonly units: readonly [Unit, ...Unit[]];
}

const unit = (sign: string, factor: number, places: number, ...words: string[]): Unit => ({
  sign,
  words: [sign.toLowerCase(), ...words],
  factor,
  places,
});

export const MASS: Measure = {
  name: 'a mass',
  units: [
    unit('kg', 1, 0, 'kgs', 'kilogram', 'kilograms', 'kilo', 'kilos'),
    unit('t', 1000, 3, 'tonne', 'tonnes'),
    unit('lb', POUND, 0, 'lbs', 'pound', 'pounds'),
  ],
};
export const SPEED: Measure = {
  name: 'a speed',
  units: [unit('kt', 1, 1, 'kts', 'knot', 'knots'), unit('m/s', 3600 / NAUTICAL_MILE, 1, 'mps')],
};
export const MACH: Measure = {
  name: 'a Mach number',
  units: [{ sign: 'M', words: ['m', 'mach'], before: true, factor: 1, places: 3 }],
};
export const HEIGHT: Measure = {
  name: 'a height',
  units: [unit('ft', 1, 0, 'feet', 'foot', "'"), unit('m', 1 / FOOT, 0, 'metre', 'metres')],
};
export const LEVEL: Measure = {
  name: 'a flight level',
  units: [{ sign: 'FL', words: ['fl'], before: true, factor: 1, places: 0 }],
};
export const DISTANCE: Measure = {
  name: 'a distance',
  units: [unit('NM', 1, 2, 'nmi'), unit('km', 1000 / NAUTICAL_MILE, 2), unit('m', 1 / NAUTICAL_MILE, 0, 'metres')],
};
export const TEMPERATURE: Measure = {
  name: 'a temperature',
  units: [
    unit('°C', 1, 1, 'c', 'deg c'),
    { ...unit('°F', 5 / 9, 1, 'f', 'deg f'), offset: -160 / 9 },
    { ...unit('K', 1, 2), offset: -ICE_POINT },
  ],
};
export const PRESSURE: Measure = {
  name: 'an altimeter setting',
  units: [unit('hPa', 1, 1, 'mb', 'mbar'), unit('inHg', INCH_OF_MERCURY / 100, 2, 'in', 'in hg', '"')],
};
export const ANGLE: Measure = { name: 'an angle', units: [unit('°', 1, 2, 'deg', 'degrees')] };
export const RATE: Measure = {
  name: 'a rate of climb or descent',
  units: [unit('ft/min', 1, 0, 'fpm', 'feet per minute'), unit('m/s', 60 / FOOT, 1)],
};
export const DURATION: Measure = {
  name: 'a time',
  units: [unit('s', 1, 1, 'sec', 'second', 'seconds'), unit('min', 60, 2, 'minute', 'minutes')],
};
export const GRADIENT: Measure = {
  name: 'a gradient',
  units: [unit('%', 1, 2, 'percent', 'per cent'), unit('ft/NM', (FOOT / NAUTICAL_MILE) * 100, 0)],
};

export const MEASURES: readonly Measure[] = [
  MASS,
  SPEED,
  MACH,
  HEIGHT,
  LEVEL,
  DISTANCE,
  TEMPERATURE,
  PRESSURE,
  ANGLE,
  RATE,
  DURATION,
  GRADIENT,
];
