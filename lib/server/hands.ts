// Who had a hand in a text, from the journal and the rows, never from what somebody says about themselves.
import type { Tx } from './db.ts';
import type { Hands } from './permit.ts';

/**
 * Hands in the text of draft `number`: a text is carried over from draft to draft until it is signed, so all drafts after
 * the last signed one count, up to this one; and all reviews of the candidates among them.
 */
export async function handsIn(tx: Tx, operatorId: string, procedureId: string, number: number): Promise<Hands> {
  const signed = await tx.candidate.findFirst({
    where: { operatorId, procedureId, state: 'signed', draft: { number: { lt: number } } },
    orderBy: { draft: { number: 'desc' } },
    select: { draft: { select: { number: true } } },
  });
  const among = { number: { gt: signed?.draft.number ?? 0, lte: number } };
  const updates = await tx.draftUpdate.findMany({
    where: { operatorId, draft: { procedureId, ...among }, personId: { not: null } },
    distinct: ['personId'],
    select: { personId: true },
  });
  const candidates = await tx.candidate.findMany({
    where: { operatorId, procedureId, draft: among },
    select: {
      submittedById: true,
      reviews: { where: { verdict: { not: 'withdrawn' } }, select: { personId: true } },
      findings: { where: { answer: { kind: 'waiver' } }, select: { answer: { select: { personId: true } } } },
    },
  });
  const each = (people: readonly string[]) => [...new Set(people)];
  return {
    editors: each([...updates.map((update) => update.personId!), ...candidates.map((one) => one.submittedById)]),
    reviewers: each(candidates.flatMap((one) => one.reviews.map((review) => review.personId))),
    waivers: each(candidates.flatMap((one) => one.findings.map((finding) => finding.answer!.personId))),
  };
}
