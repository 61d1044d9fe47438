// All that one signature holds, as plain data: its canonical text is stored with the sign-off and hashed into the record.
import type { Tx } from './db.ts';
import type { holdCandidate } from './locks.ts';
import type { Standing } from './permit.ts';
import { tailsFor } from './tails.ts';
import { readHead } from './text.ts';

export type Signing = {
  readonly number: number;
  readonly startsAt: Date;
  readonly supersedes: number | null;
  readonly labels: readonly { readonly step: string; readonly label: string }[];
  readonly statement: string;
};

export async function whatIsSigned(
  tx: Tx,
  standing: Standing,
  candidate: Awaited<ReturnType<typeof holdCandidate>>,
  signing: Signing,
): Promise<Readonly<Record<string, unknown>>> {
  const { operatorId, personId, at } = standing;
  const findings = await tx.finding.findMany({
    where: { operatorId, candidateId: candidate.id },
    orderBy: { position: 'asc' },
    include: { answer: true },
  });
  const recommendation = await tx.review.findFirst({
    where: { operatorId, candidateId: candidate.id, verdict: 'recommended' },
    orderBy: { at: 'desc' },
  });
  const role = await tx.roleGrant.findFirst({
    where: {
      operatorId,
      personId,
      role: 'approver',
      heldFrom: { lte: at },
      OR: [{ heldUntil: null }, { heldUntil: { gt: at } }],
    },
  });
  const sheet = candidate.sheetRevisionId
    ? await tx.sheetRevision.findUnique({ where: { operatorId_id: { operatorId, id: candidate.sheetRevisionId } } })
    : null;
  const policy = await tx.policyVersion.findUniqueOrThrow({
    where: { operatorId_version: { operatorId, version: candidate.policyVersion } },
  });
  const { changeRequest } = candidate.draft;
  const { effectivity } = readHead(candidate);
  return {
    operator: operatorId,
    procedure: candidate.procedureId,
    issue: signing.number,
    candidate: candidate.id,
    sha256: candidate.sha256,
    labels: signing.labels,
    startsAt: signing.startsAt.toISOString(),
    supersedes: signing.supersedes,
    effectivity,
    tails: await tailsFor(tx, operatorId, effectivity, at),
    sheet: sheet && { id: sheet.id, revision: sheet.revision, sha256: sheet.sha256 },
    policy: { version: policy.version, sha256: policy.sha256 },
    checkSet: candidate.checkSet,
    notChecked: candidate.notChecked,
    findings: findings.map((finding) => ({
      check: finding.check,
      severity: finding.severity,
      step: finding.stepId,
      message: finding.message,
      read: finding.read,
      settled: finding.answer && {
        kind: finding.answer.kind,
        reason: finding.answer.reason,
        by: finding.answer.personId,
        at: finding.answer.at.toISOString(),
        until: finding.answer.until?.toISOString() ?? null,
      },
    })),
    recommendation: recommendation && {
      by: recommendation.personId,
      at: recommendation.at.toISOString(),
      statement: recommendation.statement,
      riskNote: recommendation.riskNote,
    },
    change: {
      id: changeRequest.id,
      reason: changeRequest.reason,
      source: changeRequest.source,
      riskNote: changeRequest.riskNote,
    },
    by: personId,
    role: 'approver',
    roleSince: role?.heldFrom.toISOString() ?? null,
    at: at.toISOString(),
    statement: signing.statement,
  };
}
