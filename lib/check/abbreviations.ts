// Abbreviations in written text, and those that need no explanation: words of the sheet, codes of aerodromes, known ones.
import { wordsOf } from '../aircraft/mode-set.ts';
import type { Sheet } from '../aircraft/sheet.ts';
import type { Library } from '../library/library.ts';
import type { Policy } from '../policy/policy.ts';
import { withoutSpoken } from './figures.ts';
import { kept } from './kept.ts';
import { plain } from './names.ts';

/** Capitals of two to five, or a word without a vowel; labels, detents and names of waypoints are neither. */
const CAPITALS = /(?<![\w-])[A-Z]{2,5}(?![\w-])/g;
const VOWELLESS = /(?<![\w.-])[B-DF-HJ-NP-TV-XZb-df-hj-np-tv-xz][b-df-hj-np-tv-xz]{2,}(?![\w-])/g;
const UNITS = new Set(['nm', 'kts', 'lbs', 'hrs', 'mph', 'fpm', 'kmh', 'rpm', 'pph']);
/** Positions and words that are shouted, not shortened. */
const WORDS = new Set(
  'UP DOWN ON OFF IN OUT OPEN SHUT AUTO ARM ARMED IDLE HOLD SET TEST LEFT RIGHT BOTH START STOP NOT NO AND OR IF MAX MIN FULL LOW HIGH NORM'.split(
    ' ',
  ),
);

export type Abbreviation = { readonly from: number; readonly words: string };

export const abbreviationsIn = kept((text: string): readonly Abbreviation[] => {
  const plain = withoutSpoken(text);
  const found = [...plain.matchAll(CAPITALS), ...plain.matchAll(VOWELLESS)]
    .filter(([words]) => !WORDS.has(words) && !UNITS.has(words.toLowerCase()))
    .map((match) => ({ from: match.index, words: match[0] }));
  return found.sort((a, b) => a.from - b.from);
});

export type Defined = { readonly known: ReadonlySet<string>; readonly terms: ReadonlyMap<string, string> };
const made = new WeakMap<Library, WeakMap<Policy, WeakMap<Sheet, Defined>>>();

/** `terms`: in lower case, with what they mean. */
export function definedIn(sheet: Sheet, policy: Policy, library: Library): Defined {
  const byPolicy = made.get(library) ?? new WeakMap<Policy, WeakMap<Sheet, Defined>>();
  made.set(library, byPolicy);
  const bySheet = byPolicy.get(policy) ?? new WeakMap<Sheet, Defined>();
  byPolicy.set(policy, bySheet);
  const before = bySheet.get(sheet);
  if (before !== undefined) return before;
  const ofSheet = [
    ...Object.values(wordsOf(sheet.modes)).flat(),
    ...[...sheet.panel, ...sheet.indications, ...sheet.detents, ...sheet.speeds, ...sheet.protections].map(
      (each) => each.name,
    ),
    ...[sheet.type, sheet.name],
  ];
  const terms = library.terms.flatMap(({ term, meaning, allowed }) =>
    [term, ...allowed].map((each) => [plain(each), meaning] as const),
  );
  const known = new Set([
    ...ofSheet.flatMap((name) => name.split(/[^\w-]+/)),
    ...policy.words.knownAbbreviations,
    ...library.aerodromes.map((card) => card.code),
  ]);
  const defined = { known, terms: new Map(terms) };
  bySheet.set(sheet, defined);
  return defined;
}
