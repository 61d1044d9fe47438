// Answers to ANSWER findings and waivers of STOP findings, bound to the fingerprint of what the check read.

import { reasonProblem, settleProblem } from '../check/answer.ts';
import { checkProcedure } from '../check/check.ts';
import type { ProcedureId } from '../procedure/procedure.ts';
import { Refused } from './errors.ts';
import { day, factsFor, type Settled, settled } from './facts.ts';
import { handsIn } from './hands.ts';
import { newId } from './ids.ts';
import { holdDraft } from './locks.ts';
import { namesOf } from './names.ts';
import { type Act, permit } from './permit.ts';
import { enter } from './record-entry.ts';
import { said } from './said.ts';
import { readText } from './text.ts';
import { type Answered, type Viewer, within } from './within.ts';

export type { Settled } from './facts.ts';

/** Names one finding of the draft as it stands: the server runs the checks itself and looks for it. */
export type FindingKey = { readonly check: string; readonly read: string };

const MONTH_MS = 31 * 24 * 60 * 60_000;

/** The reason must be of substance: as many different words as the policy wants. */
export function answerFinding(viewer: Viewer, draftId: string, finding: FindingKey, reason: string): Answered<Settled> {
  return settle(viewer, draftId, finding, { kind: 'answer', reason, until: null });
}

/** `expiresOn` as YYYY-MM-DD: until the end of that day, UTC; no further off than the policy lets a waiver stand. */
export function waiveStop(
  viewer: Viewer,
  draftId: string,
  finding: FindingKey,
  input: { reason: string; expiresOn: string },
): Answered<Settled> {
  return settle(viewer, draftId, finding, { kind: 'waiver', reason: input.reason, until: input.expiresOn });
}

type Deed = { readonly kind: Settled['kind']; readonly reason: string; readonly until: string | null };
const ACTS: Readonly<Record<Settled['kind'], Act>> = { answer: 'answer finding', waiver: 'waive finding' };

function settle(viewer: Viewer, draftId: string, key: FindingKey, deed: Deed): Answered<Settled> {
  return within(viewer, async (tx, standing) => {
    const { operatorId, personId, at } = standing;
    permit(standing, ACTS[deed.kind]);
    const draft = await holdDraft(tx, operatorId, draftId);
    if (draft.state !== 'open') throw new Refused('draft-closed');
    const hands = await handsIn(tx, operatorId, draft.procedureId, draft.number);
    permit(standing, ACTS[deed.kind], hands);
    const { procedure } = await readText(tx, operatorId, draftId);
    const facts = await factsFor(tx, standing, { ...procedure, id: draft.procedureId as ProcedureId });
    if (!facts.policy) throw new Refused('no-policy');
    const found = checkProcedure(procedure, facts).findings.filter((one) => one.check === key.check);
    const finding = found.find((one) => one.read === key.read);
    if (!finding) throw new Refused('finding-gone');
    const { severity } = finding;
    if ((severity === 'STOP') !== (deed.kind === 'waiver')) throw new Refused('not-answerable');
    const why = settleProblem(finding, { kind: deed.kind, by: personId, until: deed.until }, hands.editors);
    if (why) throw new Refused('not-answerable', [why]);
    const thin = reasonProblem(deed.reason, facts.policy.signOff.reasonWords);
    if (thin) throw new Refused('reason-too-thin', [thin]);
    const latest = new Date(at.getTime() + facts.policy.signOff.waiverMonths * MONTH_MS);
    if (deed.until !== null && !(deed.until >= day(at) && deed.until <= day(latest))) throw new Refused('expiry-wrong');
    const row = await tx.findingAnswer.create({
      data: {
        operatorId,
        id: newId('an'),
        procedureId: draft.procedureId,
        kind: deed.kind,
        check: finding.check,
        read: finding.read,
        stepId: finding.at.step,
        field: finding.at.field,
        message: finding.message,
        reason: said(deed.reason),
        until: deed.until === null ? null : new Date(`${deed.until}T00:00:00Z`),
        personId,
        at,
      },
    });
    const { id, check, read, reason } = row;
    const told = { id, draft: draftId, check, read, step: row.stepId, reason, until: deed.until };
    await enter(tx, standing, deed.kind === 'waiver' ? 'finding waived' : 'finding answered', draft.procedureId, told);
    return settled(row, await namesOf(tx, [personId]));
  });
}
