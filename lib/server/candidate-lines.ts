// Candidates as lines of a list, with the viewer's next step on each.
import type { Prisma } from '../../prisma/generated/client.ts';
import type { Tx } from './db.ts';
import { handsIn } from './hands.ts';
import { namesOf } from './names.ts';
import { may, type Standing } from './permit.ts';
import { readHead } from './text.ts';

export type CandidateState = 'waiting' | 'recommended' | 'signed' | 'sent back' | 'refused' | 'withdrawn';

export type CandidateLine = {
  readonly candidateId: string;
  readonly procedureId: string;
  readonly title: string;
  readonly number: number;
  readonly state: CandidateState;
  readonly submittedBy: string;
  readonly submittedAt: string;
  /** Why it was sent back, refused or withdrawn; '' otherwise. */
  readonly reason: string;
  /** Whether the viewer may take the next decision on it. */
  readonly may: { readonly review: boolean; readonly sign: boolean };
};

/** Oldest first. */
export async function candidateLines(
  tx: Tx,
  standing: Standing,
  where: Prisma.CandidateWhereInput,
): Promise<CandidateLine[]> {
  const { operatorId } = standing;
  const rows = await tx.candidate.findMany({
    where: { ...where, operatorId },
    omit: { content: true },
    include: {
      draft: { select: { number: true } },
      reviews: { orderBy: { at: 'desc' } },
      signOffs: { where: { verdict: 'refused' } },
    },
    orderBy: { submittedAt: 'asc' },
  });
  const nameOf = await namesOf(
    tx,
    rows.map((row) => row.submittedById),
  );
  const lines: CandidateLine[] = [];
  for (const row of rows) {
    const hands = await handsIn(tx, operatorId, row.procedureId, row.draft.number);
    const decided = row.state === 'refused' ? row.signOffs[0] : row.reviews[0];
    lines.push({
      candidateId: row.id,
      procedureId: row.procedureId,
      title: readHead(row).title,
      number: row.number,
      state: row.state as CandidateState,
      submittedBy: nameOf(row.submittedById),
      submittedAt: row.submittedAt.toISOString(),
      reason: ['sent back', 'refused', 'withdrawn'].includes(row.state) ? (decided?.reason ?? '') : '',
      may: {
        review: row.state === 'waiting' && may(standing, 'review', hands),
        sign: row.state === 'recommended' && may(standing, 'sign', hands),
      },
    });
  }
  return lines;
}
