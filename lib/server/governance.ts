// What the record says of a text and its change, as the checks on the change itself (107 to 118) are given it. Parts that
// have no table yet (difference register, temporary revisions, devices, feedback) stay unknown, and their checks say so.
import { type ChangeFacts, type Governance, governanceOn, type Signing, type SourceFact } from '../check/governance.ts';
import type { Source } from '../library/library.ts';
import { allSteps, type Procedure } from '../procedure/procedure.ts';
import type { Tx } from './db.ts';
import type { handsIn } from './hands.ts';
import { latestIssue } from './issues.ts';
import type { holdCandidate } from './locks.ts';
import type { Standing } from './permit.ts';

const day = (date: Date): string => date.toISOString().slice(0, 10);

/** At the desk and at submission: what changed since the last issue and why, and the sources that the text cites. */
export async function governanceFor(
  tx: Tx,
  { operatorId, at }: Pick<Standing, 'operatorId' | 'at'>,
  procedure: Procedure,
): Promise<Governance> {
  const base = await latestIssue(tx, operatorId, procedure.id);
  return governanceOn(day(at), {
    change: await changeOf(tx, operatorId, procedure.id, base),
    sources: await sourcesOf(tx, operatorId, procedure),
  });
}

/** The reasons of the change request stand for every change that it led to; a step's own source goes before them. */
async function changeOf(
  tx: Tx,
  operatorId: string,
  procedureId: string,
  base: Awaited<ReturnType<typeof latestIssue>>,
): Promise<ChangeFacts> {
  const draft = await tx.draft.findFirst({
    where: { operatorId, procedureId },
    orderBy: { number: 'desc' },
    include: { changeRequest: true },
  });
  const request = draft?.changeRequest;
  const whole = request && {
    step: '',
    field: '',
    reason: request.reason,
    source: request.source,
    risk: request.riskNote,
  };
  return { base: base && { issue: base.number, procedure: base.procedure }, marks: whole ? [whole] : [] };
}

/** The library's sources that steps name, each with the revision that the words cite and the newest that was brought in. */
async function sourcesOf(tx: Tx, operatorId: string, procedure: Procedure): Promise<readonly SourceFact[]> {
  const cites = allSteps(procedure).filter((step) => step.source.trim() !== '');
  if (cites.length === 0) return [];
  const rows = await tx.libraryEntry.findMany({
    where: { operatorId, kind: 'source' },
    orderBy: [{ key: 'asc' }, { version: 'desc' }],
    distinct: ['key'],
  });
  return rows.flatMap((row): readonly SourceFact[] => {
    const { id, title, revision } = JSON.parse(row.content) as Source;
    const named = cites.filter(({ source }) => source.includes(title) || source.includes(id));
    const revisions = [...new Set(named.map(({ source }) => citedRevision(source, title, id)))];
    return revisions.map((cited) => ({
      id,
      title,
      cited,
      newer: cited === '' || cited === revision ? null : { revision, temporary: /^TR\b/i.test(revision) },
      // Nobody has told the house what became of the value: that is asked once for the source.
      uses: named
        .filter(({ source }) => citedRevision(source, title, id) === cited)
        .map((step) => ({ step: step.id, value: step.value, now: 'not compared', newValue: '' })),
    }));
  });
}

/** "…, revision B, 4.2" and "… rev B" cite B; '' where no revision is named: then the newest is meant. */
function citedRevision(words: string, title: string, id: string): string {
  const behind = words.replace(title, '').replace(id, '');
  return /\brev(?:ision)?\.?\s+([A-Za-z0-9.]+)/i.exec(behind)?.[1] ?? '';
}

type Candidate = Awaited<ReturnType<typeof holdCandidate>>;
type Hands = Awaited<ReturnType<typeof handsIn>>;
/** `sha256`: of what was on the signer's screen. `published`: of what would be published. */
export type Act = {
  readonly sha256: string;
  readonly published: string;
  readonly issue: number;
  readonly startsAt: Date;
};

/** At the act of signing: who did what, what is bound, and how ready the crews are. */
export async function governanceAtSigning(
  tx: Tx,
  { operatorId, personId, at }: Standing,
  candidate: Pick<Candidate, 'id' | 'sheetRevisionId' | 'checkSet' | 'policyVersion'>,
  hands: Hands,
  act: Act,
): Promise<Governance> {
  const recommendation = await tx.review.findFirst({
    where: { operatorId, candidateId: candidate.id, verdict: 'recommended' },
    orderBy: { at: 'desc' },
  });
  const pilots = await tx.membership.count({
    where: {
      operatorId,
      endedAt: null,
      roles: {
        some: { role: 'line pilot', heldFrom: { lte: at }, OR: [{ heldUntil: null }, { heldUntil: { gt: at } }] },
      },
    },
  });
  return governanceOn(day(at), {
    signing: {
      drafters: hands.editors,
      recommendedBy: recommendation?.personId ?? null,
      signedBy: personId,
      waivers: await waiversOf(tx, operatorId, candidate.id),
      signedHash: act.sha256,
      publishedHash: act.published,
      // A type without a sheet is recorded as such, and its checks were told as not checked.
      recorded: {
        sheet: candidate.sheetRevisionId ?? 'no sheet of this type',
        checkSet: candidate.checkSet,
        policy: String(candidate.policyVersion),
      },
      issue: act.issue,
    },
    goingLive: {
      effective: day(act.startsAt),
      signed: day(at),
      authority: null,
      training: null,
      acknowledged: { have: 0, of: pilots },
      briefed: false,
    },
  });
}

/** Every waiver stands on the page that the signer signs. */
async function waiversOf(tx: Tx, operatorId: string, candidateId: string): Promise<Signing['waivers']> {
  const rows = await tx.finding.findMany({
    where: { operatorId, candidateId, answer: { kind: 'waiver' } },
    orderBy: { position: 'asc' },
    include: { answer: true },
  });
  return Promise.all(
    rows.map(async ({ check, answer }) => {
      const { personId, reason, until, at } = answer!;
      const captain = await tx.roleGrant.findFirst({
        where: {
          operatorId,
          personId,
          role: 'standards captain',
          heldFrom: { lte: at },
          OR: [{ heldUntil: null }, { heldUntil: { gt: at } }],
        },
      });
      const end = until && day(until);
      return { check, by: personId, standardsCaptain: captain !== null, reason, until: end, shownToSigner: true };
    }),
  );
}
