// What the library checks are given of the operator beside the text asked about: other procedures, library, fleet. Inside
// the transaction of whoever asks, whose right to read drafts was looked at before.
import type { Told } from '../check/told.ts';
import { toldBy } from '../check/told.ts';
import type { Fleet, Library, Tail } from '../library/library.ts';
import type { Tx } from './db.ts';
import { during } from './issues.ts';
import { type Labels, withLabels } from './labels.ts';
import { frozen, readText } from './text.ts';

const LISTS = {
  aerodrome: 'aerodromes',
  callout: 'callouts',
  term: 'terms',
  checklist: 'checklists',
  source: 'sources',
} as const satisfies Record<string, keyof Library>;
const EMPTY: Library = { aerodromes: [], callouts: [], terms: [], checklists: [], sources: [] };

/** The latest version of each entry, by key; null where nothing was ever put in. */
export async function libraryOf(tx: Tx, operatorId: string): Promise<Library | null> {
  const rows = await tx.libraryEntry.findMany({
    where: { operatorId },
    orderBy: [{ kind: 'asc' }, { key: 'asc' }, { version: 'desc' }],
    distinct: ['kind', 'key'],
    select: { kind: true, content: true },
  });
  if (rows.length === 0) return null;
  const lists: Record<string, unknown[]> = {};
  for (const { kind, content } of rows) {
    const list = LISTS[kind as keyof typeof LISTS];
    lists[list] = [...(lists[list] ?? []), JSON.parse(content)];
  }
  return { ...EMPTY, ...lists };
}

/** All tails of the type with their dated options; null where the operator has no fleet of it. */
export async function fleetOf(tx: Tx, operatorId: string, type: string): Promise<Fleet | null> {
  const fleets = await tx.fleet.findMany({
    where: { operatorId, type },
    orderBy: { name: 'asc' },
    include: {
      operator: { select: { name: true } },
      tails: { orderBy: { registration: 'asc' }, include: { options: { orderBy: { heldFrom: 'asc' } } } },
    },
  });
  const [first] = fleets;
  if (!first) return null;
  const day = (date: Date): string => date.toISOString().slice(0, 10);
  const tails = fleets.flatMap((fleet) =>
    fleet.tails.map(({ registration, options }): Tail => {
      const dated = options.filter(({ option }) => option === 'standard');
      return {
        registration,
        type,
        options: dated.map(({ value, heldFrom }, index) => {
          const next = dated[index + 1];
          return {
            option: 'standard',
            value: value as 'A' | 'B',
            from: day(heldFrom),
            until: next ? day(next.heldFrom) : null,
          };
        }),
      };
    }),
  );
  return { operator: first.operator.name, name: first.name, type, sheetRevision: '', tails };
}

/** Candidates whose telling is kept: their text never changes, and labels are only ever added to it. */
const MOST_KEPT = 2_000;
const kept = new Map<string, Told>();

/** The least far that a text must have come to be heard: what is only drafted may never hold somebody's signature. */
export type Heard = 'drafted' | 'submitted';

/** All other procedures of the operator: as in force, else as last submitted, else, where asked, as last drafted. */
export async function othersOf(
  tx: Tx,
  operatorId: string,
  procedureId: string,
  at: Date,
  least: Heard,
): Promise<readonly Told[]> {
  const all = await tx.procedure.findMany({
    where: { operatorId, id: { not: procedureId } },
    orderBy: { id: 'asc' },
    select: { id: true },
  });
  const ids = all.map(({ id }) => id);
  const candidateOf = await candidatesOf(tx, operatorId, ids, at);
  const labels = await labelsByProcedure(tx, operatorId);
  const keyOf = (id: string, candidate: string): string =>
    `${operatorId} ${candidate} ${Object.keys(labels.get(id) ?? {}).length}`;
  const missing = [...candidateOf].filter(([id, candidate]) => !kept.has(keyOf(id, candidate)));
  const texts = await tx.candidate.findMany({
    where: { operatorId, id: { in: missing.map(([, candidate]) => candidate) } },
    select: { id: true, procedureId: true, content: true },
  });
  if (kept.size + texts.length > MOST_KEPT) kept.clear();
  const fresh = new Map<string, Told>();
  for (const text of texts) {
    const told = toldBy(withLabels(frozen(text), labels.get(text.procedureId) ?? {}));
    kept.set(keyOf(text.procedureId, text.id), told);
    fresh.set(text.id, told);
  }
  const others: Told[] = [];
  for (const id of ids) {
    const candidate = candidateOf.get(id);
    if (candidate === undefined && least !== 'drafted') continue;
    const told =
      candidate === undefined
        ? await draftTold(tx, operatorId, id, labels.get(id) ?? {})
        : (fresh.get(candidate) ?? kept.get(keyOf(id, candidate)));
    if (told) others.push(told);
  }
  return others;
}

/** By procedure: the candidate whose text is in force, else the last one that was not taken back. */
async function candidatesOf(
  tx: Tx,
  operatorId: string,
  ids: readonly string[],
  at: Date,
): Promise<Map<string, string>> {
  const issues = await tx.issue.findMany({
    where: { operatorId, procedureId: { in: [...ids] }, interval: during(at) },
    orderBy: { number: 'asc' },
    select: { procedureId: true, candidateId: true },
  });
  const found = new Map(issues.map((issue) => [issue.procedureId, issue.candidateId]));
  const rest = await tx.candidate.findMany({
    where: {
      operatorId,
      procedureId: { in: ids.filter((id) => !found.has(id)) },
      state: { notIn: ['withdrawn', 'sent back'] },
    },
    orderBy: { number: 'asc' },
    select: { procedureId: true, id: true },
  });
  for (const { procedureId, id } of rest) found.set(procedureId, id);
  return found;
}

async function labelsByProcedure(tx: Tx, operatorId: string): Promise<ReadonlyMap<string, Labels>> {
  const rows = await tx.stepLabel.findMany({ where: { operatorId } });
  const found = new Map<string, Record<string, string>>();
  for (const { procedureId, stepId, label } of rows) {
    const there = found.get(procedureId) ?? {};
    there[stepId] = label;
    found.set(procedureId, there);
  }
  return found;
}

async function draftTold(tx: Tx, operatorId: string, procedureId: string, labels: Labels): Promise<Told | null> {
  const draft = await tx.draft.findFirst({
    where: { operatorId, procedureId },
    orderBy: { number: 'desc' },
    select: { id: true },
  });
  if (!draft) return null;
  const { procedure } = await readText(tx, operatorId, draft.id);
  return toldBy(withLabels(procedure, labels));
}
