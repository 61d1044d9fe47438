// Whether two calls can be taken for one another over noise: by their consonants, and by a "twenty" that is clipped.
import { kept } from './kept.ts';
import { plain } from './names.ts';

const TENS = new Set('twenty thirty forty fifty sixty seventy eighty ninety hundred'.split(' '));
/** Share of the sounds that may differ between two words that are still taken for one another. */
const NEAR = 0.34;

const wordsIn = kept((call: string): readonly string[] =>
  plain(call)
    .split(/[^\p{L}]+/u)
    .filter(Boolean),
);

const SPELLED: readonly (readonly [RegExp, string])[] = [
  [/ph/g, 'f'],
  [/ck/g, 'k'],
  [/igh|gh/g, ''],
  [/^kn/, 'n'],
  [/^wr/, 'r'],
  [/x/g, 'ks'],
  [/c(?=[eiy])/g, 's'],
  [/[cq]/g, 'k'],
  [/z/g, 's'],
  [/v/g, 'f'],
];

/** The consonants as they sound; a vowel counts at the beginning only. */
const sounds = kept((word: string): string => {
  const spelled = SPELLED.reduce((text, [from, to]) => text.replace(from, to), word);
  const first = /^[aeiou]/.test(spelled) ? 'a' : '';
  return first + spelled.replaceAll(/[aeiouyhw]/g, '').replaceAll(/(.)\1+/g, '$1');
});

function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    }
    row = next;
  }
  return row[b.length]!;
}

/** False for the same words: they are one call. Calls that differ in a clear word don't sound alike. */
export function soundAlike(a: string, b: string): boolean {
  const [left, right] = [wordsIn(a), wordsIn(b)];
  let from = 0;
  while (from < left.length && from < right.length && left[from] === right[from]) from += 1;
  let tail = 0;
  const room = Math.min(left.length, right.length) - from;
  while (tail < room && left[left.length - 1 - tail] === right[right.length - 1 - tail]) tail += 1;
  const ours = left.slice(from, left.length - tail);
  const theirs = right.slice(from, right.length - tail);
  if (ours.length === 0 && theirs.length === 0) return false;
  if (ours.length === 0 || theirs.length === 0) return [...ours, ...theirs].every((word) => TENS.has(word));
  if (ours.length !== theirs.length) return false;
  return ours.every((word, index) => {
    const [mine, other] = [sounds(word), sounds(theirs[index]!)];
    // One sound is too little to tell: "up" and "by".
    const length = Math.max(mine.length, other.length);
    return length > 1 && distance(mine, other) / length <= NEAR;
  });
}
