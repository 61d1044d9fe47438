// The order of rows: each has a rank among those of its parent. Sorted by code unit, never by locale; ties go by id, so
// that every replica reads the same order whatever was done at once.
import { generateKeyBetween, generateNKeysBetween } from 'fractional-indexing';
import * as Y from 'yjs';
import { isGone, type List, type Place, rowsOf } from './model.ts';

type Rank = string | null;
/** Bits of chance in a new rank: 300 people at one spot still differ, and the rank stays short. */
const CHANCE_BITS = 24;

/** Whether new ranks can be made beside this one; what another program wrote may be anything. */
export function isRank(value: unknown): value is string {
  if (typeof value !== 'string' || value === '') return false;
  try {
    generateKeyBetween(value, null);
    return true;
  } catch {
    return false;
  }
}

/** As stored; a row without a sound place stands at the end of the main line rather than nowhere. */
export function placeOf(fields: Y.Map<unknown>): Place {
  const place = fields.get('place') as Partial<Place> | undefined;
  const parent = typeof place?.parent === 'string' ? place.parent : null;
  return { parent, rank: typeof place?.rank === 'string' ? place.rank : '~' };
}

/** The branch a row is shown in: null also when that branch was removed while someone moved the row into it. */
export function parentOf(doc: Y.Doc, fields: Y.Map<unknown>): string | null {
  const { parent } = placeOf(fields);
  if (parent === null) return null;
  const branch = rowsOf(doc, 'branches').get(parent);
  return branch instanceof Y.Map && !isGone(branch) ? parent : null;
}

const byCode = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

/** Ids in reading order: the branches, or the steps of one branch or (null) of the main line. Hidden rows are left out. */
export function ordered(doc: Y.Doc, list: List, parent: string | null = null): string[] {
  const found: { rank: string; id: string }[] = [];
  for (const [id, fields] of rowsOf(doc, list)) {
    if (!(fields instanceof Y.Map) || isGone(fields)) continue;
    if (list === 'branches' || parentOf(doc, fields) === parent) found.push({ rank: placeOf(fields).rank, id });
  }
  return found.sort((a, b) => byCode(a.rank, b.rank) || byCode(a.id, b.id)).map((row) => row.id);
}

/** All step ids in reading order, each with the branch it stands in. */
export function orderedSteps(doc: Y.Doc): { readonly id: string; readonly parent: string | null }[] {
  const parents = [null, ...ordered(doc, 'branches')];
  return parents.flatMap((parent) => ordered(doc, 'steps', parent).map((id) => ({ id, parent })));
}

function between(low: Rank, high: Rank, chance: () => number): string {
  let [from, to] = [low, high];
  for (let bit = 0; bit < CHANCE_BITS; bit++) {
    const middle = generateKeyBetween(from, to);
    if (chance() < 0.5) from = middle;
    else to = middle;
  }
  return generateKeyBetween(from, to);
}

/** n ranks with one random stem in common: two blocks pasted at one spot stay whole instead of interleaving. */
export function ranksBetween(low: Rank, high: Rank, n: number, chance: () => number): string[] {
  const stem = between(low, high, chance);
  return n === 1 ? [stem] : generateNKeysBetween(stem, `${stem}V`, n);
}

/**
 * The gap behind `after` (null: before the first) in which new ranks fit. No key fits between two equal ranks, so twins
 * that follow are given new ones first; so is the whole line when it holds a rank that is none. Call it in a transaction.
 */
export function gap(
  doc: Y.Doc,
  list: List,
  spot: { parent: string | null; after: string | null; leaveOut: ReadonlySet<string> },
  chance: () => number,
): [Rank, Rank] {
  const ids = ordered(doc, list, spot.parent).filter((id) => !spot.leaveOut.has(id));
  const put = (to: readonly string[], ranks: readonly string[]) => {
    for (const [i, id] of to.entries())
      rowsOf(doc, list).get(id)?.set('place', { parent: spot.parent, rank: ranks[i]! });
  };
  const rank = (i: number): Rank => {
    const id = ids[i];
    return id === undefined ? null : placeOf(rowsOf(doc, list).get(id)!).rank;
  };
  if (ids.some((_, i) => !isRank(rank(i)))) {
    put(ids, generateNKeysBetween(null, null, ids.length));
  }
  const at = spot.after === null ? -1 : ids.indexOf(spot.after);
  // A spot that someone removed meanwhile: the end of the line, never the top.
  if (spot.after !== null && at < 0) return [rank(ids.length - 1), null];
  const low = at < 0 ? null : rank(at);
  let end = at + 1;
  while (low !== null && end < ids.length && rank(end) === low) end++;
  const twins = ids.slice(at + 1, end);
  if (twins.length === 0) return [low, rank(at + 1)];
  const fresh = ranksBetween(low, rank(end), twins.length, chance);
  put(twins, fresh);
  return [low, fresh[0]!];
}
