// Whether a procedure is for a wet or contaminated runway, and what its texts say of the runway's condition.
import type { Aerodrome } from '../library/library.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { kept } from './kept.ts';
import type { Stated } from './stated.ts';

const WET = /\b(wet|contaminated|slippery|snow|slush|ice|icy|standing water)\b/i;
const RUNWAY = /\brunway\b/i;
const CODE = /\b(?:condition )?codes? (\d)(?:( or (?:less|below|worse))|( or (?:more|above|better)))?/i;

/** Reported condition codes a text is for, lowest to highest; null where it names none. */
export const codesIn = kept((text: string): { readonly from: number; readonly to: number } | null => {
  const match = CODE.exec(text);
  if (match === null) return null;
  const code = Number(match[1]);
  return { from: match[2] === undefined ? code : 0, to: match[3] === undefined ? code : 6 };
});

/** A condition in words where a code belongs: "wet runway". */
export const isWetRunway = (text: string): boolean => WET.test(text) && (RUNWAY.test(text) || codesIn(text) !== null);

/** The procedure as a whole is for such a runway: its title, its effectivity, its entry state or its card say so. */
export function forWetRunway(procedure: Procedure, cards: readonly Aerodrome[]): boolean {
  const { title, effectivity, entry } = procedure;
  const own = [title, effectivity.note].some((text) => WET.test(text) || codesIn(text) !== null);
  return own || isWetRunway(entry.also) || cards.some((card) => WET.test(card.remark));
}

type Row = { readonly crosswind: number; readonly tailwind: number; readonly autobrake: string };

/** A stronger brake than the sheet asks for is no fault; a wind above its figure is. */
export function fits({ quantity, value }: Stated, row: Row): boolean {
  const figure = Number.parseInt(value, 10);
  if (quantity === 'tailwind limit') return figure <= row.tailwind;
  if (quantity === 'crosswind limit') return figure <= row.crosswind;
  if (quantity !== 'autobrake') return true;
  const order = ['off', 'low', 'medium', 'high', 'full', 'maximum'];
  const [said, wanted] = [order.indexOf(value), order.indexOf(row.autobrake)];
  return wanted < 0 ? value === 'off' || value === row.autobrake : said >= wanted;
}
