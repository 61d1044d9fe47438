// What is wrong with a file, told to the person who wrote it: where, what, what would be right. Reading never throws for
// what a file holds, and never guesses: a file is taken whole or not at all.

export type FileProblem = {
  /** From 1. For a file that can't be read as text at all: 1 and 1. */
  readonly line: number;
  /** From 1, in UTF-16 units. */
  readonly column: number;
  /** Such as `steps[3].do.verb`; '' for the file itself. */
  readonly path: string;
  readonly message: string;
  /** What may stand there; empty where the message says it all. */
  readonly expected: readonly string[];
  /** What the writer most likely meant, in words. Never applied by itself. */
  readonly fix?: string;
};

/** More problems than this are counted, not listed: the first ones usually cause the rest. */
export const PROBLEMS_SHOWN = 50;

/** The word of `known` that is at most two slips away, or null. Ties go to the first. */
export function nearest(word: string, known: readonly string[]): string | null {
  if (word.length > 60) return null;
  let best: string | null = null;
  let least = 3;
  for (const candidate of known) {
    const slips = distance(word.toLowerCase(), candidate.toLowerCase());
    if (slips < least && slips < candidate.length) {
      best = candidate;
      least = slips;
    }
  }
  return best;
}

/** Edit distance: letters put in, left out, or taken for another. */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + same));
    }
    row = next;
  }
  return row[b.length]!;
}

/** `['steps', 3, 'do']` as `steps[3].do`. */
export function pathText(path: readonly (string | number)[]): string {
  return path.map((key, i) => (typeof key === 'number' ? `[${key}]` : i === 0 ? key : `.${key}`)).join('');
}
