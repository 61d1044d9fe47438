/** How a command ends. Told in format.md; other programs rely on the figures. */
export const EXIT = { clear: 0, stop: 1, unreadable: 2, notChecked: 3 } as const;

export type Exit = (typeof EXIT)[keyof typeof EXIT];

/** The gravest first: what can't be read, then a STOP, then, if asked strictly, what could not be checked. */
export function exitOf(counts: {
  readonly unreadable: number;
  readonly stops: number;
  readonly notChecked: number;
  readonly strict: boolean;
}): Exit {
  if (counts.unreadable > 0) return EXIT.unreadable;
  if (counts.stops > 0) return EXIT.stop;
  return counts.strict && counts.notChecked > 0 ? EXIT.notChecked : EXIT.clear;
}
