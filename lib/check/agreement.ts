// Where two current texts of the operator state the same quantity under the same condition with different values: this
// procedure, the others, the aerodrome cards, checklists and the list of terms.
import type { Aerodrome, Library } from '../library/library.ts';
import { type Corpus, headOf } from './corpus.ts';
import { plain } from './names.ts';
import { type Stated, statedInText } from './stated.ts';

type Source = Pick<Stated, 'quantity' | 'condition' | 'value' | 'reason'> & {
  readonly where: string;
  /** The procedure that states it, whose title is asked for only when it is needed. */
  readonly by?: string;
};
export type Disagreement = { readonly mine: Stated; readonly theirs: Source };

const PHASES = new Set(['take-off', 'landing', 'taxi']);
const isAerodrome = (word: string): boolean => /^q[a-z]{3}$/.test(word);
/** What every aerodrome has for itself: compared only where both speak of the same one. */
const OF_AERODROME = /altitude|level|fix/;

const made = new WeakMap<Library, ReadonlyMap<string, readonly Source[]>>();

function inLibrary(library: Library): ReadonlyMap<string, readonly Source[]> {
  const before = made.get(library);
  if (before !== undefined) return before;
  const texts = [
    ...library.aerodromes.map(
      (card) => [`the card of ${card.code}`, `${card.remark} ${card.obstacle}`, card.code] as const,
    ),
    ...library.terms.map(({ term, meaning }) => ['the list of terms', `${term}: ${meaning}`, ''] as const),
    ...library.checklists.flatMap(({ title, items }) =>
      items.map((item) => [`the checklist "${title}"`, `${item.challenge}: ${item.response}`, title] as const),
    ),
  ];
  const all = [
    ...texts.flatMap(([where, text, around]) =>
      statedInText(text, around).map((stated): Source => ({ ...stated, where, reason: false })),
    ),
    ...library.aerodromes.flatMap(onCard),
  ];
  const grouped = Map.groupBy(all, (source) => source.quantity);
  made.set(library, grouped);
  return grouped;
}

/** Heights and altitudes of a card, each in both references where it has one. */
function onCard(card: Aerodrome): Source[] {
  const source = (quantity: string, value: string): Source => ({
    quantity,
    value,
    condition: plain(card.code),
    where: `the card of ${card.code}`,
    reason: false,
  });
  const above = (quantity: string, height: number): Source[] => [
    source(quantity, `${height} ft AAL`),
    source(quantity, `${height + card.elevation} ft MSL`),
  ];
  return [
    ...above('acceleration altitude', card.accelerationHeight),
    ...above('climb-thrust altitude', card.climbThrustHeight),
    ...above('go-around acceleration altitude', card.goAroundAccelerationHeight),
    ...above('engine-out acceleration altitude', card.engineOutAccelerationHeight),
    source('transition altitude', `${card.transitionAltitude} ft MSL`),
    source('missed-approach altitude', `${card.missedApproachAltitude} ft MSL`),
    source('final approach fix', `${card.finalApproachFix} ft MSL`),
  ];
}

function meet(mine: Stated, theirs: Source): boolean {
  const [a, b] = [mine, theirs].map(({ condition }) => (condition === '' ? [] : condition.split(', ')));
  const part = (words: readonly string[], is: (word: string) => boolean) => words.filter(is).join();
  // A phase or an aerodrome that one of them leaves open is meant with it; the state of the runway must be the same.
  const open = (is: (word: string) => boolean): boolean => {
    const [left, right] = [part(a!, is), part(b!, is)];
    return left === right || left === '' || right === '';
  };
  const rest = (word: string): boolean => !PHASES.has(word) && !isAerodrome(word);
  if (part(a!, rest) !== part(b!, rest) || !open((word) => PHASES.has(word))) return false;
  const [here, there] = [part(a!, isAerodrome), part(b!, isAerodrome)];
  const ofOne = OF_AERODROME.test(mine.quantity) || theirs.where.startsWith('the card');
  return ofOne ? here !== '' && here === there : open(isAerodrome);
}

/** `4 000 ft MSL` against `4 000 ft`: a reference that one leaves out makes no other value. */
const sameValue = (a: string, b: string): boolean => a === b || a.startsWith(`${b} `) || b.startsWith(`${a} `);
const sameReference = (a: string, b: string): boolean =>
  a.replace(/^\d+/, '') === b.replace(/^\d+/, '') || !/AAL|MSL/.test(a + b);

/** One for each statement that somebody contradicts, in the order of the text. `library` null: without it. */
export function disagreements(
  id: string,
  stated: readonly Stated[],
  others: Corpus,
  library: Library,
): readonly Disagreement[] {
  return stated.flatMap((mine, index): Disagreement[] => {
    if (mine.reason) return [];
    const heard = others
      .read('value', mine.quantity)
      .filter(({ of }) => of !== id)
      .map(({ of, tells }): Source => ({ ...tells, where: '', by: of }));
    const earlier = stated.slice(0, index).map((each): Source => ({ ...each, where: 'an earlier place here' }));
    const all = [...(inLibrary(library).get(mine.quantity) ?? []), ...heard, ...earlier];
    const theirs = all.find(
      (each) =>
        each.quantity === mine.quantity &&
        !each.reason &&
        meet(mine, each) &&
        !sameValue(mine.value, each.value) &&
        sameReference(mine.value, each.value),
    );
    if (theirs === undefined) return [];
    const where = theirs.by === undefined ? theirs.where : headOf(others, theirs.by).title;
    return [{ mine, theirs: { ...theirs, where } }];
  });
}
