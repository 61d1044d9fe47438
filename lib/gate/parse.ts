/** The text of a gate, read. A half-typed text gives the part that could be understood, and what is wrong with the rest. */
import { Cursor, type Fix } from './cursor.ts';
import { event, flaps, gear, heard, judged, mode } from './leaves.ts';
import { nearest } from './nearest.ts';
import type { Gate, Parsed, Span, Term } from './syntax.ts';
import { close, DEEPEST, term } from './terms.ts';
import { type Token, tokens } from './tokens.ts';
import { typeProblems } from './typecheck.ts';
import { AXES, OPENERS } from './words.ts';

/** Longer texts are refused unread: a cue is a line. */
export const LONGEST_GATE = 2_000;

/** Reads gate notation. Never throws, whatever the text; problems stand in the order of the text. */
export function parseGate(text: string): Parsed {
  const { gate, cursor } = readGate(text);
  // What is wrong in the writing of a number isn't said a second time of its meaning.
  const said = (span: Span): boolean =>
    cursor.problems.some((each) => each.span.from < span.to && span.from < each.span.to);
  const meant = gate === null ? [] : typeProblems(gate).filter((each) => !said(each.span));
  return { gate, problems: [...cursor.problems, ...meant].sort((a, b) => a.span.from - b.span.from) };
}

/** The same, with the place where reading ended: for completion. */
export function readGate(text: string): { readonly gate: Gate | null; readonly cursor: Cursor } {
  if (text.length > LONGEST_GATE) {
    const cursor = new Cursor(tokens('').tokens, []);
    const span = { from: LONGEST_GATE, to: text.length };
    cursor.fail(
      'too-long',
      span,
      `A condition has at most ${LONGEST_GATE} characters; this one has ${text.length}`,
      [],
    );
    return { gate: null, cursor };
  }
  const read = tokens(text);
  const cursor = new Cursor(read.tokens, read.problems);
  if (cursor.peek().kind === 'end') {
    askStart(cursor);
    cursor.fail('empty', { from: 0, to: text.length }, 'No condition was typed', cursor.expected());
    return { gate: null, cursor };
  }
  const gate = any(cursor);
  const rest = cursor.peek();
  if (rest.kind !== 'end') {
    const fix = rest.text === ')' ? { span: rest.span, text: '', says: 'leave it out' } : null;
    cursor.fail('trailing', rest.span, `"${rest.text}" can't stand here`, cursor.expected(), fix);
  }
  return { gate, cursor };
}

const askStart = (c: Cursor): void => {
  c.ask(...OPENERS, '*measure', '*speed', '*altitude', '*target', '*number', '(');
};

function any(c: Cursor): Gate | null {
  return joined(c, 'any', 'or', all);
}

function all(c: Cursor): Gate | null {
  return joined(c, 'all', 'and', item);
}

function joined(c: Cursor, kind: 'all' | 'any', word: 'and' | 'or', read: (c: Cursor) => Gate | null): Gate | null {
  const from = c.peek().span;
  const parts: Gate[] = [];
  do {
    const part = read(c);
    if (part !== null) parts.push(part);
  } while (c.takeWord(word) !== null);
  return together(kind, parts, c.span({ from: from.from, to: from.from }));
}

function together(kind: 'all' | 'any', parts: readonly Gate[], span: Span): Gate | null {
  return parts.length > 1 ? { kind, of: parts, span } : (parts[0] ?? null);
}

/** One condition with its time limits. After a failure it stands at what joins the next. */
function item(c: Cursor): Gate | null {
  const first = c.peek();
  const failures = c.problems.length;
  if (++c.depth > DEEPEST) {
    c.fail('too-deep', first.span, `Brackets and "not" go deeper than ${DEEPEST}`, []);
    c.depth--;
    c.at = c.tokens.length - 1;
    return null;
  }
  let gate = primary(c, first);
  while (gate !== null && c.takeWord('within') !== null) gate = within(c, gate);
  c.depth--;
  const here = c.peek();
  const joins = here.kind === 'end' || c.sees('and') || c.sees('or') || c.seesSign(')', ',');
  if (!joins) {
    if (gate !== null && c.problems.length === failures) {
      c.ask('and', 'or');
      const near = here.kind === 'word' ? nearest(here.text, c.expected()) : null;
      const fix = near === null ? null : { span: here.span, text: near, says: `write ${near}` };
      c.fail(
        'trailing',
        here.span,
        `"${here.text}" can't follow here: join conditions with "and" or "or"`,
        c.expected(),
        fix,
      );
    }
    c.recover();
  }
  return gate;
}

