// An auditor's first questions about one tail at one time, answered from the rows that the record's acts wrote.
import type { Tx } from './db.ts';
import { Refused } from './errors.ts';
import { handsIn } from './hands.ts';
import { during } from './issues.ts';
import { namesOf } from './names.ts';
import { permit } from './permit.ts';
import { isFor, tailAt } from './tails.ts';
import { readHead } from './text.ts';
import { type Answered, type Viewer, within } from './within.ts';

/** Audit questions 1 to 3 and 6: what was in force for the tail then, who signed it, on which sources, who had read it. */
export type InForceAnswer = {
  readonly registration: string;
  readonly at: string;
  readonly standard: string;
  readonly issues: readonly {
    readonly procedureId: string;
    readonly title: string;
    readonly issueNumber: number;
    readonly from: string;
    readonly until: string | null;
    readonly sha256: string;
    readonly signedBy: string;
    readonly signedAs: string;
    readonly signedAt: string;
    readonly recommendedBy: string;
    readonly editedBy: readonly string[];
    readonly waivers: readonly {
      readonly check: string;
      readonly by: string;
      readonly reason: string;
      readonly until: string;
    }[];
    readonly sheetRevision: string;
    /** The newest revision at that time, when it was newer. */
    readonly newerRevision: string | null;
    readonly policyVersion: number;
    readonly checkSet: string;
    readonly acknowledgedBy: readonly { readonly name: string; readonly at: string }[];
    readonly notAcknowledgedBy: readonly string[];
  }[];
};

export function inForceAt(viewer: Viewer, registration: string, time: string): Answered<InForceAnswer> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read record');
    const { operatorId } = standing;
    const at = new Date(time);
    if (Number.isNaN(at.getTime())) throw new Refused('not-understood', ['at: not a time']);
    const tail = await tailAt(tx, operatorId, registration, at);
    const intervals = await tx.inForceInterval.findMany({
      where: { operatorId, ...during(at) },
      include: { issue: { include: { candidate: { select: { head: true } } } } },
    });
    const mine = intervals.filter(({ issue }) => isFor(readHead(issue.candidate).effectivity, tail));
    const issues: Answer[] = [];
    for (const { procedureId, issueNumber } of mine) {
      issues.push(await answerFor(tx, operatorId, procedureId, issueNumber, at));
    }
    issues.sort((a, b) => (a.title < b.title ? -1 : 1));
    return { registration, at: at.toISOString(), standard: tail.standard, issues };
  });
}

type Answer = InForceAnswer['issues'][number];

async function answerFor(tx: Tx, operatorId: string, procedureId: string, number: number, at: Date): Promise<Answer> {
  const issue = await tx.issue.findUniqueOrThrow({
    where: { operatorId_procedureId_number: { operatorId, procedureId, number } },
    include: {
      interval: true,
      signOff: true,
      acknowledgements: { where: { at: { lte: at } }, orderBy: { at: 'asc' } },
      candidate: {
        omit: { content: true },
        include: {
          sheet: { select: { type: true, revision: true, importedAt: true } },
          draft: { select: { number: true } },
          reviews: { where: { verdict: 'recommended' }, orderBy: { at: 'desc' }, take: 1 },
          findings: { where: { answer: { kind: 'waiver' } }, include: { answer: true } },
        },
      },
    },
  });
  const { candidate, signOff } = issue;
  const hands = await handsIn(tx, operatorId, procedureId, candidate.draft.number);
  const readers = await lineAt(tx, operatorId, at);
  const told = new Set(issue.acknowledgements.map((receipt) => receipt.personId));
  const review = candidate.reviews[0];
  const nameOf = await namesOf(tx, [
    ...hands.editors,
    ...readers,
    ...told,
    signOff.personId,
    review?.personId ?? null,
    ...hands.waivers,
  ]);
  return {
    procedureId,
    title: readHead(candidate).title,
    issueNumber: number,
    from: issue.interval!.startsAt.toISOString(),
    until: issue.interval!.endsAt?.toISOString() ?? null,
    sha256: candidate.sha256,
    signedBy: nameOf(signOff.personId),
    signedAs: signOff.roleHeld,
    signedAt: signOff.at.toISOString(),
    recommendedBy: review ? nameOf(review.personId) : '',
    editedBy: hands.editors.map(nameOf).sort(),
    waivers: candidate.findings.map((finding) => ({
      check: finding.check,
      by: nameOf(finding.answer!.personId),
      reason: finding.answer!.reason,
      until: finding.answer!.until!.toISOString().slice(0, 10),
    })),
    sheetRevision: candidate.sheet?.revision ?? '',
    newerRevision: await newerRevision(tx, operatorId, candidate.sheet, at),
    policyVersion: candidate.policyVersion,
    checkSet: candidate.checkSet,
    acknowledgedBy: issue.acknowledgements.map(({ personId, at: time }) => ({
      name: nameOf(personId),
      at: time.toISOString(),
    })),
    notAcknowledgedBy: readers
      .filter((id) => !told.has(id))
      .map(nameOf)
      .sort(),
  };
}

/** Ids of the line pilots of that time: those who had to have read it. */
async function lineAt(tx: Tx, operatorId: string, at: Date): Promise<string[]> {
  const grants = await tx.roleGrant.findMany({
    where: {
      operatorId,
      role: 'line pilot',
      heldFrom: { lte: at },
      OR: [{ heldUntil: null }, { heldUntil: { gt: at } }],
    },
    distinct: ['personId'],
    select: { personId: true },
  });
  return grants.map((grant) => grant.personId);
}

type Revision = { readonly type: string; readonly importedAt: Date } | null;

async function newerRevision(tx: Tx, operatorId: string, used: Revision, at: Date): Promise<string | null> {
  if (!used) return null;
  const newer = await tx.sheetRevision.findFirst({
    where: { operatorId, type: used.type, importedAt: { gt: used.importedAt, lte: at } },
    orderBy: { importedAt: 'desc' },
  });
  return newer?.revision ?? null;
}
