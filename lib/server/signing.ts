// Signing: what the signature freezes is shown, the password is asked again, and the issue is made in one transaction.

import { canonicalText } from '../base/canonical.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { whatIsSigned } from './binding.ts';
import { type CandidateLine, candidateLines } from './candidate-lines.ts';
import type { Tx } from './db.ts';
import { Refused } from './errors.ts';
import { type Act, governanceAtSigning } from './governance.ts';
import { handsIn } from './hands.ts';
import { newId } from './ids.ts';
import { labelsToGive } from './labels.ts';
import { holdCandidate, holdProcedure } from './locks.ts';
import { confirmPassword } from './passwords.ts';
import { permit, type Standing } from './permit.ts';
import { type AtPublication, checkPublication, refuseStops } from './publication.ts';
import { enter } from './record-entry.ts';
import { candidatePage, type OpenCandidate } from './reviews.ts';
import { DRAFT_CLOSED, tell } from './revocation.ts';
import { said } from './said.ts';
import { sha256Hex } from './sha256.ts';
import { tailsFor } from './tails.ts';
import { frozen } from './text.ts';
import { type Answered, type Viewer, within } from './within.ts';

export type OpenForSigning = OpenCandidate & {
  /** The number that the issue would get now. */
  readonly issueNumber: number;
  /** Labels that unlabelled steps would get. */
  readonly newLabels: readonly { readonly step: string; readonly label: string }[];
  /** Tails that the effectivity names now. */
  readonly tails: readonly string[];
  readonly supersedes: { readonly number: number; readonly inForceSince: string } | null;
  /** ISO time after which the issue must come in force, since another is to come then; null: from now on. */
  readonly after: string | null;
  /** What the checks of publication say, were the viewer to sign now: a STOP holds the signature, the rest is signed with it. */
  readonly atPublication: AtPublication;
  /** The sentence that is signed. */
  readonly statement: string;
};

export type Signed = { readonly procedureId: string; readonly issueNumber: number; readonly inForceFrom: string };

const STATEMENT =
  'I have read this candidate with its findings, answers and waivers, and I approve exactly this content to be flown from the effective time.';
/** A time typed to the minute may lie this far back. */
const MINUTE_MS = 60_000;

export function signingQueue(viewer: Viewer): Answered<readonly CandidateLine[]> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read candidates');
    return candidateLines(tx, standing, { state: 'recommended' });
  });
}

export function openForSigning(viewer: Viewer, candidateId: string): Answered<OpenForSigning> {
  return within(viewer, async (tx, standing) => {
    const page = await candidatePage(tx, standing, candidateId);
    const { operatorId, at } = standing;
    const { procedureId, procedure } = page;
    const labels = await labelsToGive(tx, operatorId, procedure);
    const last = await unended(tx, operatorId, procedureId);
    const begun = last !== null && last.startsAt <= at;
    const candidate = await tx.candidate.findUniqueOrThrow({
      where: { operatorId_id: { operatorId, id: candidateId } },
      include: { draft: true },
    });
    const issueNumber = await nextNumber(tx, operatorId, procedureId);
    const act = { sha256: page.sha256, published: page.sha256, issue: issueNumber, startsAt: at };
    return {
      ...page,
      issueNumber,
      atPublication: await askPublication(tx, standing, candidate, act),
      newLabels: labels.given,
      tails: await tailsFor(tx, operatorId, procedure.effectivity, at),
      supersedes: last && { number: last.issueNumber, inForceSince: last.startsAt.toISOString() },
      after: last && !begun ? last.startsAt.toISOString() : null,
      statement: STATEMENT,
    };
  });
}

