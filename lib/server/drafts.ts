// Drafts: opened, started, brought in from a file. The text itself is the journal's (journal.ts).

import type { Governance } from '../check/governance.ts';
import type { Told } from '../check/told.ts';
import { readPlacedProcedure, writeProcedureFile } from '../file/procedure-file.ts';
import type { Fleet, Library } from '../library/library.ts';
import type { Policy } from '../policy/policy.ts';
import type { Procedure, ProcedureId } from '../procedure/procedure.ts';
import { blankProcedure } from './blank.ts';
import type { Tx } from './db.ts';
import { Refused } from './errors.ts';
import { day, factsFor, type Settled, settledOf } from './facts.ts';
import { fileProblemLines } from './file-problems.ts';
import { answersToFile, type TakenAnswers, takeAnswers } from './filed-answers.ts';
import { handsIn } from './hands.ts';
import { newId } from './ids.ts';
import { latestIssue } from './issues.ts';
import { type Labels, labelsOf, withLabels } from './labels.ts';
import { holdProcedure } from './locks.ts';
import { namesOf } from './names.ts';
import { may, permit, type Standing } from './permit.ts';
import { enter } from './record-entry.ts';
import { said } from './said.ts';
import { makeDraft, openChangeRequest } from './start.ts';
import { readText } from './text.ts';
import { type Answered, type Viewer, within } from './within.ts';

/** Why a procedure changes. `dueOn` as YYYY-MM-DD. */
export type ChangeReason = {
  readonly reason: string;
  readonly source: string;
  readonly riskNote: string;
  readonly dueOn: string | null;
};

export type OpenDraft = {
  readonly draftId: string;
  readonly procedureId: string;
  readonly title: string;
  readonly number: number;
  readonly state: 'open' | 'submitted' | 'dropped';
  /** The draft that took over when this one was submitted. */
  readonly nextDraftId: string | null;
  /** The candidate that was frozen from this draft. */
  readonly candidateId: string | null;
  readonly change: ChangeReason & { readonly ownedBy: string };
  readonly editors: readonly string[];
  /** The text as the journal has it now; the live document goes on from here. */
  readonly procedure: Procedure;
  /** Of what could not be read from the stored draft, in words. */
  readonly readProblems: readonly string[];
  /** Labels given so far in this procedure, by step id. */
  readonly labels: Labels;
  /** What the checks read. `sheet` is the stored content: give it to `readSheet`. */
  readonly sheet: { readonly revision: string; readonly content: unknown } | null;
  readonly policy: { readonly version: number; readonly policy: Policy } | null;
  /** What library checks read. Of the other procedures only what they tell each other (`toldBy`), not their texts. */
  readonly library: Library | null;
  readonly others: readonly Told[] | null;
  readonly fleet: Fleet | null;
  /** What is asked of the change: the issue before, the reasons given, the sources cited when the draft was opened. */
  readonly governance: Governance | null;
  /** Answers and waivers of this procedure, to be matched with the findings by check and `read`. */
  readonly settled: readonly Settled[];
  /** The issue in force, to compare with. */
  readonly base: { readonly number: number; readonly procedure: Procedure } | null;
  /** The latest candidate that came back, with why. */
  readonly sentBack: { readonly by: string; readonly at: string; readonly reason: string } | null;
  readonly may: {
    readonly write: boolean;
    readonly answer: boolean;
    readonly waive: boolean;
    readonly submit: boolean;
  };
};

export type DraftStarted = { readonly draftId: string; readonly procedureId: string };

/** One sitting of one person: journal entries less than half an hour apart. */
export type Sitting = { readonly by: string; readonly from: string; readonly until: string; readonly updates: number };

export function openDraft(viewer: Viewer, draftId: string): Answered<OpenDraft> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read drafts');
    const { operatorId } = standing;
    const draft = await findDraft(tx, operatorId, draftId);
    const { procedureId } = draft;
    const reading = await readText(tx, operatorId, draftId);
    const hands = await handsIn(tx, operatorId, procedureId, draft.number);
    const next = await tx.draft.findFirst({
      where: { operatorId, procedureId, number: { gt: draft.number } },
      orderBy: { number: 'desc' },
      select: { id: true },
    });
    const facts = await factsFor(tx, standing, { ...reading.procedure, id: procedureId as ProcedureId });
    const back = await tx.review.findFirst({
      where: { operatorId, verdict: 'sent back', candidate: { procedureId, state: 'sent back' } },
      orderBy: { at: 'desc' },
    });
    const { changeRequest } = draft;
    const nameOf = await namesOf(tx, [...hands.editors, changeRequest.ownerId, back?.personId ?? null]);
    const open = draft.state === 'open';
    const writes = open && may(standing, 'write');
    return {
      draftId,
      procedureId,
      title: reading.procedure.title || draft.procedure.title,
      number: draft.number,
      state: draft.state as OpenDraft['state'],
      nextDraftId: open ? null : (next?.id ?? null),
      candidateId: draft.candidate?.id ?? null,
      change: changeOf(changeRequest, nameOf(changeRequest.ownerId)),
      editors: hands.editors.map(nameOf).sort(),
      procedure: reading.procedure,
      readProblems: reading.problems,
      labels: await labelsOf(tx, operatorId, procedureId),
      sheet: facts.sheetRow && { revision: facts.sheetRow.revision, content: facts.sheetRow.content },
      policy: facts.policy && { version: facts.policyVersion!, policy: facts.policy },
      library: facts.library,
      others: facts.others,
      fleet: facts.fleet,
      governance: facts.governance,
      settled: await settledOf(tx, operatorId, procedureId),
      base: await latestIssue(tx, operatorId, procedureId),
      sentBack: back && { by: nameOf(back.personId), at: back.at.toISOString(), reason: back.reason },
      may: {
        write: writes,
        answer: open && may(standing, 'answer finding'),
        waive: open && may(standing, 'waive finding', hands),
        submit: writes,
      },
    };
  });
}

