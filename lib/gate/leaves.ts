/** Reads the conditions that are no comparison: words heard, events, judgements, flaps, gear and modes. */
import type { Cursor } from './cursor.ts';
import { quoted } from './name.ts';
import type { Axis, Gate } from './syntax.ts';
import { RESERVED } from './words.ts';

export const heard = (c: Cursor): Gate | null => {
  const read = words(c);
  return read === null ? null : { kind: 'heard', words: read.text, span: read.span };
};
export const event = (c: Cursor): Gate | null => {
  const read = words(c);
  return read === null ? null : { kind: 'event', ...read };
};
export const judged = (c: Cursor): Gate | null => {
  const read = words(c);
  return read === null ? null : { kind: 'judged', ...read };
};

// Words without quotes are taken up to what joins the next condition, and offered with their quotes.
function words(c: Cursor): { text: string; span: Gate['span'] } | null {
  const first = c.next();
  c.ask('*words');
  const token = c.peek();
  if (token.kind === 'text') return { text: c.next().text, span: c.span(first.span) };
  const bare: string[] = [];
  while (c.peek().kind !== 'end' && !c.sees('and') && !c.sees('or') && !c.seesSign(')', ',', '('))
    bare.push(c.next().text);
  const text = bare.join(' ');
  const opener = first.text.toLowerCase();
  if (text === '') {
    return c.fail('expected', token.span, `Write the words in quotes: ${opener} "…"`, c.expected());
  }
  const span = { from: token.span.from, to: c.span(first.span).to };
  const fix = { span, text: quoted(text), says: `write ${opener} ${quoted(text)}` };
  c.fail('expected', span, `Words stand in quotes: ${opener} ${quoted(text)}`, [quoted(text)], fix);
  return { text, span: c.span(first.span) };
}

function how(c: Cursor, what: string): 'indicated' | 'selected' {
  const word = c.takeWord('indicated', 'selected');
  if (word === 'indicated' || word === 'selected') return word;
  c.fail('expected', c.peek().span, `Say which: ${what} indicated, or ${what} selected`, c.expected());
  return 'indicated';
}

export function flaps(c: Cursor): Gate | null {
  const first = c.next();
  c.ask('*detent');
  const token = c.peek();
  const named = token.kind === 'text' || (token.kind === 'word' && !RESERVED.has(token.text.toLowerCase()));
  if (!named) return c.fail('expected', token.span, 'Name the detent, such as flaps F18 indicated', c.expected());
  const detent = c.next().text;
  return { kind: 'flaps', detent, how: how(c, `flaps ${detent}`), span: c.span(first.span) };
}

export function gear(c: Cursor): Gate | null {
  const first = c.next();
  const position = c.takeWord('up', 'down');
  if (position !== 'up' && position !== 'down') {
    return c.fail('expected', c.peek().span, 'The gear is up or down, such as gear up indicated', c.expected());
  }
  return { kind: 'gear', position, how: how(c, `gear ${position}`), span: c.span(first.span) };
}

/** `vertical = LIFT / ASCENT`. `none`: what stands here is a comparison of thrust. */
export function mode(c: Cursor, axis: Axis): Gate | null | 'none' {
  const first = c.peek();
  if (axis === 'vertical' && c.sees('speed', 1)) return 'none';
  const value = c.peek(2);
  const isWord = value.kind === 'text' || (value.kind === 'word' && !RESERVED.has(value.text.toLowerCase()));
  const equals = c.peek(1).kind === 'sign' && c.peek(1).text === '=';
  if (axis === 'thrust' && !(equals && isWord)) {
    if (equals && value.kind === 'end') {
      c.at += 2;
      c.ask('*thrust');
      c.at -= 2;
    }
    return 'none';
  }
  c.next();
  if (axis === 'vertical') c.ask('speed');
  if (c.takeSign('=') === null) {
    return c.fail('expected', c.peek().span, `Write the mode as ${axis} = WORD`, c.expected());
  }
  const said: string[] = [];
  do {
    c.ask(`*${axis}`);
    const token = c.peek();
    if (token.kind !== 'word' && token.kind !== 'text') {
      if (said.length > 0) break;
      return c.fail('expected', token.span, `Name the ${axis} mode`, c.expected());
    }
    said.push(c.next().text);
  } while (c.takeSign('/') !== null);
  listedWithOr(c, said);
  return { kind: 'mode', axis, words: said, span: c.span(first.span) };
}

// `vertical = LIFT or ASCENT` can be read in two ways as soon as "and" follows: modes are listed with a stroke.
function listedWithOr(c: Cursor, said: string[]): void {
  const word = c.peek(1);
  if (!c.sees('or') || word.kind !== 'word' || !/^\p{Lu}[\p{Lu}-]+$/u.test(word.text)) return;
  const behind = c.peek(2);
  if (RESERVED.has(word.text.toLowerCase()) || behind.kind === 'sign' || c.sees('armed', 2)) return;
  const or = c.next();
  said.push(c.next().text);
  const fix = { span: or.span, text: '/', says: `write / ${word.text}` };
  c.fail('expected', or.span, `Modes of one axis are listed with a stroke: / ${word.text}`, ['/'], fix);
}