/** `sha256`: the hash that was on the screen. `effectiveFrom`: ISO time, or null for at once. */
export async function signCandidate(
  viewer: Viewer,
  candidateId: string,
  input: { sha256: string; password: string; effectiveFrom: string | null },
): Answered<Signed> {
  // The failures of a password are counted even though the refusal undoes everything else, so it is asked in between.
  const before = await within(viewer, async (tx, standing) => {
    await holdToSign(tx, standing, candidateId);
  });
  if (!before.ok) return before;
  const confirmed = await confirmPassword(viewer, input.password);
  if (!confirmed.ok) return confirmed;
  return within(viewer, async (tx, standing) => {
    const candidate = await holdToSign(tx, standing, candidateId);
    const { operatorId, at } = standing;
    const { procedureId } = candidate;
    await holdProcedure(tx, operatorId, procedureId);
    const content = new TextEncoder().encode(candidate.content);
    if (sha256Hex(content) !== candidate.sha256 || input.sha256 !== candidate.sha256)
      throw new Refused('content-moved');
    const startsAt = effectiveTime(input.effectiveFrom, at);
    const last = await unended(tx, operatorId, procedureId);
    if (last && last.startsAt >= startsAt) throw new Refused('effective-before-later', [last.startsAt.toISOString()]);
    const number = await nextNumber(tx, operatorId, procedureId);
    const labels = await giveLabels(tx, operatorId, frozen(candidate));
    const supersedes = last?.issueNumber ?? null;
    const act = { sha256: input.sha256, published: sha256Hex(content), issue: number, startsAt };
    const publication = await askPublication(tx, standing, candidate, act);
    refuseStops(publication);
    const signed = { number, startsAt, supersedes, labels, statement: STATEMENT };
    const binds = canonicalText({ ...(await whatIsSigned(tx, standing, candidate, signed)), publication });
    const bindsSha256 = sha256Hex(new TextEncoder().encode(binds));
    const signOff = await writeSignOff(tx, standing, candidateId, {
      verdict: 'signed',
      statement: STATEMENT,
      reason: '',
      method: 'password asked again at the act of signing',
      binds,
      bindsSha256,
      effectiveFrom: startsAt,
    });
    await tx.issue.create({ data: { operatorId, procedureId, number, candidateId, signOffId: signOff } });
    if (last) {
      const key = { operatorId, procedureId, issueNumber: last.issueNumber };
      await tx.inForceInterval.update({
        where: { operatorId_procedureId_issueNumber: key },
        data: { endsAt: startsAt },
        select: { issueNumber: true },
      });
    }
    await tx.inForceInterval.create({ data: { operatorId, procedureId, issueNumber: number, startsAt } });
    await setState(tx, operatorId, candidateId, 'signed');
    await enter(tx, standing, 'issue signed', procedureId, {
      candidate: candidateId,
      issue: number,
      sha256: candidate.sha256,
      signOff,
      bindsSha256,
      startsAt: startsAt.toISOString(),
      supersedes,
      labels,
    });
    await closeChange(tx, standing, candidate);
    return { procedureId, issueNumber: number, inForceFrom: startsAt.toISOString() };
  });
}

export function refuseCandidate(viewer: Viewer, candidateId: string, reason: string): Answered<null> {
  return within(viewer, async (tx, standing) => {
    const candidate = await holdToSign(tx, standing, candidateId);
    if (said(reason) === '') throw new Refused('reason-too-thin');
    const signOff = await writeSignOff(tx, standing, candidateId, {
      verdict: 'refused',
      statement: '',
      reason: said(reason),
      method: 'signed in',
      binds: '',
      bindsSha256: '',
      effectiveFrom: null,
    });
    await setState(tx, standing.operatorId, candidateId, 'refused');
    const told = { candidate: candidateId, signOff, sha256: candidate.sha256, reason: said(reason) };
    await enter(tx, standing, 'candidate refused', candidate.procedureId, told);
    return null;
  });
}

