/** The one text form of a gate: the same in the editor, in files, on the command line and in print. */
import { never } from '../base/assert.ts';
import { detentText, nameText, quoted } from './name.ts';
import type { Gate, Term } from './syntax.ts';
import { ALTITUDE_WORDS, DETENT_NEEDED, MEASURE_WORDS, SPEED_WORDS } from './words.ts';

/** `speed >= VMM F12 and flaps F18 indicated`. Read back, it gives the same gate. */
export function printGate(gate: Gate): string {
  switch (gate.kind) {
    case 'compare':
      return `${printTerm(gate.left)} ${gate.op} ${printTerm(gate.right)}`;
    case 'window':
      return `${printTerm(gate.what)} between ${printTerm(gate.low)} and ${printTerm(gate.high)}`;
    case 'trend':
      return `${MEASURE_WORDS[gate.measure]} ${gate.way}`;
    case 'flaps':
      return `flaps ${nameText(gate.detent, true)} ${gate.how}`;
    case 'gear':
      return `gear ${gate.position} ${gate.how}`;
    case 'mode':
      return `${gate.axis} = ${gate.words.map((word) => nameText(word, gate.axis === 'thrust')).join(' / ')}`;
    case 'armed':
      return `armed ${nameText(gate.word, false)}`;
    case 'autopilot':
      return `autopilot ${gate.on ? 'on' : 'off'}`;
    case 'heard':
      return `heard ${quoted(gate.words)}`;
    case 'event':
      return `event ${quoted(gate.text)}`;
    case 'judged':
      return gate.text === 'cleared' ? 'when cleared' : `judged ${quoted(gate.text)}`;
    case 'then':
      return 'then';
    case 'after':
      return printAfter(gate);
    case 'within': {
      const of = gate.step === null ? '' : ` of ${nameText(gate.step, false)}`;
      return `${inside(gate.of, gate.of.kind === 'not')} within ${printTerm(gate.limit)}${of}`;
    }
    case 'not':
      return `not ${inside(gate.of)}`;
    case 'all':
      return gate.of.map((each) => inside(each)).join(' and ');
    case 'any':
      return gate.of.map((each) => inside(each)).join(' or ');
    default:
      return never(gate);
  }
}

function printAfter(gate: Gate & { kind: 'after' }): string {
  const step = nameText(gate.step, false);
  if (gate.delay === null) return `after ${step}`;
  return gate.every ? `every ${printTerm(gate.delay)} from ${step}` : `${printTerm(gate.delay)} after ${step}`;
}

// "and" beside "or" always stands in brackets, so that nobody has to know which binds closer.
function inside(gate: Gate, bracket = false): string {
  const text = printGate(gate);
  return bracket || gate.kind === 'all' || gate.kind === 'any' ? `(${text})` : text;
}

/** One side of a comparison: `VFE F18 - 5 kt`. */
export function printTerm(term: Term): string {
  switch (term.kind) {
    case 'amount':
      return printAmount(term);
    case 'speed': {
      const held = term.detent === 'indicated' || term.detent === 'selected';
      const plain = held && DETENT_NEEDED.has(term.name);
      const detent = term.detent === null ? '' : ` ${plain ? term.detent : detentText(term.detent)}`;
      return `${SPEED_WORDS[term.name]}${detent}${term.icing ? ' icing' : ''}`;
    }
    case 'altitude':
      return ALTITUDE_WORDS[term.name];
    case 'target':
      return term.name;
    case 'measure':
      return `${MEASURE_WORDS[term.measure]}${term.of === null ? '' : ` to ${nameText(term.of, true)}`}`;
    case 'sum': {
      const right = printTerm(term.right);
      return `${printTerm(term.left)} ${term.sign} ${term.right.kind === 'sum' ? `(${right})` : right}`;
    }
    case 'extreme':
      return `${term.which}(${term.of.map(printTerm).join(', ')})`;
    default:
      return never(term);
  }
}

function printAmount({ value, unit, reference }: Term & { kind: 'amount' }): string {
  if (reference === 'FL') return `FL ${figures(value / 100)}`;
  if (unit === 'M') return `M ${figures(value)}`;
  const behind = reference === null ? '' : ` ${reference}`;
  return `${figures(value)}${unit === '°' ? '' : ' '}${unit}${behind}`;
}

// Thousands apart; three places get a fourth, since `1.250` might be thousands.
function figures(value: number): string {
  const [whole = '0', fraction] = String(Math.abs(value)).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/gu, ' ');
  const places = fraction?.length === 3 ? `${fraction}0` : fraction;
  return `${value < 0 ? '-' : ''}${grouped}${places === undefined ? '' : `.${places}`}`;
}

const PRETTY: Readonly<Record<string, string>> = { '>=': '≥', '<=': '≤', '-': '−' };

/** The same for the screen, with ≥, ≤ and the true minus. It is read back as well. */
export function prettyGate(gate: Gate): string {
  // Quoted words are left as they are.
  return printGate(gate).replace(/"(?:\\.|[^"\\])*"|(?<= )(?:>=|<=)(?= )|(?<= )-(?= )|(?<=[ (])-(?=\d)/gsu, (found) =>
    found.startsWith('"') ? found : (PRETTY[found] ?? found),
  );
}
