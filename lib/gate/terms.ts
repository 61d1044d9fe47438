/** Reads what stands on a side of a comparison: amounts, speeds, altitudes, targets, measures, sums, max and min. */
import type { Cursor, Fix } from './cursor.ts';
import { quoted } from './name.ts';
import { nearest } from './nearest.ts';
import { misplacedLevel, missingUnit, unitsAsked, valuesAsked, wrongUnit } from './problem.ts';
import type { AltitudeReference, GateUnit, SpeedName, Term } from './syntax.ts';
import type { Token } from './tokens.ts';
import { DETENT_ALLOWED, DETENT_NEEDED, RESERVED, UNIT_WORDS } from './words.ts';

/** Deeper nesting is refused: no pilot reads it, and a hostile text must not exhaust the stack. */
export const DEEPEST = 40;

/** A term with its sums. `beside` is the other side, from which a missing unit is told. */
export function term(c: Cursor, beside: Term | null = null): Term | null {
  let left = simple(c, beside);
  while (left !== null) {
    const sign = c.takeSign('+', '-');
    if (sign === null) return left;
    const right = simple(c, left, true);
    if (right === null) return null;
    left = { kind: 'sum', sign: sign === '+' ? '+' : '-', left, right, span: c.span(left.span) };
  }
  return null;
}

function simple(c: Cursor, beside: Term | null, added = false): Term | null {
  const first = c.peek();
  c.ask('*number', ...valuesAsked(beside), 'max', 'min');
  if (first.kind === 'number') return amount(c, beside, added);
  if (c.seesSign('-') && c.peek(1).kind === 'number') return amount(c, beside, added);
  if (c.seesSign('(')) return bracket(c, beside);
  if (first.kind !== 'word') return expectedTerm(c, first);
  if (c.sees('fl')) return level(c);
  if (first.text === 'M' || (c.sees('mach') && c.peek(1).kind === 'number')) return machNumber(c);
  if ((c.sees('max') || c.sees('min')) && c.peek(1).text === '(') return extreme(c, beside);

  const meaning = c.takePhrase();
  if (meaning === null) return expectedTerm(c, first);
  switch (meaning.is) {
    case 'speed':
      return speed(c, meaning.name, first);
    case 'altitude':
      return { kind: 'altitude', name: meaning.name, span: c.span(first.span) };
    case 'target':
      return { kind: 'target', name: meaning.name, span: c.span(first.span) };
    case 'measure': {
      const of = meaning.name === 'distance' ? point(c) : null;
      return { kind: 'measure', measure: meaning.name, of, span: c.span(first.span) };
    }
  }
}

function expectedTerm(c: Cursor, token: Token): null {
  const expected = c.expected();
  if (token.kind !== 'word') {
    const said = token.kind === 'end' ? 'The condition ends' : `"${token.text}" stands`;
    return c.fail(
      'expected',
      token.span,
      `${said} where a value belongs, such as VREF, 210 kt or 400 ft AAL`,
      expected,
    );
  }
  const near = nearest(token.text, expected);
  const fix = near === null ? prose(c) : { span: token.span, text: near, says: `write ${near}` };
  const hint = near === null ? '' : `: was ${near} meant?`;
  return c.fail('unknown-word', token.span, `"${token.text}" is not a value known here${hint}`, expected, fix);
}

// Words that begin a condition and resemble nothing known describe something that no instrument shows.
function prose(c: Cursor): Fix {
  const before = c.peek(-1);
  const begins = c.at === 0 || before.text === '(' || before.text === ',' || c.sees('and', -1) || c.sees('or', -1);
  if (!begins) return null;
  const words: string[] = [];
  let end = c.peek().span;
  for (let ahead = 0; c.peek(ahead).kind === 'word' && !c.sees('and', ahead) && !c.sees('or', ahead); ahead++) {
    words.push(c.peek(ahead).text);
    end = c.peek(ahead).span;
  }
  const text = `event ${quoted(words.join(' '))}`;
  return { span: { from: c.peek().span.from, to: end.to }, text, says: `write ${text}` };
}

function bracket(c: Cursor, beside: Term | null): Term | null {
  const open = c.next();
  if (++c.depth > DEEPEST) return c.fail('too-deep', open.span, `Brackets go deeper than ${DEEPEST}`, []);
  const inner = term(c, beside);
  c.depth--;
  if (inner === null) return null;
  close(c, open);
  return { ...inner, span: c.span(open.span) };
}

/** The bracket that ends what `open` began, or a problem that says it is missing. */
export function close(c: Cursor, open: Token): void {
  if (c.takeSign(')') !== null || c.problems.at(-1)?.code === 'too-deep') return;
  const end = c.span(open.span).to;
  const fix = { span: { from: end, to: end }, text: ')', says: 'close the bracket' };
  c.fail('unclosed', open.span, 'This bracket is not closed', [')'], fix);
}