function primary(c: Cursor, first: Token): Gate | null {
  askStart(c);
  if (first.kind === 'sign' && first.text === '(' && !bracketsValue(c)) return group(c);
  if (first.kind !== 'word') return comparison(c);
  const word = first.text.toLowerCase();
  switch (word) {
    case 'not':
    case 'no':
      return negated(c);
    case 'any':
    case 'all':
      return c.sees('of', 1) ? list(c, word) : comparison(c);
    case 'then':
      c.next();
      return { kind: 'then', span: first.span };
    case 'after':
      return after(c, first.span, null, false);
    case 'every':
      return every(c);
    case 'heard':
      return heard(c);
    case 'event':
      return event(c);
    case 'judged':
      return judged(c);
    case 'when':
      return whenCleared(c);
    case 'flaps':
    case 'flap':
      return flaps(c);
    case 'gear':
      return gear(c);
    case 'armed':
      return armed(c);
    case 'autopilot':
      return autopilot(c);
    case 'thrust':
    case 'lateral':
    case 'vertical': {
      const axis = AXES.find((each) => each === word)!;
      const found = mode(c, axis);
      return found === 'none' ? comparison(c) : found;
    }
    default:
      // `ALT armed`, as it is said.
      if (c.sees('armed', 1)) {
        c.next();
        c.next();
        return { kind: 'armed', word: first.text, span: c.span(first.span) };
      }
      return comparison(c);
  }
}

// `(V2 + 10 kt) <= speed`: the bracket holds a value when a value goes on behind it.
function bracketsValue(c: Cursor): boolean {
  let open = 0;
  for (let ahead = 0; c.peek(ahead).kind !== 'end'; ahead++) {
    const { kind, text } = c.peek(ahead);
    if (kind === 'sign' && text === '(') open++;
    if (kind === 'sign' && text === ')' && --open === 0) {
      const behind = c.peek(ahead + 1);
      return ['<', '<=', '=', '>=', '>', '+', '-'].includes(behind.text) || c.sees('between', ahead + 1);
    }
    if (kind === 'word' && (c.sees('and', ahead) || c.sees('or', ahead))) return false;
  }
  return false;
}

function group(c: Cursor): Gate | null {
  const open = c.next();
  const inner = any(c);
  close(c, open);
  return inner === null ? null : { ...inner, span: c.span(open.span) };
}

function list(c: Cursor, kind: 'all' | 'any'): Gate | null {
  const word = c.next();
  c.next();
  if (c.takeSign('(') === null) {
    return c.fail('expected', c.peek().span, `Write the conditions in brackets: ${kind} of (…, …)`, ['(']);
  }
  const open = c.peek();
  const parts: Gate[] = [];
  do {
    const part = any(c);
    if (part !== null) parts.push(part);
  } while (c.takeSign(',') !== null);
  close(c, open);
  return together(kind, parts, c.span(word.span));
}

function negated(c: Cursor): Gate | null {
  const first = c.next();
  const of = item(c);
  return of === null ? null : { kind: 'not', of, span: c.span(first.span) };
}

function within(c: Cursor, of: Gate): Gate | null {
  const limit = term(c);
  if (limit === null) return of;
  let step: string | null = null;
  if (c.takeWord('of') !== null) step = stepName(c);
  return { kind: 'within', of, limit, step, span: c.span(of.span) };
}

