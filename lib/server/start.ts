// Making a draft, inside a transaction: its change request, its first journal entry, its entry in the record.

import { newDraftDoc } from '../document/write.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { Tx } from './db.ts';
import type { ChangeReason } from './drafts.ts';
import { newId } from './ids.ts';
import type { Standing } from './permit.ts';
import { enter } from './record-entry.ts';
import { said } from './said.ts';

export async function openChangeRequest(tx: Tx, standing: Standing, procedureId: string, change: ChangeReason) {
  const { operatorId, personId, at } = standing;
  const id = newId('cr');
  await tx.changeRequest.create({
    data: {
      operatorId,
      id,
      procedureId,
      reason: said(change.reason),
      source: said(change.source),
      riskNote: said(change.riskNote),
      dueOn: change.dueOn ? new Date(`${change.dueOn}T00:00:00Z`) : null,
      ownerId: personId,
      openedById: personId,
      openedAt: at,
      state: 'open',
    },
  });
  const { reason, source, riskNote, dueOn } = change;
  await enter(tx, standing, 'change request opened', procedureId, { id, reason, source, riskNote, dueOn });
  return id;
}

/** `writtenBy` is null where text is only carried over: then the journal names nobody for it. */
export async function makeDraft(
  tx: Tx,
  standing: Standing,
  procedure: Procedure,
  changeRequestId: string,
  writtenBy: string | null,
): Promise<string> {
  const { operatorId, personId, at } = standing;
  const last = await tx.draft.findFirst({
    where: { operatorId, procedureId: procedure.id },
    orderBy: { number: 'desc' },
    select: { number: true },
  });
  const id = newId('dr');
  const number = (last?.number ?? 0) + 1;
  await tx.draft.create({
    data: {
      operatorId,
      id,
      procedureId: procedure.id,
      number,
      changeRequestId,
      startedById: personId,
      startedAt: at,
      state: 'open',
    },
  });
  const update = new Uint8Array(newDraftDoc(procedure));
  await tx.draftUpdate.create({
    data: {
      operatorId,
      draftId: id,
      seq: 1,
      update,
      total: update.byteLength,
      personId: writtenBy,
      at,
    },
    select: { seq: true },
  });
  await enter(tx, standing, 'draft started', procedure.id, { draft: id, number, changeRequest: changeRequestId });
  return id;
}