/** An empty procedure with its first draft. */
export function createProcedure(
  viewer: Viewer,
  input: { title: string; change: ChangeReason },
): Answered<DraftStarted> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'write');
    const fleet = await tx.fleet.findFirst({ where: { operatorId: standing.operatorId } });
    const content = blankProcedure(newId('pr'), said(input.title), fleet?.type ?? '');
    return begin(tx, standing, content, input.change);
  });
}

/** A draft from the issue in force (else from the latest text there is). One draft of a procedure is open at a time. */
export function startDraft(viewer: Viewer, procedureId: string, change: ChangeReason): Answered<DraftStarted> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'write');
    const { operatorId } = standing;
    await holdProcedure(tx, operatorId, procedureId);
    await refuseSecondDraft(tx, operatorId, procedureId);
    const latest = await latestIssue(tx, operatorId, procedureId);
    const last = await tx.draft.findFirst({ where: { operatorId, procedureId }, orderBy: { number: 'desc' } });
    const text = latest?.procedure ?? (last && (await readText(tx, operatorId, last.id)).procedure);
    if (!text) throw new Refused('unknown');
    const request = await openChangeRequest(tx, standing, procedureId, change);
    return { draftId: await makeDraft(tx, standing, text, request, null), procedureId };
  });
}

/** A new procedure from a file in the documented format, or the next draft of the procedure whose id the file carries. */
export function importProcedureFile(
  viewer: Viewer,
  input: { text: string; name: string; change: ChangeReason },
): Answered<DraftStarted & { readonly answers: TakenAnswers }> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'write');
    const { operatorId } = standing;
    const read = readPlacedProcedure(input.text, input.name);
    if (!read.ok) throw new Refused('file-unreadable', fileProblemLines(read.error));
    const { procedure: content, answers } = read.value;
    const known = await tx.procedure.findUnique({ where: { operatorId_id: { operatorId, id: content.id } } });
    if (!known) {
      const begun = await begin(tx, standing, content, input.change);
      return { ...begun, answers: await takeAnswers(tx, standing, content, answers) };
    }
    await holdProcedure(tx, operatorId, content.id);
    await refuseSecondDraft(tx, operatorId, content.id);
    const request = await openChangeRequest(tx, standing, content.id, input.change);
    const draftId = await makeDraft(tx, standing, content, request, standing.personId);
    return { draftId, procedureId: content.id, answers: await takeAnswers(tx, standing, content, answers) };
  });
}

/** The draft as a file in the documented format. */
export function exportDraft(viewer: Viewer, draftId: string): Answered<{ name: string; text: string }> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read drafts');
    const draft = await findDraft(tx, standing.operatorId, draftId);
    const { procedure } = await readText(tx, standing.operatorId, draftId);
    const labels = await labelsOf(tx, standing.operatorId, draft.procedureId);
    const answers = await answersToFile(tx, standing.operatorId, draft.procedureId);
    const stem = procedure.title.toLowerCase().replace(/[^a-z0-9]+/g, '-');
    return {
      name: `${stem}-draft-${draft.number}.yaml`,
      text: writeProcedureFile(withLabels(procedure, labels), answers),
    };
  });
}

const SITTING_MS = 30 * 60_000;

export function draftHistory(viewer: Viewer, draftId: string): Answered<readonly Sitting[]> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read drafts');
    const { operatorId } = standing;
    await findDraft(tx, operatorId, draftId);
    const updates = await tx.draftUpdate.findMany({
      where: { operatorId, draftId },
      orderBy: { seq: 'asc' },
      select: { personId: true, at: true },
    });
    const nameOf = await namesOf(
      tx,
      updates.map((update) => update.personId),
    );
    const sittings: Sitting[] = [];
    const open = new Map<string | null, number>();
    for (const { personId, at } of updates) {
      const index = open.get(personId);
      const before = index === undefined ? undefined : sittings[index];
      if (before && at.getTime() - Date.parse(before.until) < SITTING_MS) {
        sittings[index!] = { ...before, until: at.toISOString(), updates: before.updates + 1 };
      } else {
        open.set(personId, sittings.length);
        sittings.push({ by: nameOf(personId), from: at.toISOString(), until: at.toISOString(), updates: 1 });
      }
    }
    return sittings.reverse();
  });
}

type Request = { reason: string; source: string; riskNote: string; dueOn: Date | null };
export const changeOf = ({ reason, source, riskNote, dueOn }: Request, ownedBy: string) => ({
  reason,
  source,
  riskNote,
  dueOn: dueOn && day(dueOn),
  ownedBy,
});

async function findDraft(tx: Tx, operatorId: string, id: string) {
  const draft = await tx.draft.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: { procedure: true, changeRequest: true, candidate: { select: { id: true } } },
  });
  if (!draft) throw new Refused('unknown');
  return draft;
}

async function refuseSecondDraft(tx: Tx, operatorId: string, procedureId: string): Promise<void> {
  const open = await tx.draft.findFirst({ where: { operatorId, procedureId, state: 'open' } });
  if (open) throw new Refused('draft-open');
}

async function begin(tx: Tx, standing: Standing, content: Procedure, change: ChangeReason): Promise<DraftStarted> {
  const { operatorId, personId, at } = standing;
  const { id, title } = content;
  await tx.procedure.create({ data: { operatorId, id, title, createdById: personId, createdAt: at } });
  await enter(tx, standing, 'procedure created', id, { title });
  const request = await openChangeRequest(tx, standing, id, change);
  return { draftId: await makeDraft(tx, standing, content, request, personId), procedureId: id };
}
