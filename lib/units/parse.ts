/**
 * A quantity as a pilot types it, with what was understood said back. Nothing is guessed: a bare number has the unit
 * the field names or none at all, and a value outside the field's range is refused with the unit that would fit.
 */
import { err, ok, type Result } from '../base/result.ts';
import { type NumberProblem, parseDecimal, tidy } from './decimal.ts';
import type { FleetUnits } from './fleet.ts';
import { formatNumber } from './format.ts';
import { MASS, MEASURES, type Measure, type Unit } from './measure.ts';
import type { Kilograms } from './quantity.ts';
import { kilograms } from './quantity.ts';

export interface Understood {
  /** In the measure's kept unit: kg, kt, ft, NM, °C, hPa, °, ft/min, s, %. */
  readonly value: number;
  /** The unit that was typed, or the field's. */
  readonly unit: string;
  /** `61.1 t = 61 100 kg`: to be shown beside the field. */
  readonly understood: string;
}

export interface Field {
  /** The unit written beside the field, which a bare number has. Without it a bare number is refused. */
  readonly unit?: string;
  /** Least and most that make sense, in the kept unit. */
  readonly least?: number;
  readonly most?: number;
}

const shown = (value: number, places: number): string => {
  const text = formatNumber(value, places);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
};
const write = (value: number, unit: Unit, places = unit.places): string => {
  const figures = unit.sign === 'hPa' ? shown(value, places).replaceAll(' ', '') : shown(value, places);
  if (unit.before) return `${unit.sign} ${figures}`;
  return `${figures}${unit.sign === '°' ? '' : ' '}${unit.sign}`;
};
/** Places in which a typed value is said back: as many as anybody types. */
const AS_TYPED = 6;
const keep = (value: number, unit: Unit): number => value * unit.factor + (unit.offset ?? 0);
const release = (value: number, unit: Unit): number => (value - (unit.offset ?? 0)) / unit.factor;

const find = (measure: Measure, word: string): Unit | undefined =>
  measure.units.find((unit) => unit.sign === word) ??
  measure.units.find((unit) => unit.words.includes(word.toLowerCase()));

const list = (signs: readonly string[]): string =>
  signs.length < 2 ? signs.join('') : `${signs.slice(0, -1).join(', ')} or ${signs.at(-1)}`;

const problem = (sentence: string, instead: readonly string[] = []): Result<never, NumberProblem> =>
  err({ sentence, instead });

/** Reads one quantity of a measure. Every refusal is one sentence that says what to type instead. */
export function parseQuantity(measure: Measure, text: string, field: Field = {}): Result<Understood, NumberProblem> {
  const said = tidy(text);
  const parts = said.match(/^(?<before>[A-Za-z]*) ?(?<digits>[-+]?[\d.][\d .,'’]*(?<=[\d.,]))(?<after>(?:[^\d].*)?)$/);
  const digits = parts?.groups?.digits ?? said;
  const before = parts?.groups?.before ?? '';
  const after = (parts?.groups?.after ?? '').trim();
  const number = parseDecimal(digits);
  if (!number.ok) return withUnit(number.error, before, after);
  if (before && after) return problem(`"${said}" has two units, ${before} and ${after}: keep one.`);

  const word = before || after || field.unit || '';
  const unit = find(measure, word);
  if (word === '') {
    const offers = measure.units.map((each) => write(number.value, each, AS_TYPED));
    return problem(`${shown(number.value, AS_TYPED)} has no unit: type ${list(offers)}.`, offers);
  }
  if (!unit) return foreign(measure, word);
  return inRange(measure, unit, number.value, field);
}

function withUnit(error: NumberProblem, before: string, after: string): Result<never, NumberProblem> {
  const dress = (text: string): string => [before, text, after].filter(Boolean).join(' ');
  return problem(error.sentence, error.instead.map(dress));
}

function foreign(measure: Measure, word: string): Result<never, NumberProblem> {
  const signs = list(measure.units.map((each) => each.sign));
  const other = MEASURES.find((each) => find(each, word));
  return other
    ? problem(`${word} is the unit of ${other.name}: ${measure.name} is typed in ${signs}.`)
    : problem(`"${word}" is not a unit known here: ${measure.name} is typed in ${signs}.`);
}

function inRange(measure: Measure, unit: Unit, typed: number, field: Field): Result<Understood, NumberProblem> {
  const value = keep(typed, unit);
  const { least = -Infinity, most = Infinity } = field;
  const kept = measure.units[0];
  const inside = (candidate: number): boolean => candidate >= least && candidate <= most;
  if (!inside(value)) {
    const offers = measure.units.filter((each) => each !== unit && inside(keep(typed, each)));
    const bound =
      value < least
        ? `less than ${write(release(least, unit), unit)}`
        : `more than ${write(release(most, unit), unit)}`;
    const fits = offers.map((each) => write(typed, each, AS_TYPED));
    const hint = fits.length > 0 ? `: was ${list(fits)} meant?` : ': type a value inside the range.';
    return problem(`${write(typed, unit, AS_TYPED)} is ${bound}, the limit of this field${hint}`, fits);
  }
  const asTyped = write(typed, unit, AS_TYPED);
  return ok({ value, unit: unit.sign, understood: unit === kept ? asTyped : `${asTyped} = ${write(value, kept)}` });
}

/** A mass in kilograms. A bare number is in the fleet's unit, so 61.1 in a kg fleet is refused by a range, not guessed. */
export function parseMass(
  text: string,
  fleet: FleetUnits,
  range: { readonly least?: number; readonly most?: number } = {},
): Result<Understood & { readonly mass: Kilograms }, NumberProblem> {
  const read = parseQuantity(MASS, text, { unit: fleet.mass, ...range });
  return read.ok ? ok({ ...read.value, mass: kilograms(read.value.value) }) : read;
}
