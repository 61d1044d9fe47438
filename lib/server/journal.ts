// What the live document needs: may this person write or read, what was written so far, and one more update.
import * as Y from 'yjs';
import { CHANGE_BYTES, DRAFT_BYTES } from '../document/limits.ts';
import { Refused } from './errors.ts';
import { holdDraft } from './locks.ts';
import { may, permit } from './permit.ts';
import { journalOf, type Stored } from './text.ts';
import { type Answered, type Viewer, within } from './within.ts';

/** State up to and with `upTo`, if one was kept; then the updates after it, oldest first. */
export type Journal = Stored;

/** null: not for this person, or no such draft. A draft that is not open can be read only. */
export async function permitDraft(viewer: Viewer, draftId: string): Promise<'write' | 'read' | null> {
  const answer = await within(viewer, async (tx, standing) => {
    if (!may(standing, 'read drafts')) return null;
    const { operatorId } = standing;
    const draft = await tx.draft.findUnique({ where: { operatorId_id: { operatorId, id: draftId } } });
    if (!draft) return null;
    return draft.state === 'open' && may(standing, 'write') ? 'write' : 'read';
  });
  return answer.ok ? answer.value : null;
}

export function readJournal(viewer: Viewer, draftId: string): Answered<Journal> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read drafts');
    const { operatorId } = standing;
    const draft = await tx.draft.findUnique({ where: { operatorId_id: { operatorId, id: draftId } } });
    if (!draft) throw new Refused('unknown');
    return journalOf(tx, operatorId, draftId);
  });
}

/** Committed when it resolves; gives the update's place in the journal. Refused once the draft is closed. */
export function appendUpdate(viewer: Viewer, draftId: string, update: Uint8Array): Answered<number> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'write');
    const { operatorId, personId, at } = standing;
    if (update.byteLength > CHANGE_BYTES.most) throw new Refused('too-large', [CHANGE_BYTES.says]);
    if (!isUpdate(update)) throw new Refused('not-understood');
    const draft = await holdDraft(tx, operatorId, draftId);
    if (draft.state !== 'open') throw new Refused('draft-closed');
    const last = await tx.draftUpdate.findFirst({
      where: { operatorId, draftId },
      orderBy: { seq: 'desc' },
      select: { seq: true, total: true },
    });
    const total = (last?.total ?? 0) + update.byteLength;
    if (total > DRAFT_BYTES.most) throw new Refused('too-large', [DRAFT_BYTES.says]);
    const seq = (last?.seq ?? 0) + 1;
    await tx.draftUpdate.create({
      data: { operatorId, draftId, seq, update: new Uint8Array(update), total, personId, at },
      select: { seq: true },
    });
    return seq;
  });
}

function isUpdate(bytes: Uint8Array): boolean {
  try {
    Y.decodeUpdate(bytes);
    return true;
  } catch {
    return false;
  }
}

/** Keeps `state` as the sum of the updates up to `upTo`. An older snapshot never replaces a newer one. */
export function keepSnapshot(viewer: Viewer, draftId: string, upTo: number, state: Uint8Array): Answered<null> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'write');
    const { operatorId } = standing;
    await holdDraft(tx, operatorId, draftId);
    const key = { operatorId_draftId: { operatorId, draftId } };
    const kept = await tx.draftSnapshot.findUnique({ where: key, select: { upTo: true } });
    if (kept && kept.upTo >= upTo) return null;
    const data = { upTo, state: new Uint8Array(state) };
    await tx.draftSnapshot.upsert({ where: key, create: { operatorId, draftId, ...data }, update: data });
    return null;
  });
}
