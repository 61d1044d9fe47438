// The reader: what is in force for one tail, and nothing from drafts or candidates.

import type { Change } from '../diff/change.ts';
import { compare } from '../diff/compare.ts';
import type { Policy } from '../policy/policy.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { Tx } from './db.ts';
import { Refused } from './errors.ts';
import { during } from './issues.ts';
import { labelsOf, withLabels } from './labels.ts';
import { namesOf } from './names.ts';
import { may, permit, type Standing } from './permit.ts';
import { enter } from './record-entry.ts';
import { isFor, type TailLine, tailAt, tailLines } from './tails.ts';
import { frozen, readHead } from './text.ts';
import { type Answered, type Viewer, within } from './within.ts';

export type { TailLine } from './tails.ts';

export type InForceLine = {
  readonly procedureId: string;
  readonly title: string;
  readonly class: string;
  readonly phases: readonly string[];
  readonly issueNumber: number;
  readonly inForceSince: string;
  readonly acknowledged: boolean;
  /** An issue that is signed and still to come. */
  readonly next: { readonly number: number; readonly inForceFrom: string } | null;
};

export type InForceList = { readonly tail: TailLine; readonly asOf: string; readonly lines: readonly InForceLine[] };

export type ReadIssue = {
  readonly procedureId: string;
  readonly issueNumber: number;
  /** With every label in place. */
  readonly procedure: Procedure;
  readonly sha256: string;
  readonly tail: TailLine | null;
  readonly asOf: string;
  readonly inForce: boolean;
  readonly inForceFrom: string;
  readonly inForceUntil: string | null;
  readonly signedBy: string;
  readonly signedAt: string;
  readonly acknowledgedAt: string | null;
  /** Steps that differ from the issue that the viewer acknowledged before; null when there was none. */
  readonly changedSince: { readonly issueNumber: number; readonly steps: readonly string[] } | null;
  /** For the bands. `content` goes to `readSheet`. */
  readonly sheet: { readonly revision: string; readonly content: unknown } | null;
  /** The policy version that the issue was signed under: its floors make the bands. */
  readonly policy: Policy;
  readonly may: { readonly acknowledge: boolean };
};

export function tails(viewer: Viewer): Answered<readonly TailLine[]> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read in force');
    return tailLines(tx, standing.operatorId, standing.at);
  });
}

/** What is in force now for the tail. What was, is the record's to answer (`inForceAt`). */
export function inForce(viewer: Viewer, registration: string): Answered<InForceList> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read in force');
    const { operatorId, personId, at } = standing;
    const tail = await tailAt(tx, operatorId, registration, at);
    const intervals = await tx.inForceInterval.findMany({
      where: { operatorId, OR: [{ endsAt: null }, { endsAt: { gt: at } }] },
      orderBy: { startsAt: 'asc' },
      include: {
        issue: {
          include: {
            candidate: { select: { head: true } },
            acknowledgements: { where: { personId }, select: { at: true } },
          },
        },
      },
    });
    const mine = intervals.filter(({ issue }) => isFor(readHead(issue.candidate).effectivity, tail));
    const lines = mine
      .filter((interval) => interval.startsAt <= at)
      .map((interval): InForceLine => {
        const head = readHead(interval.issue.candidate);
        const next = mine.find((other) => other.procedureId === interval.procedureId && other.startsAt > at);
        return {
          procedureId: interval.procedureId,
          title: head.title,
          class: head.class,
          phases: head.phases,
          issueNumber: interval.issueNumber,
          inForceSince: interval.startsAt.toISOString(),
          acknowledged: interval.issue.acknowledgements.length > 0,
          next: next ? { number: next.issueNumber, inForceFrom: next.startsAt.toISOString() } : null,
        };
      });
    return { tail, asOf: at.toISOString(), lines: lines.sort((a, b) => (a.title < b.title ? -1 : 1)) };
  });
}

/** The issue of that procedure in force now for that tail. */
export function readIssue(viewer: Viewer, registration: string, procedureId: string): Answered<ReadIssue> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read in force');
    const { operatorId, at } = standing;
    const tail = await tailAt(tx, operatorId, registration, at);
    const interval = await tx.inForceInterval.findFirst({ where: { operatorId, procedureId, ...during(at) } });
    if (!interval) throw new Refused('unknown');
    const page = await issuePage(tx, standing, procedureId, interval.issueNumber, tail);
    if (!page.inForce) throw new Refused('unknown');
    return page;
  });
}

/** Any signed issue, with `inForce` false when it is not. */
export function oldIssue(viewer: Viewer, procedureId: string, issueNumber: number): Answered<ReadIssue> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read in force');
    return issuePage(tx, standing, procedureId, issueNumber, null);
  });
}

