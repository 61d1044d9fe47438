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

/** `['steps', 3, 'do']` as `steps[3].do`. */
export function pathText(path: readonly (string | number)[]): string {
  return path.map((key, i) => (typeof key === 'number' ? `[${key}]` : i === 0 ? key : `.${key}`)).join('');
}
