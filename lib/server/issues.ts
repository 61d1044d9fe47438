// Issues and their times, inside a transaction: which one is in force, which one a text is compared with.
import type { Procedure } from '../procedure/procedure.ts';
import type { Tx } from './db.ts';
import { labelsOf, withLabels } from './labels.ts';
import { frozen } from './text.ts';

/** The latest signed issue (before issue `before`) with its text, in force or to come: what the next is compared with. */
export async function latestIssue(
  tx: Tx,
  operatorId: string,
  procedureId: string,
  before?: number,
): Promise<{ number: number; procedure: Procedure } | null> {
  const issue = await tx.issue.findFirst({
    where: { operatorId, procedureId, ...(before === undefined ? {} : { number: { lt: before } }) },
    orderBy: { number: 'desc' },
    include: { candidate: { select: { content: true } } },
  });
  if (!issue) return null;
  const labels = await labelsOf(tx, operatorId, procedureId);
  return { number: issue.number, procedure: withLabels(frozen(issue.candidate), labels) };
}

/** Half open: in force from its start until just before its end. */
export const during = (at: Date) => ({ startsAt: { lte: at }, OR: [{ endsAt: null }, { endsAt: { gt: at } }] });
