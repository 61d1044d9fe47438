// Rows held until the transaction ends, so that two who decide the same thing at once decide one after the other.
import type { Tx } from './db.ts';
import { Refused } from './errors.ts';

/** Holds the draft; a foreign or unknown id is unknown. */
export async function holdDraft(tx: Tx, operatorId: string, id: string) {
  await tx.$queryRaw`SELECT 1 FROM "draft" WHERE "operatorId" = ${operatorId} AND "id" = ${id} FOR NO KEY UPDATE`;
  const draft = await tx.draft.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: { procedure: true, changeRequest: true, candidate: { select: { id: true } } },
  });
  if (!draft) throw new Refused('unknown');
  return draft;
}

export async function holdCandidate(tx: Tx, operatorId: string, id: string) {
  await tx.$queryRaw`SELECT 1 FROM "candidate" WHERE "operatorId" = ${operatorId} AND "id" = ${id} FOR NO KEY UPDATE`;
  const candidate = await tx.candidate.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: { draft: { include: { changeRequest: true } }, procedure: true },
  });
  if (!candidate) throw new Refused('unknown');
  return candidate;
}

export async function holdProcedure(tx: Tx, operatorId: string, id: string) {
  await tx.$queryRaw`SELECT 1 FROM "procedure" WHERE "operatorId" = ${operatorId} AND "id" = ${id} FOR NO KEY UPDATE`;
  const procedure = await tx.procedure.findUnique({ where: { operatorId_id: { operatorId, id } } });
  if (!procedure) throw new Refused('unknown');
  return procedure;
}
