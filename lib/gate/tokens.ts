/** Cuts the text of a gate into words, numbers, quoted texts and signs. Every character ends up in a token or between. */
import { parseDecimal } from '../units/decimal.ts';
import type { GateProblem, Span } from './syntax.ts';
import { RESERVED } from './words.ts';

export type Token = {
  readonly kind: 'word' | 'number' | 'text' | 'sign' | 'unknown' | 'end';
  /** As typed; of a quoted text what is between the quotes; of a sign its printed form. */
  readonly text: string;
  readonly value: number;
  readonly span: Span;
};

const SPACE = /[\s\u00a0\u2007\u2009\u202f]+/uy;
// Figures with what people put between them; three figures after a space are thousands.
const NUMBER = /(?:\d+(?:[ \u00a0\u2007\u2009\u202f]\d{3}(?!\d))*(?:[.,'’]\d+)*|\.\d+)/uy;
const RATE = /ft\/min\b/iuy;
const CHUNK = /[\p{L}_][\p{L}\p{N}_]*/uy;
const TAIL = /-[\p{L}\p{N}_]+/uy;
const SIGN = />=|=>|<=|=<|°C|°c|[≥≤<>=()+\-−–,/%°]/uy;
const PRINTED_SIGN: Readonly<Record<string, string>> = {
  '≥': '>=',
  '=>': '>=',
  '≤': '<=',
  '=<': '<=',
  '−': '-',
  '–': '-',
  '°c': '°C',
};
const CLOSING: Readonly<Record<string, string>> = { '"': '"', '“': '”', '„': '“' };
export const SPEED = /^V(?:1|R|2|REF|APP|MM|FE|SR|LO|LE|MO|MCA|MCG)$|^M(?:MO|LE)$/iu;

const match = (pattern: RegExp, text: string, at: number): string | null => {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0] ?? null;
};

/** The tokens, the last of kind `end`, and what is wrong with numbers and quotes. */
export function tokens(text: string): { readonly tokens: readonly Token[]; readonly problems: readonly GateProblem[] } {
  const found: Token[] = [];
  const problems: GateProblem[] = [];
  let at = 0;
  const push = (kind: Token['kind'], to: number, said: string, value = Number.NaN): void => {
    found.push({ kind, text: said, value, span: { from: at, to } });
    at = to;
  };
  while (at < text.length) {
    const space = match(SPACE, text, at);
    if (space !== null) {
      at += space.length;
      continue;
    }
    const first = text[at] ?? '';
    if (first in CLOSING) {
      const quoted = readQuoted(text, at);
      if (!quoted.closed) problems.push(unclosedQuote(text, at));
      push('text', quoted.to, quoted.said);
      continue;
    }
    const digits = match(NUMBER, text, at);
    if (digits !== null) {
      const read = readNumber(digits, { from: at, to: at + digits.length });
      if (read.problem) problems.push(read.problem);
      push('number', at + digits.length, digits, read.value);
      continue;
    }
    const word = match(RATE, text, at) ?? readWord(text, at, found.at(-1));
    if (word !== null) {
      push('word', at + word.length, word);
      continue;
    }
    const sign = match(SIGN, text, at);
    if (sign !== null) push('sign', at + sign.length, PRINTED_SIGN[sign] ?? sign);
    else push('unknown', at + (text.codePointAt(at)! > 0xffff ? 2 : 1), String.fromCodePoint(text.codePointAt(at)!));
  }
  push('end', text.length, '');
  return { tokens: found, problems };
}

// `climb-thrust`, `GA-01` and `RATE-DN` are one word each; `V2-10`, `F18-5` after a speed, and `target-3` are subtractions.
function readWord(text: string, at: number, before: Token | undefined): string | null {
  const head = match(CHUNK, text, at);
  if (head === null) return null;
  const ofSpeed = before?.kind === 'word' && SPEED.test(before.text);
  const subtracts = ofSpeed || SPEED.test(head) || RESERVED.has(head);
  let word = head;
  for (let tail = match(TAIL, text, at + word.length); tail !== null; tail = match(TAIL, text, at + word.length)) {
    if (subtracts && /^-\d/u.test(tail)) break;
    word += tail;
  }
  return word;
}

function readNumber(digits: string, span: Span): { value: number; problem: GateProblem | null } {
  if (/^\d{1,9}$/u.test(digits)) return { value: Number(digits), problem: null };
  const read = parseDecimal(digits);
  if (read.ok) return { value: read.value, problem: null };
  const [text] = read.error.instead;
  const fix = text === undefined ? null : { span, text, says: `write ${text}` };
  const value = text === undefined ? Number.NaN : Number(text.replaceAll(' ', ''));
  return {
    value: Number.isFinite(value) ? value : 0,
    problem: { code: 'number', span, message: read.error.sentence, expected: read.error.instead, fix },
  };
}

// A backslash keeps the quote or backslash behind it, so that any text can be quoted.
function readQuoted(text: string, from: number): { said: string; to: number; closed: boolean } {
  const close = CLOSING[text[from] ?? ''];
  let said = '';
  let at = from + 1;
  for (; at < text.length; at++) {
    const sign = text[at] ?? '';
    if (sign === close || (sign === '"' && close === '”')) return { said, to: at + 1, closed: true };
    if (sign === '\\' && (text[at + 1] === '"' || text[at + 1] === '\\')) at++;
    said += text[at];
  }
  return { said, to: at, closed: false };
}

function unclosedQuote(text: string, from: number): GateProblem {
  const end = { from: text.length, to: text.length };
  const close = CLOSING[text[from] ?? ''] ?? '"';
  return {
    code: 'unclosed',
    span: { from, to: text.length },
    message: `The words quoted here have no end: close them with ${close}`,
    expected: [close],
    fix: { span: end, text: close, says: 'close the quotes' },
  };
}
