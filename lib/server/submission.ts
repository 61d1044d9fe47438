// Submitting: the text is read from the journal, checked with authority, frozen by its hash, and the draft closes.

import { canonicalText } from '../base/canonical.ts';
import { weigh } from '../check/answer.ts';
import { type Checked, checkProcedure } from '../check/check.ts';
import type { Finding } from '../check/finding.ts';
import { compare } from '../diff/compare.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { checkSet } from './check-set.ts';
import type { Tx } from './db.ts';
import { Refused } from './errors.ts';
import { day, type Facts, factsFor, type Settled, settledOf } from './facts.ts';
import { handsIn } from './hands.ts';
import { newId } from './ids.ts';
import { latestIssue } from './issues.ts';
import { labelsOf, refuseTakenLabels, withLabels } from './labels.ts';
import { holdCandidate, holdDraft } from './locks.ts';
import { permit, type Standing } from './permit.ts';
import { enter } from './record-entry.ts';
import { DRAFT_CLOSED, tell } from './revocation.ts';
import { holdsNul, said } from './said.ts';
import { sha256Hex } from './sha256.ts';
import { makeDraft } from './start.ts';
import { headOf, readText } from './text.ts';
import { type Answered, type Viewer, within } from './within.ts';

export type Submitted = {
  readonly candidateId: string;
  readonly number: number;
  readonly sha256: string;
  /** Where later edits go. */
  readonly nextDraftId: string;
};

type Draft = Awaited<ReturnType<typeof holdDraft>>;

/** Refused with `stop-open`, `answer-missing`, `check-crashed`, `draft-malformed`: the details list each one. */
export function submitDraft(viewer: Viewer, draftId: string, note: string): Answered<Submitted> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'write');
    const { operatorId } = standing;
    const draft = await holdDraft(tx, operatorId, draftId);
    if (draft.state !== 'open') throw new Refused('already-submitted');
    await refuseSecondReview(tx, operatorId, draft.procedureId);
    const reading = await readText(tx, operatorId, draftId);
    if (reading.problems.length > 0) throw new Refused('draft-malformed', reading.problems);
    if (reading.procedure.id !== draft.procedureId) throw new Refused('draft-malformed', ['It is another procedure.']);
    if (holdsNul(reading.procedure)) throw new Refused('draft-malformed', ['It holds a character that is no text.']);
    // Checked is what is frozen, not what it was made from.
    const content = canonicalText(reading.procedure);
    const procedure = JSON.parse(content) as Procedure;
    await refuseUnchanged(tx, operatorId, procedure);
    await refuseTakenLabels(tx, operatorId, procedure);
    const facts = await factsFor(tx, standing, procedure);
    if (!facts.policy) throw new Refused('no-policy');
    const checked = checkProcedure(procedure, facts);
    const answers = await settledOf(tx, operatorId, procedure.id);
    const answerOf = settleAll(checked, answers, day(standing.at), facts.policy.signOff.answerMonths);
    return freeze(tx, standing, { draft, note, content, procedure, facts, checked, answerOf });
  });
}

/** The answer that stands against each finding; refuses while one is missing. */
function settleAll(checked: Checked, answers: readonly Settled[], today: string, months: number) {
  if (checked.crashed.length > 0) {
    throw new Refused(
      'check-crashed',
      checked.crashed.map((crash) => `Check ${crash.number} ${crash.check}: ${crash.error}`),
    );
  }
  const weighed = weigh(checked.findings, answers, today, months);
  const open = (severity: Finding['severity']) =>
    weighed.open.filter((finding) => finding.severity === severity).map((finding) => finding.message);
  if (open('STOP').length > 0) throw new Refused('stop-open', open('STOP'));
  if (open('ANSWER').length > 0) throw new Refused('answer-missing', open('ANSWER'));
  return new Map(weighed.standing.map(({ finding, answer }) => [finding, (answer as Settled).id]));
}

type Frozen = {
  readonly draft: Draft;
  readonly note: string;
  readonly content: string;
  readonly procedure: Procedure;
  readonly facts: Facts;
  readonly checked: Checked;
  readonly answerOf: ReadonlyMap<Finding, string>;
};

