// A whole library checked once and kept true: after an edit of one procedure only what the edit can reach is asked again.
// The edited procedure is asked everything; any other one is asked a check anew only if that check read something that the
// edited one now tells otherwise. It may not do better than that by guessing: the answers are those of asking all anew.
import { assert } from '../base/assert.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { type Checked, checkProcedure } from './check.ts';
import { type Any, type Corpus, compareIds, corpusIn, heardFrom, keyOf } from './corpus.ts';
import type { Facts } from './facts.ts';
import { libraryState } from './library-state.ts';
import { inReadingOrder } from './order.ts';
import type { Rule } from './rule.ts';
import { rulesUpTo } from './stage.ts';
import { type Told, toldBy } from './told.ts';

/** All but the others, which are the library itself. By procedure, as the sheet goes by its type. */
export type FactsOf = (procedure: Procedure) => Partial<Omit<Facts, 'others'>>;

/** Holds answers that change with each edit: the one value here that is not fixed, kept by one owner. */
export type LibraryCheck = {
  /** The answer to one procedure, stamped with the state that the library has now. Throws on an id that is not in it. */
  readonly answer: (id: string) => Checked;
  /** Takes the procedure in the place of the one with its id, or into the library. Answers what was asked anew, as
   *  `id check` or, for the edited procedure, `id`. */
  readonly edit: (procedure: Procedure) => readonly string[];
};

type Asked = { readonly rule: Rule; readonly checked: Checked; readonly keys: ReadonlySet<string> };
type Entry = {
  readonly procedure: Procedure;
  readonly told: Told;
  /** Of all checks that hear no other procedure. */
  readonly alone: Checked;
  readonly hearing: Map<string, Asked>;
};

/** Checks all procedures, whose ids must differ. */
export function checkLibrary(
  procedures: readonly Procedure[],
  factsOf: FactsOf,
  rules: readonly Rule[] = rulesUpTo('submission'),
): LibraryCheck {
  const hears = rules.filter((rule) => rule.needs.includes('others'));
  const alone = rules.filter((rule) => !rule.needs.includes('others'));
  const rank = new Map(rules.map((rule, place) => [rule.id, place]));
  const entries = new Map<string, Entry>();
  /** By key, what is told; by key, who heard it with which check. */
  const index = new Map<string, readonly Any[]>();
  const readers = new Map<string, Map<string, { id: string; rule: Rule }>>();
  const corpus = corpusIn(index);

  const ask = (procedure: Procedure, rule: Rule): Asked => {
    const keys = new Set<string>();
    const noted: Corpus = {
      read(kind, key) {
        keys.add(keyOf(kind, key));
        return corpus.read(kind, key);
      },
    };
    const checked = checkProcedure(procedure, { ...factsOf(procedure), others: [] }, [rule], noted);
    for (const key of keys) {
      const there = readers.get(key) ?? new Map<string, { id: string; rule: Rule }>();
      there.set(`${procedure.id} ${rule.id}`, { id: procedure.id, rule });
      readers.set(key, there);
    }
    return { rule, checked, keys };
  };
  const forget = (id: string, { rule, keys }: Asked): void => {
    for (const key of keys) readers.get(key)?.delete(`${id} ${rule.id}`);
  };
  /** Keys under which the library now tells something else. */
  const tell = (before: Told | null, after: Told): ReadonlySet<string> => {
    const old = new Map(before === null ? [] : heardFrom(before));
    const fresh = new Map(heardFrom(after));
    const changed = new Set<string>();
    for (const key of new Set([...old.keys(), ...fresh.keys()])) {
      const [was, is] = [old.get(key) ?? [], fresh.get(key) ?? []];
      if (was.length === is.length && JSON.stringify(was) === JSON.stringify(is)) continue;
      changed.add(key);
      const rest = (index.get(key) ?? []).filter(({ of }) => of !== after.head.id);
      index.set(
        key,
        [...rest, ...is].sort((a, b) => compareIds(a.of, b.of)),
      );
    }
    return changed;
  };
  const askAll = (procedure: Procedure): Entry => ({
    procedure,
    told: toldBy(procedure),
    alone: checkProcedure(procedure, { ...factsOf(procedure), others: [] }, alone),
    hearing: new Map(hears.map((rule) => [rule.id, ask(procedure, rule)])),
  });

  assert(new Set(procedures.map(({ id }) => id)).size === procedures.length, 'a library holds every procedure once');
  for (const procedure of procedures) tell(null, toldBy(procedure));
  for (const procedure of procedures) entries.set(procedure.id, askAll(procedure));
  let state: string | null = null;

  return {
    answer(id) {
      const entry = entries.get(id);
      assert(entry !== undefined, 'the procedure is in the library');
      const others = [...entries.values()].map(({ told }) => told);
      state ??= libraryState({ ...factsOf(entry.procedure), others });
      return joined(entry, rank, state);
    },
    edit(procedure) {
      state = null;
      const before = entries.get(procedure.id) ?? null;
      const changed = tell(before?.told ?? null, toldBy(procedure));
      const reached = [...changed].flatMap((key) => [...(readers.get(key) ?? [])]);
      for (const asked of before?.hearing.values() ?? []) forget(procedure.id, asked);
      entries.set(procedure.id, askAll(procedure));
      const again = [...new Map(reached)].filter(([, { id }]) => id !== procedure.id);
      for (const [, { id, rule }] of again) {
        const entry = entries.get(id)!;
        forget(id, entry.hearing.get(rule.id)!);
        entry.hearing.set(rule.id, ask(entry.procedure, rule));
      }
      return [procedure.id, ...again.map(([name]) => name)];
    },
  };
}

/** The parts as one answer, the same as if all checks had been asked together. */
function joined(
  { procedure, alone, hearing }: Entry,
  rank: ReadonlyMap<string, number>,
  library: string | null,
): Checked {
  const parts = [alone, ...[...hearing.values()].map(({ checked }) => checked)];
  const by = <T>(read: (part: Checked) => readonly T[], idOf: (each: T) => string): readonly T[] =>
    parts.flatMap(read).sort((a, b) => rank.get(idOf(a))! - rank.get(idOf(b))!);
  return {
    findings: inReadingOrder(
      procedure,
      parts.flatMap(({ findings }) => findings),
    ),
    notChecked: by(
      ({ notChecked }) => notChecked,
      ({ check }) => check,
    ),
    crashed: by(
      ({ crashed }) => crashed,
      ({ check }) => check,
    ),
    checked: {
      ...alone.checked,
      rules: by(
        ({ checked }) => checked.rules,
        (id) => id,
      ),
      library,
    },
  };
}
