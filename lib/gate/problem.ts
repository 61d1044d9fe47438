/** The sentences for what is wrong with an amount, each with the correction where it is certain. */
import type { Cursor } from './cursor.ts';
import { nearest } from './nearest.ts';
import { sortOf } from './sort.ts';
import type { GateUnit, Measure, Span, Term } from './syntax.ts';
import type { Token } from './tokens.ts';
import { MEASURE_WORDS, UNIT_WORDS } from './words.ts';

const UNITS: Readonly<Record<Measure, readonly GateUnit[]>> = {
  speed: ['kt'],
  'target-speed': ['kt'],
  mach: ['M'],
  'ground-speed': ['kt'],
  height: ['ft', 'm'],
  'radio-height': ['ft', 'm'],
  altitude: ['ft', 'm'],
  'flight-level': ['ft'],
  'vertical-speed': ['ft/min'],
  thrust: ['%'],
  weight: ['t', 'kg', 'lb'],
  temperature: ['°C'],
  wind: ['kt'],
  distance: ['NM', 'km', 'm'],
  deviation: ['NM', 'km', 'm'],
  bank: ['°'],
};
/** The units in which a measure is written, the usual one first. */
export const unitsOf = (measure: Measure): readonly GateUnit[] => UNITS[measure];

/** The measure a term is a value of, as far as one word can say; null for an amount. */
export function measureOf(term: Term | null): Measure | null {
  switch (term?.kind) {
    case 'measure':
      return term.measure;
    case 'speed':
      return term.name === 'MMO' || term.name === 'MLE' ? 'mach' : 'speed';
    case 'altitude':
      return term.name === 'transition-level' ? 'flight-level' : term.name === 'minima' ? 'height' : 'altitude';
    case 'target':
      return 'thrust';
    case 'sum':
      return measureOf(term.left) ?? measureOf(term.right);
    case 'extreme':
      return term.of.reduce<Measure | null>((found, each) => found ?? measureOf(each), null);
    default:
      return null;
  }
}

const REFERENCE: Partial<Record<Measure, string>> = { height: ' AAL', altitude: ' MSL' };

/** The units to offer behind a number, with the reference of a height that stands alone. */
export function unitsAsked(beside: Term | null, added: boolean): readonly string[] {
  const measure = measureOf(beside);
  if (measure === null || measure === 'flight-level' || measure === 'mach') return ['*unit'];
  const plain = beside?.kind === 'measure' && !added;
  return UNITS[measure].map((unit) => `${unit}${plain ? (REFERENCE[measure] ?? '') : ''}`);
}

/** What may stand beside a term: speeds beside a speed, altitudes beside an altitude. */
export function valuesAsked(beside: Term | null): readonly string[] {
  if (beside === null) return ['*speed', '*altitude', '*target', '*measure', 'FL', 'M'];
  switch (sortOf(beside).quantities[0]) {
    case 'speed':
      return ['*speed', MEASURE_WORDS.speed, MEASURE_WORDS['target-speed'], MEASURE_WORDS['ground-speed']];
    case 'mach':
      return ['M', 'MMO', 'MLE', MEASURE_WORDS.mach];
    case 'height':
      return ['*altitude', 'FL'];
    case 'thrust':
      return ['*target'];
    default:
      return [];
  }
}

/** Says that `number` has no unit; answers with the unit to read on with. */
export function missingUnit(c: Cursor, span: Span, number: Token, beside: Term | null, added: boolean): GateUnit {
  const measure = measureOf(beside);
  if (measure === null) {
    const kt = {
      span: { from: span.to, to: span.to },
      text: ' kt',
      says: `write ${number.text} kt, if a speed is meant`,
    };
    const bare = beside === null ? kt : null;
    c.fail('unit-missing', span, `${number.text} has no unit: a speed, a height or a distance?`, c.expected(), bare);
    return 'kt';
  }
  const units = unitsOf(measure);
  const unit = units[0]!;
  const named = beside?.kind === 'measure' || beside?.kind === 'sum';
  const text =
    measure === 'flight-level' && !added
      ? `FL ${number.text}`
      : unit === 'M'
        ? `M ${number.text}`
        : `${number.text} ${unit}${added || !named ? '' : (REFERENCE[measure] ?? '')}`;
  // Tonnes or pounds is for the writer to say.
  const fix = measure === 'weight' ? null : { span: number.span, text, says: `write ${text}` };
  const offer = units.length > 1 && measure === 'weight' ? units.join(', ') : text;
  c.fail('unit-missing', span, `${number.text} has no unit: write ${offer}`, c.expected(), fix);
  return unit;
}

/** Says that the word after a number is no unit; answers with the unit to read on with. */
export function wrongUnit(c: Cursor, typed: Token, beside: Term | null): GateUnit {
  const measure = measureOf(beside);
  const units = measure === null ? [...new Set(UNIT_WORDS.values())] : unitsOf(measure);
  const near = measure !== null && units.length === 1 ? units[0]! : nearest(typed.text, units);
  const fix = near === null ? null : { span: typed.span, text: near, says: `write ${near}` };
  const hint = near === null ? `: write ${units.join(', ')}` : `: was ${near} meant?`;
  c.fail('unit-wrong', typed.span, `"${typed.text}" is not a unit known here${hint}`, units, fix);
  return units.find((unit) => unit === near) ?? units[0] ?? 'kt';
}

/** `FL 100 kt`: a level has no unit. */
export function misplacedLevel(c: Cursor, level: Span, number: Token, unit: Token): void {
  const text = `FL ${number.text}`;
  const fix = { span: { from: level.from, to: unit.span.to }, text, says: `write ${text}` };
  c.fail('unit-wrong', unit.span, `A flight level has no unit: write ${text} alone`, [], fix);
}