async function freeze(tx: Tx, standing: Standing, frozen: Frozen): Promise<Submitted> {
  const { operatorId, personId, at } = standing;
  const { draft, content, procedure, facts, checked, answerOf } = frozen;
  const sha256 = sha256Hex(new TextEncoder().encode(content));
  const last = await tx.candidate.findFirst({
    where: { operatorId, procedureId: procedure.id },
    orderBy: { number: 'desc' },
    select: { number: true },
  });
  const id = newId('ca');
  const number = (last?.number ?? 0) + 1;
  await tx.candidate.create({
    data: {
      operatorId,
      id,
      procedureId: procedure.id,
      draftId: draft.id,
      number,
      content,
      sha256,
      head: headOf(procedure),
      sheetRevisionId: facts.sheetRow?.id ?? null,
      policyVersion: facts.policyVersion!,
      checkSet: checkSet(),
      checked: checked.checked,
      notChecked: checked.notChecked as object,
      submittedById: personId,
      submittedAt: at,
      note: said(frozen.note),
      state: 'waiting',
    },
    select: { id: true },
  });
  await tx.finding.createMany({
    data: checked.findings.map(({ at: place, fix, witness, ...finding }, position) => ({
      operatorId,
      candidateId: id,
      position,
      ...finding,
      cause: finding.cause.replaceAll('\u0000', ' '),
      stepId: place.step,
      field: place.field,
      witness: witness as object,
      ...(fix ? { fix: fix as object } : {}),
      answerId: answerOf.get(checked.findings[position]!) ?? null,
    })),
  });
  await tx.draft.update({
    where: { operatorId_id: { operatorId, id: draft.id } },
    data: { state: 'submitted', closedAt: at },
    select: { id: true },
  });
  await tx.procedure.update({
    where: { operatorId_id: { operatorId, id: procedure.id } },
    data: { title: procedure.title },
    select: { id: true },
  });
  const sheet = facts.sheetRow?.id ?? null;
  const told = {
    candidate: id,
    number,
    draft: draft.id,
    sha256,
    sheet,
    policy: facts.policyVersion,
    checks: checkSet(),
  };
  await enter(tx, standing, 'candidate submitted', procedure.id, told);
  const nextDraftId = await makeDraft(tx, standing, procedure, draft.changeRequestId, null);
  await tell(tx, DRAFT_CLOSED, draft.id);
  return { candidateId: id, number, sha256, nextDraftId };
}

/** The drafter takes a candidate back before it was decided. */
export function withdrawCandidate(viewer: Viewer, candidateId: string, reason: string): Answered<null> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'withdraw');
    const { operatorId, personId, at } = standing;
    const candidate = await holdCandidate(tx, operatorId, candidateId);
    const hands = await handsIn(tx, operatorId, candidate.procedureId, candidate.draft.number);
    if (!hands.editors.includes(personId)) throw new Refused('not-permitted');
    if (!['waiting', 'recommended'].includes(candidate.state)) throw new Refused('not-waiting');
    if (said(reason) === '') throw new Refused('reason-too-thin');
    await tx.review.create({
      data: {
        operatorId,
        id: newId('rv'),
        candidateId,
        personId,
        verdict: 'withdrawn',
        reason: said(reason),
        riskNote: '',
        statement: '',
        at,
      },
      select: { id: true },
    });
    await tx.candidate.update({
      where: { operatorId_id: { operatorId, id: candidateId } },
      data: { state: 'withdrawn' },
      select: { id: true },
    });
    await enter(tx, standing, 'candidate withdrawn', candidate.procedureId, { candidate: candidateId, reason });
    return null;
  });
}

async function refuseSecondReview(tx: Tx, operatorId: string, procedureId: string): Promise<void> {
  const other = await tx.candidate.findFirst({
    where: { operatorId, procedureId, state: { in: ['waiting', 'recommended'] } },
    select: { number: true },
  });
  if (other) throw new Refused('already-under-review', [`Candidate ${other.number} is under review.`]);
}

async function refuseUnchanged(tx: Tx, operatorId: string, procedure: Procedure): Promise<void> {
  const base = await latestIssue(tx, operatorId, procedure.id);
  const labels = await labelsOf(tx, operatorId, procedure.id);
  if (base && compare(base.procedure, withLabels(procedure, labels)).length === 0) throw new Refused('nothing-changed');
}
