// The first screen of everyone who writes, reviews or signs: what waits for me, and where every procedure stands.
import { type CandidateLine, candidateLines } from './candidate-lines.ts';
import type { Tx } from './db.ts';
import { day } from './facts.ts';
import { namesOf } from './names.ts';
import { may, type Standing } from './permit.ts';
import { readHead } from './text.ts';
import { type Answered, type Viewer, within } from './within.ts';

export type { CandidateLine, CandidateState } from './candidate-lines.ts';

export type DraftLine = {
  readonly draftId: string;
  readonly procedureId: string;
  readonly title: string;
  readonly number: number;
  readonly reason: string;
  /** ISO day or null. */
  readonly dueOn: string | null;
  readonly editors: readonly string[];
  /** Last journal entry made by a person, ISO time; null when nobody has written yet. */
  readonly lastEdit: string | null;
  readonly mine: boolean;
};

export type ProcedureLine = {
  readonly procedureId: string;
  readonly title: string;
  readonly class: string;
  readonly phases: readonly string[];
  readonly openDraftId: string | null;
  readonly underReview: string | null;
  /** The issue in force now, whatever the tail; null when none was signed or none has begun. */
  readonly issue: { readonly number: number; readonly inForceSince: string } | null;
  readonly next: { readonly number: number; readonly inForceFrom: string } | null;
};

export type Desk = {
  readonly drafts: readonly DraftLine[];
  /** Waiting for a review, then waiting for a signature. */
  readonly review: readonly CandidateLine[];
  readonly signing: readonly CandidateLine[];
  /** Decided in the last 30 days on text that the viewer submitted. */
  readonly decided: readonly CandidateLine[];
  readonly procedures: readonly ProcedureLine[];
  readonly may: {
    readonly write: boolean;
    readonly readDrafts: boolean;
    readonly review: boolean;
    readonly sign: boolean;
  };
};

const DECIDED_MS = 30 * 24 * 60 * 60_000;

export function desk(viewer: Viewer): Answered<Desk> {
  return within(viewer, async (tx, standing) => {
    const { operatorId, at } = standing;
    const can = {
      write: may(standing, 'write'),
      readDrafts: may(standing, 'read drafts'),
      review: may(standing, 'review'),
      sign: may(standing, 'sign'),
    };
    const reads = may(standing, 'read candidates');
    const waiting = reads ? await candidateLines(tx, standing, { state: { in: ['waiting', 'recommended'] } }) : [];
    const decidedAfter = new Date(at.getTime() - DECIDED_MS);
    const decided = await candidateLines(tx, standing, {
      submittedById: standing.personId,
      submittedAt: { gt: decidedAfter },
      state: { in: ['signed', 'sent back', 'refused'] },
    });
    return {
      drafts: can.readDrafts ? await draftLines(tx, standing) : [],
      review: waiting.filter((line) => line.state === 'waiting'),
      signing: waiting.filter((line) => line.state === 'recommended'),
      decided,
      procedures: await procedureLines(tx, operatorId, at, can.readDrafts, reads),
      may: can,
    };
  });
}

async function draftLines(tx: Tx, standing: Standing): Promise<DraftLine[]> {
  const { operatorId, personId } = standing;
  const drafts = await tx.draft.findMany({
    where: { operatorId, state: 'open' },
    include: { procedure: true, changeRequest: true },
    orderBy: { startedAt: 'desc' },
  });
  const edits = await tx.draftUpdate.groupBy({
    by: ['draftId', 'personId'],
    where: { operatorId, draftId: { in: drafts.map((draft) => draft.id) }, personId: { not: null } },
    _max: { at: true },
  });
  const nameOf = await namesOf(
    tx,
    edits.map((edit) => edit.personId),
  );
  return drafts.map((draft) => {
    const own = edits.filter((edit) => edit.draftId === draft.id);
    const last = own.map((edit) => edit._max.at!.getTime());
    return {
      draftId: draft.id,
      procedureId: draft.procedureId,
      title: draft.procedure.title,
      number: draft.number,
      reason: draft.changeRequest.reason,
      dueOn: draft.changeRequest.dueOn && day(draft.changeRequest.dueOn),
      editors: own.map((edit) => nameOf(edit.personId)).sort(),
      lastEdit: last.length > 0 ? new Date(Math.max(...last)).toISOString() : null,
      mine: draft.changeRequest.ownerId === personId || own.some((edit) => edit.personId === personId),
    };
  });
}

async function procedureLines(
  tx: Tx,
  operatorId: string,
  at: Date,
  drafts: boolean,
  candidates: boolean,
): Promise<ProcedureLine[]> {
  const rows = await tx.procedure.findMany({
    where: { operatorId },
    orderBy: { title: 'asc' },
    include: {
      drafts: { where: { state: 'open' }, select: { id: true } },
      candidates: { where: { state: { in: ['waiting', 'recommended'] } }, select: { id: true } },
      issues: {
        where: { interval: { OR: [{ endsAt: null }, { endsAt: { gt: at } }] } },
        include: { interval: true, candidate: { select: { head: true } } },
      },
    },
  });
  return rows.map((row) => {
    const now = row.issues.find((issue) => issue.interval!.startsAt <= at);
    const next = row.issues.find((issue) => issue.interval!.startsAt > at);
    const head = (now ?? next) && readHead((now ?? next)!.candidate);
    return {
      procedureId: row.id,
      title: row.title,
      class: head?.class ?? '',
      phases: head?.phases ?? [],
      openDraftId: drafts ? (row.drafts[0]?.id ?? null) : null,
      underReview: candidates ? (row.candidates[0]?.id ?? null) : null,
      issue: now ? { number: now.number, inForceSince: now.interval!.startsAt.toISOString() } : null,
      next: next ? { number: next.number, inForceFrom: next.interval!.startsAt.toISOString() } : null,
    };
  });
}
