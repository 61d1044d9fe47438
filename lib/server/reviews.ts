// Review: one page of what a candidate changes, and the two ways on from it.

import type { Finding, NotChecked } from '../check/finding.ts';
import type { Change } from '../diff/change.ts';
import { compare } from '../diff/compare.ts';
import type { Policy } from '../policy/policy.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { type CandidateLine, type CandidateState, candidateLines } from './candidate-lines.ts';
import type { Tx } from './db.ts';
import { type ChangeReason, changeOf } from './drafts.ts';
import { Refused, SENTENCES } from './errors.ts';
import { type Settled, settled } from './facts.ts';
import { handsIn } from './hands.ts';
import { newId } from './ids.ts';
import { latestIssue } from './issues.ts';
import { type Labels, labelsOf, withLabels } from './labels.ts';
import { holdCandidate } from './locks.ts';
import { namesOf } from './names.ts';
import { may, objection, permit, type Standing } from './permit.ts';
import { enter } from './record-entry.ts';
import { said } from './said.ts';
import { frozen } from './text.ts';
import { type Answered, type Viewer, within } from './within.ts';

export type CandidateFinding = Finding & {
  /** The answer or waiver that stands against it. */
  readonly settled: Settled | null;
};

export type OpenCandidate = {
  readonly candidateId: string;
  readonly procedureId: string;
  readonly title: string;
  readonly number: number;
  readonly state: CandidateState;
  readonly sha256: string;
  readonly procedure: Procedure;
  /** Against the issue in force; every step is new when there is none. */
  readonly base: { readonly number: number; readonly procedure: Procedure } | null;
  readonly changes: readonly Change[];
  readonly findings: readonly CandidateFinding[];
  /** Findings of the issue in force that this candidate no longer has. */
  readonly healed: readonly { readonly check: string; readonly message: string }[];
  readonly notChecked: readonly NotChecked[];
  readonly change: ChangeReason & { readonly ownedBy: string };
  readonly note: string;
  readonly submittedBy: string;
  readonly submittedAt: string;
  readonly editors: readonly string[];
  readonly sheet: { readonly revision: string; readonly content: unknown } | null;
  readonly policyVersion: number;
  /** That version, read: the screen draws the bands with its floors. */
  readonly policy: Policy;
  readonly checkSet: string;
  readonly reviews: readonly {
    readonly by: string;
    readonly at: string;
    readonly verdict: 'recommended' | 'sent back' | 'withdrawn';
    readonly reason: string;
    readonly riskNote: string;
    readonly statement: string;
  }[];
  readonly labels: Labels;
  readonly may: { readonly review: boolean; readonly sign: boolean; readonly withdraw: boolean };
  /** Why the viewer, whose part it would be, may not decide now, in a sentence; '' otherwise. */
  readonly whyNot: string;
};

export function reviewQueue(viewer: Viewer): Answered<readonly CandidateLine[]> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read candidates');
    return candidateLines(tx, standing, { state: 'waiting' });
  });
}

export function openCandidate(viewer: Viewer, candidateId: string): Answered<OpenCandidate> {
  return within(viewer, (tx, standing) => candidatePage(tx, standing, candidateId));
}

