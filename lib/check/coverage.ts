// Which tails hold which standard from when, and which texts cover them.
import type { Fleet } from '../library/library.ts';

export type Held = { readonly tail: string; readonly standard: string; readonly from: string };

/** What each tail of the type holds from a day on, by tail and day; a stretch that begins earlier begins on that day. */
export function heldFrom(fleet: Fleet, type: string, today: string): readonly Held[] {
  return fleet.tails
    .filter((tail) => tail.type === type)
    .flatMap(({ registration, options }) => {
      const dated = options.filter(({ option }) => option === 'standard').sort((a, b) => (a.from < b.from ? -1 : 1));
      return dated.flatMap(({ value, from, until }, index): Held[] => {
        const end = until ?? dated[index + 1]?.from ?? null;
        if (end !== null && end <= today) return [];
        return [{ tail: registration, standard: value, from: from < today ? today : from }];
      });
    });
}

/** No standards named: all. */
export const covers = (standards: readonly string[], standard: string): boolean =>
  standards.length === 0 || standards.includes(standard);

/** `Q-SKF from 2026-03-01; Q-SKG, Q-SKH` where the latter hold it today already. */
export function tailWords(held: readonly Held[], today: string): string {
  const byDay = Map.groupBy(held, (each) => each.from);
  return [...byDay]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([from, all]) => `${all.map((each) => each.tail).join(', ')}${from === today ? '' : ` from ${from}`}`)
    .join('; ');
}

const ONLY = /\bstandards?\s+([A-Z]\b(?:(?:\s*,\s*|\s+and\s+|\s+or\s+)[A-Z]\b)*)/;

/** Standards to which words restrict a step; null: they don't speak of standards. */
export function standardsIn(only: string): readonly string[] | null {
  const named = ONLY.exec(only)?.[1];
  return named === undefined ? null : (named.match(/\b[A-Z]\b/g) ?? []);
}