function extreme(c: Cursor, beside: Term | null): Term | null {
  const word = c.next();
  const open = c.next();
  if (++c.depth > DEEPEST) return c.fail('too-deep', open.span, `Brackets go deeper than ${DEEPEST}`, []);
  const of: Term[] = [];
  do {
    const each = term(c, of[0] ?? beside);
    if (each === null) return null;
    of.push(each);
  } while (c.takeSign(',') !== null);
  c.depth--;
  close(c, open);
  const which = word.text.toLowerCase() === 'max' ? 'max' : 'min';
  return { kind: 'extreme', which, of, span: c.span(word.span) };
}

function speed(c: Cursor, name: SpeedName, first: Token): Term {
  let detent: string | null = null;
  if (DETENT_ALLOWED.has(name)) {
    c.ask('*detent', ...(DETENT_NEEDED.has(name) ? ['indicated', 'selected'] : []));
    detent = detentName(c, DETENT_NEEDED.has(name));
    if (detent === null && DETENT_NEEDED.has(name)) {
      c.fail(
        'detent-missing',
        c.span(first.span),
        `${name} belongs to a detent: name it, such as ${name} F12`,
        c.expected(),
      );
    }
  }
  const icing = c.takeWord('icing') !== null;
  return { kind: 'speed', name, detent, icing, span: c.span(first.span) };
}

// `VMM indicated`: that of whatever detent is indicated at the time.
function detentName(c: Cursor, needed: boolean): string | null {
  const token = c.peek();
  if (token.kind === 'text') return c.next().text;
  if (token.kind !== 'word') return null;
  if (needed && (c.sees('indicated') || c.sees('selected'))) return c.next().text.toLowerCase();
  if (RESERVED.has(token.text.toLowerCase())) return null;
  if (/^\p{Lu}/u.test(token.text)) return c.next().text;
  if (!needed) return null;
  c.next();
  const text = token.text.toUpperCase();
  const fix = { span: token.span, text, says: `write ${text}` };
  c.fail(
    'unknown-word',
    token.span,
    `A detent is written as on the panel, in capitals: was ${text} meant?`,
    [text],
    fix,
  );
  return text;
}

function point(c: Cursor): string | null {
  if (c.sees('increasing') || c.sees('decreasing')) return null;
  if (c.takeWord('to', 'from') !== null) {
    c.ask('*point');
    const token = c.peek();
    if (token.kind === 'text' || (token.kind === 'word' && !RESERVED.has(token.text.toLowerCase())))
      return c.next().text;
  }
  c.fail('expected', c.peek().span, 'A distance names its point, such as distance to THRESHOLD', c.expected());
  return null;
}

function level(c: Cursor): Term | null {
  const first = c.next();
  c.ask('*number');
  const number = c.peek();
  if (number.kind !== 'number') {
    return c.fail('expected', number.span, 'A flight level has a number, such as FL 100', c.expected());
  }
  c.next();
  const span = c.span(first.span);
  const unit = c.peek();
  if (unitOf(unit) !== null) misplacedLevel(c, span, number, c.next());
  return { kind: 'amount', value: number.value * 100, unit: 'ft', reference: 'FL', span };
}

function machNumber(c: Cursor): Term | null {
  const first = c.next();
  c.ask('*number');
  const number = c.peek();
  if (number.kind !== 'number') {
    return c.fail('expected', number.span, 'A Mach number has a figure, such as M 0.78', c.expected());
  }
  c.next();
  return { kind: 'amount', value: number.value, unit: 'M', reference: null, span: c.span(first.span) };
}

const unitOf = (token: Token): GateUnit | null => {
  if (token.text === 'M' && token.kind === 'word') return 'M';
  return token.kind === 'word' || token.kind === 'sign' ? (UNIT_WORDS.get(token.text.toLowerCase()) ?? null) : null;
};

function amount(c: Cursor, beside: Term | null, added: boolean): Term {
  const first = c.peek();
  const negative = c.seesSign('-');
  if (negative) c.next();
  const number = c.next();
  const value = negative ? -number.value : number.value;
  c.ask(...unitsAsked(beside, added));
  const typed = c.peek();
  const unit = unitOf(typed);
  if (unit === null) {
    const before = c.span(first.span);
    // A word glued to the number was meant as its unit, unless it carries the sentence on.
    const meant = typed.kind === 'word' && !RESERVED.has(typed.text.toLowerCase());
    if (meant) c.next();
    const guess = meant ? wrongUnit(c, typed, beside) : missingUnit(c, before, number, beside, added);
    return { kind: 'amount', value, unit: guess, reference: null, span: c.span(first.span) };
  }
  c.next();
  return { kind: 'amount', value, unit, reference: reference(c, unit), span: c.span(first.span) };
}

function reference(c: Cursor, unit: GateUnit): AltitudeReference | null {
  if (unit !== 'ft' && unit !== 'm') return null;
  const word = c.takeWord('AAL', 'MSL', 'radio');
  // `35 ft radio height` is no comparison; `radio` after an amount belongs to it.
  if (word === 'AAL' || word === 'MSL' || word === 'radio') return word;
  return null;
}