async function holdToSign(tx: Tx, standing: Standing, candidateId: string) {
  permit(standing, 'sign');
  const candidate = await holdCandidate(tx, standing.operatorId, candidateId);
  const hands = await handsIn(tx, standing.operatorId, candidate.procedureId, candidate.draft.number);
  permit(standing, 'sign', hands);
  if (candidate.state !== 'recommended') throw new Refused('not-waiting');
  return candidate;
}

async function askPublication(
  tx: Tx,
  standing: Standing,
  candidate: Omit<Candidate, 'draft' | 'procedure'> & { readonly draft: { readonly number: number } },
  act: Act,
): Promise<AtPublication> {
  const hands = await handsIn(tx, standing.operatorId, candidate.procedureId, candidate.draft.number);
  const governance = await governanceAtSigning(tx, standing, candidate, hands, act);
  return checkPublication(tx, standing, frozen(candidate), governance);
}

type Candidate = Awaited<ReturnType<typeof holdToSign>>;

function effectiveTime(asked: string | null, at: Date): Date {
  if (asked === null) return at;
  const time = new Date(asked);
  if (Number.isNaN(time.getTime())) throw new Refused('not-understood', ['effectiveFrom: not a time']);
  if (time.getTime() < at.getTime() - MINUTE_MS) throw new Refused('effective-in-past');
  return time < at ? at : time;
}

const unended = (tx: Tx, operatorId: string, procedureId: string) =>
  tx.inForceInterval.findFirst({ where: { operatorId, procedureId, endsAt: null } });

async function nextNumber(tx: Tx, operatorId: string, procedureId: string): Promise<number> {
  const last = await tx.issue.findFirst({ where: { operatorId, procedureId }, orderBy: { number: 'desc' } });
  return (last?.number ?? 0) + 1;
}

async function giveLabels(tx: Tx, operatorId: string, procedure: Procedure) {
  const { prefix, given } = await labelsToGive(tx, operatorId, procedure);
  const procedureId = procedure.id;
  await tx.procedure.update({
    where: { operatorId_id: { operatorId, id: procedureId } },
    data: { labelPrefix: prefix },
    select: { id: true },
  });
  await tx.stepLabel.createMany({
    data: given.map(({ step, label }) => ({ operatorId, procedureId, stepId: step, label })),
  });
  return given;
}

type Said = {
  readonly verdict: 'signed' | 'refused';
  readonly statement: string;
  readonly reason: string;
  readonly method: string;
  readonly binds: string;
  readonly bindsSha256: string;
  readonly effectiveFrom: Date | null;
};

async function writeSignOff(tx: Tx, standing: Standing, candidateId: string, said: Said): Promise<string> {
  const { operatorId, personId, at } = standing;
  const id = newId('so');
  await tx.signOff.create({
    data: { operatorId, id, candidateId, personId, roleHeld: 'approver', ...said, at },
    select: { id: true },
  });
  return id;
}

const setState = (tx: Tx, operatorId: string, id: string, state: 'signed' | 'refused') =>
  tx.candidate.update({ where: { operatorId_id: { operatorId, id } }, data: { state }, select: { id: true } });

/** The change is made. A next draft in which nobody has written is dropped, and the request is closed with it. */
async function closeChange(tx: Tx, standing: Standing, candidate: Candidate): Promise<void> {
  const { operatorId, at } = standing;
  const next = await tx.draft.findFirst({
    where: { operatorId, procedureId: candidate.procedureId, state: 'open' },
    include: { updates: { where: { personId: { not: null } }, take: 1, select: { seq: true } } },
  });
  if (next && next.updates.length > 0) return;
  if (next) {
    await tx.draft.update({
      where: { operatorId_id: { operatorId, id: next.id } },
      data: { state: 'dropped', closedAt: at },
      select: { id: true },
    });
    await tell(tx, DRAFT_CLOSED, next.id);
  }
  await tx.changeRequest.update({
    where: { operatorId_id: { operatorId, id: candidate.draft.changeRequestId } },
    data: { state: 'closed' },
    select: { id: true },
  });
}
