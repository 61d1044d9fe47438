// Makers of witnesses, so that every rule shows the same kind of thing in the same way.
import type { Witness } from './finding.ts';

/** The words from `from` up to, not including, `to` in the text of a field. */
export function wordsOf(field: string, text: string, from = 0, to = text.length): Witness {
  return { kind: 'text', field, span: { from, to }, quote: text.slice(from, to) };
}

export const absent = (field: string): Witness => ({ kind: 'absent', field });

export const inOrder = (first: string, second: string, says: string): Witness => ({
  kind: 'order',
  first,
  second,
  says,
});
