// Names of procedures and lists as people write them: `instrument-approach`, `procedure go-around`, `list "Engine failed"`.
import { kept } from './kept.ts';

/** Case, spacing and the kind of dash don't make another text. */
export const plain = kept((text: string): string =>
  text
    .toLowerCase()
    .replaceAll(/[‐‑–—−]/g, '-')
    .replaceAll(/[\s\u00a0\u202f]+/g, ' ')
    .trim(),
);

const SMALL = new Set([
  'a',
  'an',
  'the',
  'of',
  'to',
  'in',
  'on',
  'and',
  'or',
  'for',
  'at',
  'with',
  'procedure',
  'checklist',
  'list',
]);

/** The words that make a name, small ones and "procedure", "list" left out; in order, each once. */
export const nameWords = kept((text: string): readonly string[] => [
  ...new Set(
    plain(text)
      .split(/[^\p{L}\p{N}.]+/u)
      .filter((word) => word !== '' && !SMALL.has(word)),
  ),
]);

/** Whether every word of the name stands in the title; a name of no words fits nothing. */
export const fitsTitle = (name: string, title: string): boolean => {
  const words = nameWords(name);
  const there = nameWords(title);
  return words.length > 0 && words.every((word) => there.includes(word));
};

const FOR_WHOM = /[,;(]?\s*\b(?:guidance\s+)?standards?\s+[A-Z0-9]+\b(?:\s*(?:,|and|or|&)\s*[A-Z0-9]\b)*\s*\)?/gi;

/** A title without the words that say for which tails it is: sister texts of one procedure have the same. */
export const variantTitle = kept((title: string): string => plain(title.replaceAll(FOR_WHOM, ' ')));
