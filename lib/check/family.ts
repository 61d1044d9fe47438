// The sisters of a step: steps of the same family in this procedure and in all others. In a large library a family has
// hundreds of members and few ways of saying the same, so those who say the same are counted once for all who ask.
import type { Procedure, Step } from '../procedure/procedure.ts';
import type { Corpus, Heard } from './corpus.ts';
import { type Sister, sistersOf } from './sister.ts';

/** Sisters that say the same in every compared field. */
export type Kin = { readonly sister: Sister; readonly count: number; readonly called: () => readonly string[] };
type Far = readonly Heard<'family'>[];
export type Member = {
  readonly sister: Sister;
  /** All sisters but this one, those who say the same together. */
  readonly kin: readonly Kin[];
  /** The family one by one, in the order of the procedures' ids; in a check of a whole library with this procedure's own. */
  readonly heard: Far;
};

const signatures = new WeakMap<Sister, string>();
function signatureOf(sister: Sister): string {
  const before = signatures.get(sister);
  if (before !== undefined) return before;
  const { trigger, only, who, order, verb, object, value, modes, reason } = sister;
  const made = JSON.stringify([trigger, only, who, order, verb, object, value, modes, reason]);
  signatures.set(sister, made);
  return made;
}

type Group = { readonly sister: Sister; readonly all: { readonly of: string; readonly called: string }[] };
type Groups = { readonly of: ReadonlySet<string>; readonly by: ReadonlyMap<string, Group> };
const grouped = new WeakMap<Far, Groups>();

function groupsOf(far: Far): Groups {
  const before = grouped.get(far);
  if (before !== undefined) return before;
  const by = new Map<string, Group>();
  for (const { of, tells } of far) {
    const key = signatureOf(tells);
    const there = by.get(key) ?? { sister: tells, all: [] };
    there.all.push({ of, called: tells.called });
    by.set(key, there);
  }
  const made = { of: new Set(far.map(({ of }) => of)), by };
  grouped.set(far, made);
  return made;
}

const own = new WeakMap<Procedure, ReadonlyMap<string, readonly Sister[]>>();
function familiesOf(procedure: Procedure, steps: readonly Step[]): ReadonlyMap<string, readonly Sister[]> {
  const before = own.get(procedure);
  if (before !== undefined) return before;
  const made = Map.groupBy(sistersOf(procedure, steps), (sister) => sister.family);
  own.set(procedure, made);
  return made;
}

/** Steps that have sisters, in reading order, each with them. */
export function members(procedure: Procedure, steps: readonly Step[], others: Corpus): readonly Member[] {
  const found: Member[] = [];
  for (const [family, mine] of familiesOf(procedure, steps)) {
    const heard = others.read('family', family);
    const groups = groupsOf(heard);
    // In a check of a whole library this procedure's own are among those heard.
    const among = groups.of.has(procedure.id);
    if (mine.length === 1 && groups.of.size === (among ? 1 : 0)) continue;
    for (const sister of mine) {
      found.push({ sister, kin: kinOf(sister, mine, groups, procedure.id, among), heard });
    }
  }
  return found.sort((a, b) => a.sister.place - b.sister.place);
}

function kinOf(sister: Sister, mine: readonly Sister[], { by }: Groups, id: string, among: boolean): readonly Kin[] {
  const near = Map.groupBy(
    mine.filter((each) => each !== sister),
    signatureOf,
  );
  const kin: Kin[] = [];
  const add = (of: Sister, count: number, called: () => readonly string[]): void => {
    if (count > 0) kin.push({ sister: of, count, called });
  };
  for (const [signature, group] of by) {
    const here = near.get(signature) ?? [];
    const same = among ? mine.filter((each) => signatureOf(each) === signature).length : 0;
    add(group.sister, group.all.length - same + here.length, () => [
      ...here.map((each) => each.called),
      ...group.all.filter(({ of }) => of !== id).map(({ called }) => called),
    ]);
  }
  for (const [signature, here] of near) {
    if (!by.has(signature)) add(here[0]!, here.length, () => here.map((each) => each.called));
  }
  return kin.sort((a, b) => (signatureOf(a.sister) < signatureOf(b.sister) ? -1 : 1));
}

/** Who says otherwise, by name up to two. */
export function namesOf(called: readonly string[]): string {
  const names = [...new Set(called)].sort();
  return names.length <= 2 ? names.join(' and ') : `${names.slice(0, 2).join(', ')} and ${names.length - 2} more`;
}

type Place = { readonly place: number; readonly called: string; readonly step: string };
const placed = new WeakMap<Far, ReadonlyMap<string, Place>>();

/** By procedure, where its first step of the family stands. */
export function placesOf(far: Far): ReadonlyMap<string, Place> {
  const before = placed.get(far);
  if (before !== undefined) return before;
  const made = new Map<string, Place>();
  for (const { of, tells } of far) if (!made.has(of)) made.set(of, tells);
  placed.set(far, made);
  return made;
}
