// The text of a draft, read from its journal; and the text that an issue or candidate froze.
import * as Y from 'yjs';
import { type Reading, readDraft } from '../document/read.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { Tx } from './db.ts';

export type Stored = {
  readonly snapshot: { readonly upTo: number; readonly state: Uint8Array } | null;
  readonly updates: readonly { readonly seq: number; readonly update: Uint8Array }[];
};

export async function journalOf(tx: Tx, operatorId: string, draftId: string): Promise<Stored> {
  const kept = await tx.draftSnapshot.findUnique({ where: { operatorId_draftId: { operatorId, draftId } } });
  const updates = await tx.draftUpdate.findMany({
    where: { operatorId, draftId, seq: { gt: kept?.upTo ?? 0 } },
    orderBy: { seq: 'asc' },
    select: { seq: true, update: true },
  });
  return { snapshot: kept && { upTo: kept.upTo, state: kept.state }, updates };
}

/** An entry that cannot be read is left out and named among the problems: such a draft is shown and not frozen. */
export async function readText(tx: Tx, operatorId: string, draftId: string): Promise<Reading> {
  const stored = await journalOf(tx, operatorId, draftId);
  const doc = new Y.Doc();
  const unreadable: string[] = [];
  const apply = (update: Uint8Array, name: string): void => {
    try {
      Y.applyUpdate(doc, update);
    } catch {
      unreadable.push(`${name} of the journal cannot be read.`);
    }
  };
  doc.transact(() => {
    if (stored.snapshot) apply(stored.snapshot.state, 'The snapshot');
    for (const { seq, update } of stored.updates) apply(update, `Entry ${seq}`);
  });
  const { procedure, problems } = readDraft(doc);
  doc.destroy();
  return { procedure, problems: [...unreadable, ...problems] };
}

/** Frozen text: it was canonical when it was hashed, and nothing else is ever stored there. */
export const frozen = (row: { readonly content: string }): Procedure => JSON.parse(row.content) as Procedure;

/** What lists show of a frozen text without reading all of it. */
export type Head = Pick<Procedure, 'title' | 'class' | 'phases' | 'effectivity'>;
export const headOf = ({ title, class: kind, phases, effectivity }: Procedure): Head => ({
  title,
  class: kind,
  phases,
  effectivity,
});
export const readHead = (row: { readonly head: unknown }): Head => row.head as Head;
