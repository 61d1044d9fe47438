/** What may be typed next, in the middle of a gate that isn't finished. The reader itself says what it would have taken. */
import { nameText, quoted } from './name.ts';
import { readGate } from './parse.ts';
import type { Axis } from './syntax.ts';
import { SLOTS } from './words.ts';

/** The names the sheet and the procedure lend; each may be left out. */
export type KnownNames = Partial<
  Readonly<Record<Axis | 'detents' | 'armed' | 'steps' | 'points' | 'spoken', readonly string[]>>
>;

export type Completion = {
  /** What replaces the text between `from` and `to`. */
  readonly text: string;
  readonly kind: 'word' | 'value' | 'name' | 'unit' | 'sign';
};
/** `from` to `to`: the word at the caret. Options in the order of the notation, names of the sheet first. */
export type Completions = { readonly from: number; readonly to: number; readonly options: readonly Completion[] };

const LONGER: Readonly<Record<string, string>> = {
  any: 'any of (',
  all: 'all of (',
  when: 'when cleared',
  max: 'max(',
  min: 'min(',
};
/** Understood, but never offered. */
const QUIET = new Set(['no', ')', '(', ',', '+', '-', '/']);
const VALUES = new Set(['*measure', '*speed', '*altitude', '*target']);
const PARTIAL = /(?:^|(?<=[^\p{L}\p{N}_-]))[\p{L}_][\p{L}\p{N}_]*(?:-[\p{L}\p{N}_]*)*$/u;

/** Completions at `offset` of `text`, which may be half-typed and wrong elsewhere. */
export function completeGate(text: string, offset: number, names: KnownNames = {}): Completions {
  const before = text.slice(0, Math.max(0, offset));
  const open = openQuote(before);
  if (open >= 0) return insideQuotes(text, before, open, names);
  const typed = PARTIAL.exec(before)?.[0] ?? '';
  const from = before.length - typed.length;
  const rest = /^[\p{L}\p{N}_]+/u.exec(text.slice(before.length))?.[0] ?? '';
  const slots = readGate(before.slice(0, from)).cursor.slotsAtEnd();
  const glued = typed === '' && /[\p{N}\p{L}"”°%]$/u.test(before);
  const options = slots
    .flatMap((slot) => offered(slot, names))
    .filter((each) => each.text.toLowerCase().startsWith(typed.toLowerCase()))
    .map((each) => (glued ? { ...each, text: ` ${each.text}` } : each));
  return { from, to: typed === '' ? from : before.length + rest.length, options: unique(options) };
}

const unique = (options: readonly Completion[]): readonly Completion[] => [
  ...new Map(options.map((each) => [each.text, each])).values(),
];

function offered(slot: string, names: KnownNames): readonly Completion[] {
  const named = (list: readonly string[] | undefined, quoteWords: boolean): readonly Completion[] =>
    (list ?? []).map((name) => ({ text: nameText(name, quoteWords), kind: 'name' }));
  switch (slot) {
    case '*detent':
      return named(names.detents, true);
    case '*thrust':
      return named(names.thrust, true);
    case '*lateral':
      return named(names.lateral, false);
    case '*vertical':
      return named(names.vertical, false);
    case '*armed':
      return named(names.armed, false);
    case '*step':
      return named(names.steps, false);
    case '*point':
      return named(names.points, true);
    case '*words':
      return (names.spoken ?? []).map((each) => ({ text: quoted(each), kind: 'name' }));
    case '*number':
      return [];
    default:
  }
  if (QUIET.has(slot)) return [];
  const words = SLOTS.get(slot);
  if (words !== undefined) return words.map((text) => ({ text, kind: VALUES.has(slot) ? 'value' : 'unit' }));
  if (/^[<>=]+$/u.test(slot)) return [{ text: slot, kind: 'sign' }];
  return [{ text: LONGER[slot] ?? slot, kind: 'word' }];
}

/** Where the quotation mark stands that is still open at the end of `before`; -1 when none is. */
function openQuote(before: string): number {
  let open = -1;
  for (let at = 0; at < before.length; at++) {
    const sign = before[at]!;
    if (open >= 0 && sign === '\\') at++;
    else if (sign === '"' || sign === '“' || sign === '”') open = open < 0 ? at : -1;
  }
  return open;
}

function insideQuotes(text: string, before: string, open: number, names: KnownNames): Completions {
  const typed = before.slice(open + 1).toLowerCase();
  const opener = /(\p{L}+)\s*$/u.exec(before.slice(0, open))?.[1]?.toLowerCase();
  const list = opener === 'heard' ? (names.spoken ?? []) : [];
  const options = list
    .filter((each) => each.toLowerCase().startsWith(typed))
    .map((each) => ({ text: quoted(each), kind: 'name' }) as const);
  const closes = /^[^"“”]*["”]/u.exec(text.slice(before.length))?.[0].length ?? 0;
  return { from: open, to: before.length + closes, options };
}
