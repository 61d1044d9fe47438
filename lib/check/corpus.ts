// What a rule hears of the operator's other procedures: asked by kind and key, never walked through. So it is known what
// each answer hangs on, and an edit elsewhere asks again only where something was read that changed.
import { assert } from '../base/assert.ts';
import { type Head, KINDS, type Kind, type Kinds, type Told } from './told.ts';

/** `of`: the id of the procedure that tells it. */
export type Heard<K extends Kind> = { readonly of: string; readonly tells: Kinds[K] };
/** Of the others; in a check of a whole library the procedure asked about is among them, and is passed over by its id. */
export type Corpus = {
  /** In the order of the procedures' ids; none where nobody tells anything of the sort. */
  readonly read: <K extends Kind>(kind: K, key: string) => readonly Heard<K>[];
};

export const keyOf = (kind: Kind, key: string): string => `${kind} ${key}`;
export type Any = Heard<Kind>;
const NONE: readonly never[] = [];
const made = new WeakMap<readonly Told[], Corpus>();

/** Made once for the same list. */
export function corpusOf(others: readonly Told[]): Corpus {
  const before = made.get(others);
  if (before !== undefined) return before;
  const index = new Map<string, Any[]>();
  for (const each of [...others].sort((a, b) => compareIds(a.head.id, b.head.id))) {
    for (const [key, heard] of heardFrom(each)) {
      const there = index.get(key);
      if (there === undefined) index.set(key, [...heard]);
      else there.push(...heard);
    }
  }
  const corpus = corpusIn(index);
  made.set(others, corpus);
  return corpus;
}

export const corpusIn = (index: ReadonlyMap<string, readonly Any[]>): Corpus => ({
  read: <K extends Kind>(kind: K, key: string) => (index.get(keyOf(kind, key)) ?? NONE) as readonly Heard<K>[],
});

export const compareIds = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Title, class and phases of whoever told something. */
export function headOf(corpus: Corpus, id: string): Head {
  const [heard] = corpus.read('head', id);
  assert(heard !== undefined, 'who tells something has a head');
  return heard.tells;
}

/** All that one procedure tells, by key. */
export function heardFrom(told: Told): readonly (readonly [string, readonly Any[]])[] {
  return KINDS.flatMap((kind) =>
    Object.entries(told.tells[kind]).map(
      ([key, all]) =>
        [keyOf(kind, key), (all as readonly Kinds[Kind][]).map((tells) => ({ of: told.head.id, tells }))] as const,
    ),
  );
}
