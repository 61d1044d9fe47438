// The journal is the truth: a change is committed to it BEFORE it is applied and shown to others, so what anyone has seen,
// the database has. Snapshots only spare reading from the start; they are made from rows, never from memory, for another
// process may have written rows that this one never saw.
import * as Y from 'yjs';
import { upgradeDraft } from '../document/upgrade.ts';
import type { Problem } from '../server/errors.ts';
import { appendUpdate, keepSnapshot, readJournal } from '../server/journal.ts';
import type { Answered, Viewer } from '../server/within.ts';

/** Rows read one by one before a snapshot is worth its while. */
const SNAPSHOT_AFTER = 300;

/** Carries a refusal out of a loading document. */
export class NotLoaded extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.sentence);
    this.problem = problem;
  }
}

/** Fills an empty document from the journal. A row that can't be read is left out and logged; the rest is shown. */
export async function load(viewer: Viewer, draftId: string, doc: Y.Doc): Promise<{ readonly upTo: number }> {
  const journal = await readJournal(viewer, draftId);
  if (!journal.ok) throw new NotLoaded(journal.error);
  const { snapshot, updates } = journal.value;
  let upTo = snapshot?.upTo ?? 0;
  doc.transact(() => {
    if (snapshot) apply(doc, snapshot.state, `${draftId} snapshot`);
    for (const { seq, update } of updates) {
      apply(doc, update, `${draftId} row ${seq}`);
      upTo = Math.max(upTo, seq);
    }
  }, 'load');
  if (updates.length >= SNAPSHOT_AFTER && sound(doc)) {
    await keepSnapshot(viewer, draftId, upTo, Y.encodeStateAsUpdate(doc));
  }
  return { upTo };
}

function apply(doc: Y.Doc, update: Uint8Array, name: string): void {
  try {
    Y.applyUpdate(doc, update, 'load');
  } catch (error) {
    console.error(`draft ${name} can't be read and is left out`, error);
  }
}

/** Nothing waits for a row that isn't there. */
const sound = (doc: Y.Doc): boolean => doc.store.pendingStructs === null && doc.store.pendingDs === null;

/** Brings a draft of an older version to this one, as a change of its own. For a person who may write. */
export async function bringUp(viewer: Viewer, draftId: string, doc: Y.Doc): Promise<void> {
  const before = Y.encodeStateVector(doc);
  if (upgradeDraft(doc) === 'upgraded') await append(viewer, draftId, Y.encodeStateAsUpdate(doc, before));
}

/** Committed when it resolves. */
export function append(viewer: Viewer, draftId: string, update: Uint8Array): Answered<number> {
  return appendUpdate(viewer, draftId, update);
}

/** Whether these bytes are a change at all: nothing else may enter the journal. */
export function readable(update: Uint8Array): boolean {
  try {
    Y.decodeUpdate(update);
    return true;
  } catch {
    return false;
  }
}
