// Finding words of a list in a text: whole words, whatever their case, the longest first.
import { withoutSpoken } from './figures.ts';
import { kept } from './kept.ts';

export type WordsFound = { readonly from: number; readonly to: number; readonly words: string };

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
const NONE: readonly WordsFound[] = [];
const finders = new WeakMap<readonly string[], (text: string) => readonly WordsFound[]>();

function finderOf(list: readonly string[]): (text: string) => readonly WordsFound[] {
  const known = finders.get(list);
  if (known !== undefined) return known;
  const longestFirst = [...list].sort((a, b) => b.length - a.length || (a < b ? -1 : 1)).map(escaped);
  const expression = new RegExp(`(?<![\\w-])(?:${longestFirst.join('|')})(?![\\w-])`, 'gi');
  const made = kept((text) => {
    const found = [...withoutSpoken(text).matchAll(expression)].map((match) => ({
      from: match.index,
      to: match.index + match[0].length,
      words: match[0],
    }));
    return found.length === 0 ? NONE : found;
  });
  finders.set(list, made);
  return made;
}

/** Where words of the list stand in the text; quoted words are spoken and not looked at. */
export function wordsIn(text: string, list: readonly string[]): readonly WordsFound[] {
  return text === '' || list.length === 0 ? NONE : finderOf(list)(text);
}

/** Verbs with which a pilot is told to do something. */
export const IMPERATIVES: readonly string[] = [
  ...['set', 'select', 'press', 'move', 'arm', 'engage', 'disengage', 'check', 'call', 'read', 'brief', 'request'],
  ...['turn', 'push', 'pull', 'switch', 'open', 'close', 'start', 'stop', 'reduce', 'increase', 'extend', 'retract'],
  ...['lower', 'raise', 'confirm', 'ensure', 'advance', 'retard', 'disconnect', 'tune', 'shut', 'lift', 'fly'],
];

/** Where a clause begins with one of the imperatives: at the start, or behind a full stop, colon, semicolon. */
export function commandsIn(text: string): readonly WordsFound[] {
  return wordsIn(text, IMPERATIVES).filter(({ from, to }) => {
    const before = text.slice(0, from).trimEnd();
    const begins = before === '' || /[.:;!]$/.test(before);
    // "Start of the descent", "Set points": a noun, not a command.
    return begins && !/^\s+(of|points?|is|are|was)\b/.test(text.slice(to));
  });
}
