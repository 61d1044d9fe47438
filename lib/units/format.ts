/**
 * Quantities as the trade writes them: number, unit, reference. Thousands are set apart by a space, the decimal sign is
 * a point, the minus a hyphen: this text is also what is typed, filed and searched. For the printed page `typeset`
 * swaps in the spaces that don't break and the true minus.
 */
import {
  feetToMetres,
  hectopascalsToInches,
  kilogramsToPounds,
  kilogramsToTonnes,
  metresToMiles,
  radiansToDegrees,
} from './convert.ts';
import type { FleetUnits } from './fleet.ts';
import type {
  Celsius,
  Degrees,
  Deviation,
  Feet,
  FeetPerMinute,
  FlightLevel,
  Hectopascals,
  Kilograms,
  Knots,
  Mach,
  Metres,
  NauticalMiles,
  Percent,
  Radians,
  Seconds,
} from './quantity.ts';

/** What a height or altitude is measured from. A radio height says RA. */
export type HeightReference = 'AAL' | 'MSL' | 'RA';

/**
 * A decimal with a fixed number of places, thousands apart: `1 000`, `-28`, `78.6`. Rounds to nearest, halves away from
 * zero; what rounds to nothing has no sign.
 */
export function formatNumber(value: number, places = 0): string {
  if (!Number.isFinite(value)) return String(value);
  if (Math.abs(value) >= 1e21) return value.toExponential(Math.min(places, 6));
  const [whole = '0', fraction] = Math.abs(value).toFixed(places).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ' ');
  const digits = fraction === undefined ? grouped : `${grouped}.${fraction}`;
  return value < 0 && /[1-9]/.test(digits) ? `-${digits}` : digits;
}

const signed = (value: number, places = 0): string => {
  const text = formatNumber(value, places);
  return text.startsWith('-') || !/[1-9]/.test(text) ? text : `+${text}`;
};

/** `210 kt` */
export const formatSpeed = (value: Knots, places = 0): string => `${formatNumber(value, places)} kt`;
/** `+5 kt`: a margin or an additive. */
export const formatMargin = (value: Knots, places = 0): string => `${signed(value, places)} kt`;
/** `M 0.81` */
export const formatMach = (value: Mach, places = 2): string => `M ${formatNumber(value, places)}`;
/** `1 000 ft AAL`; without a reference it is a difference of heights: `777 ft`. */
export const formatHeight = (value: Feet, reference?: HeightReference): string =>
  reference === undefined ? `${formatNumber(value)} ft` : `${formatNumber(value)} ft ${reference}`;
/** `FL 100`, `FL 085` */
export const formatLevel = (value: FlightLevel): string => `FL ${formatNumber(value).padStart(3, '0')}`;
/** `-700 ft/min`, `+4 190 ft/min` */
export const formatRate = (value: FeetPerMinute): string => `${signed(value)} ft/min`;
/** `2.4 %` */
export const formatPercent = (value: Percent, places = 1): string => `${formatNumber(value, places)} %`;

/** `78.6 t` */
export const formatTonnes = (value: Kilograms, places = 1): string =>
  `${formatNumber(kilogramsToTonnes(value), places)} t`;
/** `61 100 kg` or `134 702 lb`, as the fleet counts. */
export const formatMass = (value: Kilograms, fleet: FleetUnits): string =>
  fleet.mass === 'kg' ? `${formatNumber(value)} kg` : `${formatNumber(kilogramsToPounds(value))} lb`;
/** `1013 hPa` or `29.92 inHg`, as the fleet sets its altimeters. Four figures of hPa are written together. */
export const formatPressure = (value: Hectopascals, fleet: FleetUnits): string =>
  fleet.pressure === 'hPa'
    ? `${formatNumber(value).replaceAll(' ', '')} hPa`
    : `${formatNumber(hectopascalsToInches(value), 2)} inHg`;

/** `-28 °C` */
export const formatTemperature = (value: Celsius, places = 0): string => `${formatNumber(value, places)} °C`;
/** `ISA+15`, `ISA-8`, `ISA` */
export const formatDeviation = (value: Deviation): string => {
  const text = signed(value);
  return text === '0' ? 'ISA' : `ISA${text}`;
};

/** `8.3 NM` */
export const formatMiles = (value: NauticalMiles, places = 1): string => `${formatNumber(value, places)} NM`;
/** `2 150 m`: runway and visibility. */
export const formatMetres = (value: Metres): string => `${formatNumber(value)} m`;
export const formatMetresAsMiles = (value: Metres, places = 1): string => formatMiles(metresToMiles(value), places);
export const formatFeetAsMetres = (value: Feet): string => formatMetres(feetToMetres(value));
/** `3.0°`: a path or a bank. */
export const formatAngle = (value: Degrees, places = 0): string => `${formatNumber(value, places)}°`;
export const formatRadians = (value: Radians, places = 0): string => formatAngle(radiansToDegrees(value), places);
/** `081°`, `360°`: a course or a heading, three figures, north is 360. */
export const formatCourse = (value: Degrees): string => {
  const whole = ((Math.round(value) % 360) + 360) % 360;
  return `${String(whole === 0 ? 360 : whole).padStart(3, '0')}°`;
};
/** `220/30 kt`: from where it blows, and how strong; `calm` below half a knot. */
export const formatWind = (from: Degrees, speed: Knots): string =>
  Math.round(speed) === 0 ? 'calm' : `${formatCourse(from).slice(0, 3)}/${formatSpeed(speed)}`;

/** `26 s`, `2 min 05 s`: a time in a procedure. */
export function formatSeconds(value: Seconds): string {
  const whole = Math.round(Math.abs(value));
  const sign = value < 0 && whole > 0 ? '-' : '';
  if (whole < 120) return `${sign}${whole} s`;
  return `${sign}${formatNumber(Math.floor(whole / 60))} min ${String(whole % 60).padStart(2, '0')} s`;
}

/** `14:05Z`: a time of day is UTC, cut to the minute and not rounded, as clocks are read. */
export const formatTime = (at: Date): string => `${at.toISOString().slice(11, 16)}Z`;
/** `2026-11-25 14:05Z` */
export const formatMoment = (at: Date): string => `${at.toISOString().slice(0, 10)} ${formatTime(at)}`;

/** For the printed page: narrow no-break space in numbers, no-break space before a unit, true minus. */
export const typeset = (text: string): string =>
  text
    .replace(/(?<=\d) (?=\d{3}(?!\d))/g, '\u202f')
    .replace(/(?<=\d) (?=(?:kt|ft|NM|kg|lb|t|m|s|min|hPa|inHg|°C|%)(?![a-z]))/g, '\u00a0')
    .replace(/(?<=\b(?:FL|M)) (?=\d)/g, '\u00a0')
    .replace(/(?<=ft) (?=(?:AAL|MSL|RA)\b)/g, '\u00a0')
    .replace(/(?<![\w\d)])-(?=\d)|(?<=\bISA)-(?=\d)/g, '\u2212');