function stepName(c: Cursor): string | null {
  c.ask('*step');
  const token = c.peek();
  if (token.kind === 'word' || token.kind === 'text') return c.next().text;
  return c.fail('expected', token.span, 'A step is named by its label, such as GA-01', c.expected());
}

function after(c: Cursor, from: Span, delay: Term | null, repeated: boolean): Gate | null {
  if (c.takeWord(...(repeated ? ['from', 'after'] : ['after', 'from'])) === null) {
    return c.fail('expected', c.peek().span, 'Say from which step, such as from WD-06', c.expected());
  }
  const step = stepName(c);
  return step === null ? null : { kind: 'after', step, delay, every: repeated, span: c.span(from) };
}

function every(c: Cursor): Gate | null {
  const first = c.next();
  const delay = term(c);
  return delay === null ? null : after(c, first.span, delay, true);
}

function whenCleared(c: Cursor): Gate | null {
  const first = c.next();
  if (c.takeWord('cleared') === null) {
    return c.fail('expected', c.peek().span, 'Only "when cleared" begins with when', c.expected());
  }
  return { kind: 'judged', text: 'cleared', span: c.span(first.span) };
}

function armed(c: Cursor): Gate | null {
  const first = c.next();
  c.ask('*armed');
  const token = c.peek();
  if (token.kind === 'word' || token.kind === 'text') {
    return { kind: 'armed', word: c.next().text, span: c.span(first.span) };
  }
  return c.fail('expected', token.span, 'Say which word is armed, such as armed ROUTE', c.expected());
}

function autopilot(c: Cursor): Gate | null {
  const first = c.next();
  const state = c.takeWord('on', 'off');
  if (state === null) return c.fail('expected', c.peek().span, 'The autopilot is on or off', c.expected());
  return { kind: 'autopilot', on: state === 'on', span: c.span(first.span) };
}

const COMPARISONS = ['>=', '<=', '>', '<', '='] as const;

function comparison(c: Cursor): Gate | null {
  const first = c.peek();
  const left = term(c);
  if (left === null) return null;
  if (c.sees('after') && left.kind === 'amount') return after(c, first.span, left, false);
  if (left.kind === 'amount') c.ask('after');
  if (left.kind === 'measure') {
    const way = c.takeWord('increasing', 'decreasing');
    if (way === 'increasing' || way === 'decreasing') {
      return { kind: 'trend', measure: left.measure, way, span: c.span(first.span) };
    }
  }
  if (c.takeWord('between') !== null) return window(c, left);
  const sign = c.takeSign(...COMPARISONS);
  if (sign === null) {
    const token = c.peek();
    const near = token.kind === 'word' ? nearest(token.text, c.expected()) : null;
    const fix = near === null ? closeTo(c, left) : { span: token.span, text: near, says: `write ${near}` };
    return c.fail('expected', token.span, 'Say how it compares: >=, <=, >, <, = or between', c.expected(), fix);
  }
  const op = COMPARISONS.find((each) => each === sign)!;
  const right = term(c, left);
  return right === null ? null : { kind: 'compare', left, op, right, span: c.span(first.span) };
}

// `thrust within 1 % of target` is how it is said; the gate is the lower end of it.
function closeTo(c: Cursor, left: Term): Fix {
  const [number, unit] = [c.peek(1), c.peek(2)];
  if (!c.sees('within') || number.kind !== 'number' || !c.sees('of', 3) || !c.sees('target', 4)) return null;
  if (left.kind !== 'measure' || left.measure !== 'thrust' || unit.text !== '%') return null;
  const text = `>= target - ${number.text} %`;
  return { span: { from: c.peek().span.from, to: c.peek(4).span.to }, text, says: `write thrust ${text}` };
}

function window(c: Cursor, what: Term): Gate | null {
  const low = term(c, what);
  if (low === null) return null;
  if (c.takeWord('and') === null) {
    return c.fail('expected', c.peek().span, 'A window has two ends: between … and …', c.expected());
  }
  const high = term(c, what);
  return high === null ? null : { kind: 'window', what, low, high, span: c.span(what.span) };
}
