/**
 * Do both sides of a comparison speak of the same thing? A height above the aerodrome is not an altitude above the sea, and
 * neither is a speed. Said of what was read; the reader of the text has already seen to single units.
 */

import { type Quantity, type Sort, sortOf } from './sort.ts';
import type { AltitudeReference, Gate, GateProblem, Measure, Span, Term } from './syntax.ts';
import { visitGate } from './visit.ts';
import { MEASURE_WORDS } from './words.ts';

const SAYS: Readonly<Record<Quantity, string>> = {
  speed: 'a speed',
  mach: 'a Mach number',
  height: 'a height or altitude',
  climb: 'a vertical speed',
  thrust: 'a thrust',
  weight: 'a weight',
  temperature: 'a temperature',
  length: 'a distance',
  time: 'a time',
  angle: 'an angle',
};

const list = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;

const problem = (
  code: GateProblem['code'],
  span: Span,
  message: string,
  expected: readonly string[],
  fix: GateProblem['fix'] = null,
): GateProblem => ({ code, span, message, expected, fix });

/** What is wrong with the units and references of a gate. Each comparison gives at most one problem a side. */
export function typeProblems(gate: Gate): readonly GateProblem[] {
  const found: GateProblem[] = [];
  visitGate(gate, {
    gate: (each) => {
      if (each.kind === 'compare') found.push(...compared(each.left, each.right));
      if (each.kind === 'window') found.push(...compared(each.what, each.low), ...compared(each.what, each.high));
      if (each.kind === 'within') found.push(...limit(each.limit));
      if (each.kind === 'after' && each.delay !== null) found.push(...limit(each.delay));
    },
    term: (each) => {
      if (each.kind === 'sum') found.push(...added(each));
      if (each.kind === 'extreme') for (const other of each.of.slice(1)) found.push(...compared(each.of[0]!, other));
    },
  });
  return found;
}

function limit(term: Term): readonly GateProblem[] {
  const { quantities } = sortOf(term);
  if (quantities.includes('time') || quantities.includes('length')) return [];
  return [
    problem('unit-wrong', term.span, `A delay is a time or a distance, not ${SAYS[quantities[0]!]}`, [
      's',
      'min',
      'NM',
    ]),
  ];
}

const share = <T>(a: readonly T[], b: readonly T[]): readonly T[] => a.filter((each) => b.includes(each));

function mismatch(a: Sort, b: Sort, span: Span, deed: string): readonly GateProblem[] {
  const says = (sort: Sort): string => SAYS[sort.quantities[0]!];
  const message = `${says(a)} can't be ${deed} ${says(b)}`;
  return [
    problem(
      'unit-wrong',
      span,
      message[0]!.toUpperCase() + message.slice(1),
      a.quantities.map((each) => SAYS[each]),
    ),
  ];
}

function added(sum: Term & { kind: 'sum' }): readonly GateProblem[] {
  const left = sortOf(sum.left);
  const right = sortOf(sum.right);
  const common = share(left.quantities, right.quantities);
  if (common.length === 0)
    return mismatch(left, right, sum.right.span, sum.sign === '+' ? 'added to' : 'subtracted from');
  if (!common.includes('height') || left.references === null || right.references === null) return [];
  // `altitude - selected altitude` is how far apart two altitudes are; with a number it is a slip.
  if (sum.right.kind !== 'amount' && sum.sign === '-' && share(left.references, right.references).length > 0) return [];
  const fix =
    sum.right.kind === 'amount' && sum.right.reference !== 'FL' && sum.right.reference !== null
      ? removal(sum.right, sum.right.reference)
      : null;
  return [
    problem(
      'reference-wrong',
      sum.right.span,
      'What is added or subtracted is a difference: it has no reference',
      [],
      fix,
    ),
  ];
}

const removal = (amount: Term & { kind: 'amount' }, reference: AltitudeReference): GateProblem['fix'] => {
  const span = { from: amount.span.to - reference.length - 1, to: amount.span.to };
  return { span, text: '', says: `leave out ${reference}` };
};

function compared(left: Term, right: Term): readonly GateProblem[] {
  const a = sortOf(left);
  const b = sortOf(right);
  const common = share(a.quantities, b.quantities);
  if (common.length === 0) return mismatch(b, a, right.span, 'compared with');
  if (!common.includes('height')) return [];
  if (a.references === null) return b.references === null ? [] : unreferenced(left, a, b.references);
  if (b.references === null) return unreferenced(right, b, a.references);
  if (share(a.references, b.references).length > 0) return [];
  return [otherReference(left, right, a.references, b.references)];
}

// One side has no reference: a bare number lacks one, a difference can't have one.
function unreferenced(term: Term, sort: Sort, wanted: readonly AltitudeReference[]): readonly GateProblem[] {
  if (wanted.length === 1 && wanted[0] === 'radio' && !sort.difference) return [];
  if (sort.difference) {
    return [
      problem(
        'reference-wrong',
        term.span,
        'A difference of heights is compared with a number that has no reference',
        [],
      ),
    ];
  }
  const only = wanted.length === 1 ? wanted[0]! : null;
  const end = { from: term.span.to, to: term.span.to };
  let fix: GateProblem['fix'] = null;
  if (only === 'FL' && term.kind === 'amount') {
    const text = `FL ${Math.round(term.value / 100)}`;
    if (term.value > 0 && term.unit === 'ft' && term.value % 100 === 0)
      fix = { span: term.span, text, says: `write ${text}` };
  } else if (only !== null && term.kind === 'amount')
    fix = { span: end, text: ` ${only}`, says: `measured from ${only}` };
  return [problem('reference-missing', term.span, `Say from where it is measured: ${list(wanted)}`, wanted, fix)];
}

const MEASURED: Readonly<Record<AltitudeReference, Measure>> = {
  AAL: 'height',
  MSL: 'altitude',
  radio: 'radio-height',
  FL: 'flight-level',
};

function otherReference(
  left: Term,
  right: Term,
  a: readonly AltitudeReference[],
  b: readonly AltitudeReference[],
): GateProblem {
  const measure = [left, right].find((each) => each.kind === 'measure');
  const meant = measure === left ? b : a;
  const word = meant.length === 1 ? MEASURE_WORDS[MEASURED[meant[0]!]] : null;
  const fix = measure && word ? { span: measure.span, text: word, says: `measure the ${word}` } : null;
  const message = `${list(a)} is compared with ${list(b)}: both sides must be measured from the same place`;
  return problem('reference-wrong', right.span, message, a, fix);
}