/** All issues of a procedure, newest first. */
export function issuesOf(
  viewer: Viewer,
  procedureId: string,
): Answered<readonly { number: number; from: string; until: string | null; signedBy: string; signedAt: string }[]> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read in force');
    const { operatorId } = standing;
    const issues = await tx.issue.findMany({
      where: { operatorId, procedureId },
      orderBy: { number: 'desc' },
      include: { interval: true, signOff: { select: { personId: true, at: true } } },
    });
    if (issues.length === 0) throw new Refused('unknown');
    const nameOf = await namesOf(
      tx,
      issues.map((issue) => issue.signOff.personId),
    );
    return issues.map(({ number, interval, signOff }) => ({
      number,
      from: interval!.startsAt.toISOString(),
      until: interval!.endsAt?.toISOString() ?? null,
      signedBy: nameOf(signOff.personId),
      signedAt: signOff.at.toISOString(),
    }));
  });
}

async function issuePage(
  tx: Tx,
  standing: Standing,
  procedureId: string,
  number: number,
  tail: TailLine | null,
): Promise<ReadIssue> {
  const { operatorId, personId, at } = standing;
  const issue = await tx.issue.findUnique({
    where: { operatorId_procedureId_number: { operatorId, procedureId, number } },
    include: {
      interval: true,
      signOff: { select: { personId: true, at: true } },
      candidate: { include: { sheet: true, policy: true } },
      acknowledgements: { where: { personId } },
    },
  });
  if (!issue) throw new Refused('unknown');
  const { candidate, signOff } = issue;
  const interval = issue.interval!;
  const procedure = withLabels(frozen(candidate), await labelsOf(tx, operatorId, procedureId));
  const nameOf = await namesOf(tx, [signOff.personId]);
  const now = interval.startsAt <= at && (!interval.endsAt || interval.endsAt > at);
  const receipt = issue.acknowledgements[0];
  return {
    procedureId,
    issueNumber: number,
    procedure,
    sha256: candidate.sha256,
    tail,
    asOf: at.toISOString(),
    inForce: now && (tail === null || isFor(procedure.effectivity, tail)),
    inForceFrom: interval.startsAt.toISOString(),
    inForceUntil: interval.endsAt?.toISOString() ?? null,
    signedBy: nameOf(signOff.personId),
    signedAt: signOff.at.toISOString(),
    acknowledgedAt: receipt?.at.toISOString() ?? null,
    changedSince: await changedSince(tx, standing, procedure, number),
    sheet: candidate.sheet && {
      revision: candidate.sheet.revision,
      content: JSON.parse(candidate.sheet.content) as unknown,
    },
    policy: JSON.parse(candidate.policy.content) as Policy,
    may: { acknowledge: !receipt && (!interval.endsAt || interval.endsAt > at) && may(standing, 'acknowledge') },
  };
}

/** Against the newest issue before this one of which the viewer has given a receipt. */
async function changedSince(tx: Tx, standing: Standing, procedure: Procedure, number: number) {
  const { operatorId, personId } = standing;
  const seen = await tx.acknowledgement.findFirst({
    where: { operatorId, procedureId: procedure.id, personId, issueNumber: { lt: number } },
    orderBy: { issueNumber: 'desc' },
    include: { issue: { include: { candidate: { select: { content: true } } } } },
  });
  if (!seen) return null;
  const before = withLabels(frozen(seen.issue.candidate), await labelsOf(tx, operatorId, procedure.id));
  const steps = compare(before, procedure).flatMap((change: Change) =>
    change.kind === 'added' || change.kind === 'removed'
      ? [change.step.id as string]
      : change.kind === 'moved' || change.kind === 'field'
        ? [change.id]
        : [],
  );
  return { issueNumber: seen.issueNumber, steps: [...new Set(steps)] };
}

/** Once for a person and issue; the second time gives the first time's receipt. In force for the tail, or still to come. */
export function acknowledge(
  viewer: Viewer,
  input: { registration: string; procedureId: string; issueNumber: number; device: string },
): Answered<{ acknowledgedAt: string }> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'acknowledge');
    const { operatorId, personId, at } = standing;
    const { procedureId, issueNumber } = input;
    const tail = await tailAt(tx, operatorId, input.registration, at);
    const key = { operatorId, procedureId, number: issueNumber };
    const issue = await tx.issue.findUnique({
      where: { operatorId_procedureId_number: key },
      include: { interval: true, candidate: { select: { head: true, sha256: true } } },
    });
    if (!issue) throw new Refused('unknown');
    const over = issue.interval!.endsAt !== null && issue.interval!.endsAt <= at;
    if (over || !isFor(readHead(issue.candidate).effectivity, tail)) throw new Refused('not-in-force');
    const device = input.device.slice(0, 200);
    const data = { operatorId, procedureId, issueNumber, personId, device, at };
    // A second tap at the same moment waits for the first and then adds nothing.
    const { count } = await tx.acknowledgement.createMany({ data, skipDuplicates: true });
    if (count === 1) {
      const told = { issue: issueNumber, tail: tail.registration, sha256: issue.candidate.sha256, device };
      await enter(tx, standing, 'issue acknowledged', procedureId, told);
    }
    const kept = await tx.acknowledgement.findFirstOrThrow({
      where: { operatorId, procedureId, issueNumber, personId },
    });
    return { acknowledgedAt: kept.at.toISOString() };
  });
}