/** What review and signing both look at. */
export async function candidatePage(tx: Tx, standing: Standing, candidateId: string): Promise<OpenCandidate> {
  permit(standing, 'read candidates');
  const { operatorId } = standing;
  const row = await tx.candidate.findUnique({
    where: { operatorId_id: { operatorId, id: candidateId } },
    include: {
      draft: { include: { changeRequest: true } },
      sheet: true,
      policy: true,
      findings: { orderBy: { position: 'asc' }, include: { answer: true } },
      reviews: { orderBy: { at: 'asc' } },
    },
  });
  if (!row) throw new Refused('unknown');
  const { procedureId } = row;
  const { changeRequest } = row.draft;
  const hands = await handsIn(tx, operatorId, procedureId, row.draft.number);
  const labels = await labelsOf(tx, operatorId, procedureId);
  const procedure = withLabels(frozen(row), labels);
  const base = await baseOf(tx, operatorId, procedureId, candidateId);
  const nameOf = await namesOf(tx, [
    ...hands.editors,
    changeRequest.ownerId,
    row.submittedById,
    ...row.reviews.map((review) => review.personId),
    ...row.findings.map((finding) => finding.answer?.personId ?? null),
  ]);
  const has = new Set(row.findings.map((finding) => `${finding.check} ${finding.read}`));
  return {
    candidateId,
    procedureId,
    title: procedure.title,
    number: row.number,
    state: row.state as CandidateState,
    sha256: row.sha256,
    procedure,
    base: base && { number: base.number, procedure: base.procedure },
    changes: base ? compare(base.procedure, procedure) : [],
    findings: row.findings.map((finding) => ({
      check: finding.check,
      number: finding.number,
      severity: finding.severity as Finding['severity'],
      at: { step: finding.stepId, field: finding.field },
      message: finding.message,
      witness: finding.witness as Finding['witness'],
      cause: finding.cause,
      fix: (finding.fix ?? null) as Finding['fix'],
      read: finding.read,
      settled: finding.answer && settled(finding.answer, nameOf),
    })),
    healed: (base?.findings ?? []).filter((finding) => !has.has(`${finding.check} ${finding.read}`)),
    notChecked: row.notChecked as unknown as NotChecked[],
    change: changeOf(changeRequest, nameOf(changeRequest.ownerId)),
    note: row.note,
    submittedBy: nameOf(row.submittedById),
    submittedAt: row.submittedAt.toISOString(),
    editors: hands.editors.map(nameOf).sort(),
    sheet: row.sheet && { revision: row.sheet.revision, content: JSON.parse(row.sheet.content) as unknown },
    policyVersion: row.policyVersion,
    policy: JSON.parse(row.policy.content) as Policy,
    checkSet: row.checkSet,
    reviews: row.reviews.map((review) => ({
      by: nameOf(review.personId),
      at: review.at.toISOString(),
      verdict: review.verdict as OpenCandidate['reviews'][number]['verdict'],
      reason: review.reason,
      riskNote: review.riskNote,
      statement: review.statement,
    })),
    labels,
    may: {
      review: row.state === 'waiting' && may(standing, 'review', hands),
      sign: row.state === 'recommended' && may(standing, 'sign', hands),
      withdraw:
        ['waiting', 'recommended'].includes(row.state) &&
        may(standing, 'withdraw') &&
        hands.editors.includes(standing.personId),
    },
    whyNot: whyNot(standing, row.state, hands),
  };
}

/** The latest issue before this candidate, with what was found in it. */
async function baseOf(tx: Tx, operatorId: string, procedureId: string, candidateId: string) {
  const own = await tx.issue.findUnique({ where: { operatorId_candidateId: { operatorId, candidateId } } });
  const latest = await latestIssue(tx, operatorId, procedureId, own?.number);
  if (!latest) return null;
  const findings = await tx.finding.findMany({
    where: { operatorId, candidate: { issue: { procedureId, number: latest.number } } },
    select: { check: true, message: true, read: true },
  });
  return { ...latest, findings };
}

function whyNot(standing: Standing, state: string, hands: Parameters<typeof objection>[2]): string {
  const act = state === 'waiting' ? 'review' : state === 'recommended' ? 'sign' : null;
  const why = act && objection(standing, act, hands);
  return why && why !== 'not-permitted' ? SENTENCES[why] : '';
}

export function sendBack(viewer: Viewer, candidateId: string, reason: string): Answered<null> {
  return decide(viewer, candidateId, { verdict: 'sent back', reason, riskNote: '', statement: '' });
}

/** `statement`: what the captain states, in words; `riskNote`: the risk in one sentence. */
export function recommend(
  viewer: Viewer,
  candidateId: string,
  input: { reason: string; riskNote: string; statement: string },
): Answered<null> {
  return decide(viewer, candidateId, { verdict: 'recommended', ...input });
}

type Verdict = {
  readonly verdict: 'sent back' | 'recommended';
  readonly reason: string;
  readonly riskNote: string;
  readonly statement: string;
};

function decide(viewer: Viewer, candidateId: string, verdict: Verdict): Answered<null> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'review');
    const { operatorId, personId, at } = standing;
    const candidate = await holdCandidate(tx, operatorId, candidateId);
    const hands = await handsIn(tx, operatorId, candidate.procedureId, candidate.draft.number);
    permit(standing, 'review', hands);
    if (candidate.state !== 'waiting') throw new Refused('not-waiting');
    const { reason, riskNote, statement } = verdict;
    const words = { reason: said(reason), riskNote: said(riskNote), statement: said(statement) };
    const wanted = verdict.verdict === 'sent back' ? words.reason : words.statement;
    if (wanted === '') throw new Refused('reason-too-thin');
    const id = newId('rv');
    await tx.review.create({
      data: { operatorId, id, candidateId, personId, verdict: verdict.verdict, ...words, at },
      select: { id: true },
    });
    await tx.candidate.update({
      where: { operatorId_id: { operatorId, id: candidateId } },
      data: { state: verdict.verdict },
      select: { id: true },
    });
    const told = { candidate: candidateId, review: id, sha256: candidate.sha256, ...words };
    await enter(tx, standing, `candidate ${verdict.verdict}`, candidate.procedureId, told);
    return null;
  });
}
