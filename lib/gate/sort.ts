/** What sort of thing a term is: the quantity, and for heights from where they are measured. */
import { never } from '../base/assert.ts';
import type { AltitudeReference, GateUnit, Measure, NamedAltitude, Term } from './syntax.ts';

export type Quantity =
  | 'speed'
  | 'mach'
  | 'height'
  | 'climb'
  | 'thrust'
  | 'weight'
  | 'temperature'
  | 'length'
  | 'time'
  | 'angle';

export type Sort = {
  /** More than one where the unit leaves it open: metres are a height or a distance. */
  readonly quantities: readonly Quantity[];
  /** From where a height may be measured; null when it has no reference, and for everything else. */
  readonly references: readonly AltitudeReference[] | null;
  /** The distance between two heights, which can't have a reference. */
  readonly difference: boolean;
};

const UNITS: Readonly<Record<GateUnit, readonly Quantity[]>> = {
  kt: ['speed'],
  M: ['mach'],
  ft: ['height'],
  m: ['height', 'length'],
  NM: ['length'],
  km: ['length'],
  'ft/min': ['climb'],
  '%': ['thrust'],
  s: ['time'],
  min: ['time'],
  '°C': ['temperature'],
  '°': ['angle'],
  t: ['weight'],
  kg: ['weight'],
  lb: ['weight'],
};

const MEASURES: Readonly<Record<Measure, Quantity>> = {
  speed: 'speed',
  'target-speed': 'speed',
  mach: 'mach',
  'ground-speed': 'speed',
  height: 'height',
  'radio-height': 'height',
  altitude: 'height',
  'flight-level': 'height',
  'vertical-speed': 'climb',
  thrust: 'thrust',
  weight: 'weight',
  temperature: 'temperature',
  wind: 'speed',
  distance: 'length',
  deviation: 'length',
  bank: 'angle',
};

const MEASURED_FROM: Partial<Record<Measure, readonly AltitudeReference[]>> = {
  height: ['AAL'],
  'radio-height': ['radio'],
  altitude: ['MSL'],
  'flight-level': ['FL'],
};

/** The aerodrome's own figures can be told above it or above the sea; a selected altitude may be a level. */
const NAMED_FROM: Readonly<Record<NamedAltitude, readonly AltitudeReference[]>> = {
  'acceleration-altitude': ['AAL', 'MSL'],
  'climb-thrust-altitude': ['AAL', 'MSL'],
  'engine-out-acceleration-altitude': ['AAL', 'MSL'],
  'transition-altitude': ['MSL'],
  'transition-level': ['FL'],
  minima: ['AAL', 'MSL', 'radio'],
  'selected-altitude': ['MSL', 'FL'],
  'missed-approach-altitude': ['MSL'],
};

const plain = (...quantities: readonly Quantity[]): Sort => ({ quantities, references: null, difference: false });
const height = (references: readonly AltitudeReference[]): Sort => ({
  quantities: ['height'],
  references,
  difference: false,
});

/** The sort of a term. Where its parts disagree the first one counts. */
export function sortOf(term: Term): Sort {
  switch (term.kind) {
    case 'amount':
      return term.reference === null ? plain(...UNITS[term.unit]) : height([term.reference]);
    case 'speed':
      return plain(term.name === 'MMO' || term.name === 'MLE' ? 'mach' : 'speed');
    case 'altitude':
      return height(NAMED_FROM[term.name]);
    case 'target':
      return plain('thrust');
    case 'measure': {
      const from = MEASURED_FROM[term.measure];
      return from === undefined ? plain(MEASURES[term.measure]) : height(from);
    }
    case 'sum':
      // A number that is taken off has no say in it, even where it was given a reference by mistake.
      return sortOfSum(sortOf(term.left), sortOf(term.right), term.right.kind === 'amount' ? '+' : term.sign);
    case 'extreme': {
      const sorts = term.of.map(sortOf);
      return sorts.find((each) => each.references !== null) ?? sorts[0] ?? plain('speed');
    }
    default:
      return never(term);
  }
}

function sortOfSum(left: Sort, right: Sort, sign: '+' | '-'): Sort {
  const quantities = left.quantities.filter((each) => right.quantities.includes(each));
  const of = quantities.length > 0 ? quantities : left.quantities;
  if (left.references !== null && right.references !== null && sign === '-') {
    return { quantities: of, references: null, difference: true };
  }
  return {
    quantities: of,
    references: left.references ?? right.references,
    difference: left.difference || right.difference,
  };
}

/** From where both sides can be measured: the reference in which to ask for their values. Null where it does not matter. */
export function commonReference(left: Term, right: Term): AltitudeReference | null {
  const a = sortOf(left).references;
  const b = sortOf(right).references;
  if (a === null || b === null) return (a ?? b)?.[0] ?? null;
  return a.find((each) => b.includes(each)) ?? null;
}
