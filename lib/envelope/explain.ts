import type { Comparison } from '../gate/syntax.ts';
import type { Boundary } from './boundary.ts';
import type { Compare } from './condition.ts';
import type { Proof } from './prove.ts';

/** A figure in the trade's way: tonnes with one decimal, else whole numbers unless a decimal tells something. */
export function figureOf(value: number, unit: string): string {
  if (unit === 'kg') return `${(value / 1000).toFixed(1)} t`;
  const size = Math.abs(value);
  const places = unit === 'M' ? 2 : size >= 100 || Number.isInteger(value) ? 0 : 1;
  const text = value.toFixed(places).replace('-', '−');
  return unit === '' ? text : `${text} ${unit}`;
}

const FAILS: Readonly<Record<Comparison, string>> = {
  '<': 'reaches',
  '<=': 'exceeds',
  '=': 'differs from',
  '>=': 'is below',
  '>': 'is not above',
};
const HOLDS: Readonly<Record<Comparison, string>> = {
  '<': 'is below',
  '<=': 'does not exceed',
  '=': 'equals',
  '>=': 'is not below',
  '>': 'is above',
};

/** One sentence without a full stop, such as "VMM F0 exceeds 180 kt above 61.1 t". */
export function explain(question: Compare, proof: Proof): string {
  const left = question.leftName ?? 'the left side';
  const right = question.rightName ?? 'the right side';
  switch (proof.verdict) {
    case 'holds':
      return `${left} ${HOLDS[question.op]} ${right} everywhere`;
    case 'fails':
      return `${left} ${FAILS[question.op]} ${right} ${where(proof.from)}`.trimEnd();
    case 'undecided':
      return `whether ${left} ${HOLDS[question.op]} ${right} is not decided: ${proof.because}`;
  }
}

/** Where a condition fails: "above 61.1 t", "at every weight", "between 52.0 t and 58.0 t". */
export function where(from: Boundary | undefined): string {
  if (from === undefined) return '';
  switch (from.side) {
    case 'always':
      return `at every ${from.variable}`;
    case 'within':
      return `between ${figureOf(from.at, from.unit)} and ${figureOf(from.to, from.unit)}`;
    default:
      return `${from.side} ${figureOf(from.at, from.unit)}`;
  }
}
