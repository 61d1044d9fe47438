// Checklists as steps call them, and steps as checklists link to them.
import type { Checklist, Library } from '../library/library.ts';
import type { Procedure, Step } from '../procedure/procedure.ts';
import { kept } from './kept.ts';
import { nameWords, plain } from './names.ts';

const CALLS = new Set(['read', 'call', 'check', 'request', 'respond']);
const LIST = /\b(check)?list\b/i;
const fits = (name: string, { id, title }: Checklist): boolean => {
  const words = nameWords(name).join(' ');
  return words !== '' && (words === nameWords(title).join(' ') || words === nameWords(id).join(' '));
};

/** Whether the step has a list read; its name stands in the object. */
export const callsList = (step: Step): boolean => CALLS.has(step.verb) && LIST.test(step.object);

/** The list of the library by its title or id, however it is written; null where the library has none of that name. */
export const listNamed = (name: string, library: Library): Checklist | null =>
  library.checklists.find((list) => fits(name, list)) ?? null;

export type ListCall = { readonly step: Step; readonly index: number; readonly list: Checklist };

/** Where the main line has a list of the library read, with what stands before it. */
export function listCalls(procedure: Procedure, library: Library): readonly ListCall[] {
  return procedure.steps.flatMap((step, index) => {
    const list = callsList(step) ? listNamed(step.object, library) : null;
    return list === null ? [] : [{ step, index, list }];
  });
}

const ONES =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

/** As it is said: `thirty-five`. Whole numbers from 0 to 99. */
function spoken(number: number): string {
  if (number < 20) return ONES[number]!;
  const one = number % 10;
  return `${TENS[Math.floor(number / 10)]}${one === 0 ? '' : `-${ONES[one]}`}`;
}

const wordsOf = kept((text: string): ReadonlySet<string> => new Set(plain(text).split(/[^\p{L}\p{N}-]+/u)));

/** Detents that a text names, as `F35` or said as `flap thirty-five`. */
export function detentsNamed(text: string, names: readonly string[]): readonly string[] {
  const words = wordsOf(text);
  return names.filter((name) => {
    if (words.has(name.toLowerCase())) return true;
    const digits = /\d{1,2}/.exec(name)?.[0];
    return digits !== undefined && words.has(spoken(Number(digits)));
  });
}
