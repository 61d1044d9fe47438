// What a rule hears of the operator's other procedures: asked by kind and key, never walked through. So it is known what
// each answer hangs on, and an edit elsewhere asks again only where something was read that changed.
import { type Head, KINDS, type Kind, type Kinds, type Told } from './told.ts';

export type Heard<K extends Kind> = { readonly of: Head; readonly tells: Kinds[K] };
export type Corpus = {
  /** In the order of the procedures' ids; none where nobody tells anything of the sort. */
  readonly read: <K extends Kind>(kind: K, key: string) => readonly Heard<K>[];
};

export const keyOf = (kind: Kind, key: string): string => `${kind} ${key}`;
type Any = Heard<Kind>;
const NONE: readonly never[] = [];
const made = new WeakMap<readonly Told[], Corpus>();

/** Made once for the same list. */
export function corpusOf(others: readonly Told[]): Corpus {
  const before = made.get(others);
  if (before !== undefined) return before;
  const index = new Map<string, Any[]>();
  for (const each of [...others].sort((a, b) => compareIds(a.head, b.head))) {
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

export const compareIds = (a: Head, b: Head): number => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** All that one procedure tells, by key. */
export function heardFrom(told: Told): readonly (readonly [string, readonly Any[]])[] {
  return KINDS.flatMap((kind) =>
    Object.entries(told.tells[kind]).map(
      ([key, all]) =>
        [keyOf(kind, key), (all as readonly Kinds[Kind][]).map((tells) => ({ of: told.head, tells }))] as const,
    ),
  );
}
