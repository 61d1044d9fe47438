// Flying a procedure: what the screen needs to fly a draft, a candidate or an issue, and the runs that are kept with the
// candidate they support. A run that is kept is flown here, by this engine, whatever the browser showed.

import { readSheet } from '../aircraft/sheet.ts';
import { canonicalText } from '../base/canonical.ts';
import { placeOf } from '../check/flown-points.ts';
import { type Figure, figuresOf } from '../flight/figures.ts';
import { flyProcedure } from '../flight/fly.ts';
import { conditionsFor, settingsFor } from '../flight/start.ts';
import { type Conditions, FLIGHT_VERSION } from '../flight/trace.ts';
import type { Library } from '../library/library.ts';
import type { Policy } from '../policy/policy.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { Tx } from './db.ts';
import { Refused } from './errors.ts';
import { newId } from './ids.ts';
import { latestIssue } from './issues.ts';
import { labelsOf, withLabels } from './labels.ts';
import { libraryOf } from './library-facts.ts';
import { holdCandidate } from './locks.ts';
import { namesOf } from './names.ts';
import { may, permit, type Standing } from './permit.ts';
import { enter } from './record-entry.ts';
import { said } from './said.ts';
import { frozen, readText } from './text.ts';
import { type Answered, type Viewer, within } from './within.ts';

/** One of the three. */
export type FlightSubject =
  | { readonly draft: string }
  | { readonly candidate: string }
  | { readonly procedure: string; readonly issue: number };

/** A run as it was kept: by which engine, under which conditions, what was shown. */
export type KeptFlight = {
  readonly runId: string;
  readonly engine: string;
  readonly conditions: Conditions;
  readonly figures: readonly Figure[];
  /** Why it was kept, in the words of whoever kept it. */
  readonly note: string;
  readonly by: string;
  readonly at: string;
};

export type OpenFlight = {
  readonly kind: 'draft' | 'candidate' | 'issue';
  /** Of the draft or the candidate; '' for an issue. */
  readonly id: string;
  /** Such as `draft 3` or `issue 8`. */
  readonly name: string;
  readonly procedureId: string;
  readonly title: string;
  readonly procedure: Procedure;
  /** What it is laid over: the issue before it; null where there is none. */
  readonly other: { readonly name: string; readonly procedure: Procedure } | null;
  /** `content` goes to `readSheet`. */
  readonly sheet: { readonly revision: string; readonly content: unknown } | null;
  readonly policy: Policy | null;
  readonly policyVersion: number | null;
  readonly library: Library | null;
  /** Of a candidate, newest first. */
  readonly kept: readonly KeptFlight[];
  readonly may: { readonly keep: boolean };
};

export function openFlight(viewer: Viewer, subject: FlightSubject): Answered<OpenFlight> {
  return within(viewer, async (tx, standing) => {
    const library = await libraryOf(tx, standing.operatorId);
    if ('draft' in subject) return { ...(await ofDraft(tx, standing, subject.draft)), library };
    if ('candidate' in subject) return { ...(await ofCandidate(tx, standing, subject.candidate)), library };
    return { ...(await ofIssue(tx, standing, subject.procedure, subject.issue)), library };
  });
}

type Opened = Omit<OpenFlight, 'library'>;
const asOther = (issue: { number: number; procedure: Procedure } | null): OpenFlight['other'] =>
  issue && { name: `issue ${issue.number}`, procedure: issue.procedure };

async function ofDraft(tx: Tx, standing: Standing, draftId: string): Promise<Opened> {
  permit(standing, 'read drafts');
  const { operatorId } = standing;
  const draft = await tx.draft.findUnique({ where: { operatorId_id: { operatorId, id: draftId } } });
  if (!draft) throw new Refused('unknown');
  const { procedureId, number } = draft;
  const reading = await readText(tx, operatorId, draftId);
  const procedure = withLabels(reading.procedure, await labelsOf(tx, operatorId, procedureId));
  const { type } = procedure.effectivity;
  const sheet = await tx.sheetRevision.findFirst({ where: { operatorId, type }, orderBy: { importedAt: 'desc' } });
  const policy = await tx.policyVersion.findFirst({ where: { operatorId }, orderBy: { version: 'desc' } });
  return {
    ...{ kind: 'draft', id: draftId, name: `draft ${number}`, procedureId, title: procedure.title, procedure },
    other: asOther(await latestIssue(tx, operatorId, procedureId)),
    ...basis(sheet, policy),
    ...{ kept: [], may: { keep: false } },
  };
}

async function ofCandidate(tx: Tx, standing: Standing, candidateId: string): Promise<Opened> {
  permit(standing, 'read candidates');
  const { operatorId } = standing;
  const row = await tx.candidate.findUnique({
    where: { operatorId_id: { operatorId, id: candidateId } },
    include: { sheet: true, policy: true, issue: true },
  });
  if (!row) throw new Refused('unknown');
  const { procedureId, number } = row;
  const procedure = withLabels(frozen(row), await labelsOf(tx, operatorId, procedureId));
  return {
    ...{
      kind: 'candidate',
      id: candidateId,
      name: `candidate ${number}`,
      procedureId,
      title: procedure.title,
      procedure,
    },
    other: asOther(await latestIssue(tx, operatorId, procedureId, row.issue?.number)),
    ...basis(row.sheet, row.policy),
    kept: await keptOf(tx, operatorId, candidateId),
    may: { keep: open(row.state) && may(standing, 'keep flight') },
  };
}

async function ofIssue(tx: Tx, standing: Standing, procedureId: string, number: number): Promise<Opened> {
  permit(standing, 'read in force');
  const { operatorId } = standing;
  const row = await tx.issue.findUnique({
    where: { operatorId_procedureId_number: { operatorId, procedureId, number } },
    include: { candidate: { include: { sheet: true, policy: true } } },
  });
  if (!row) throw new Refused('unknown');
  const procedure = withLabels(frozen(row.candidate), await labelsOf(tx, operatorId, procedureId));
  return {
    ...{ kind: 'issue', id: '', name: `issue ${number}`, procedureId, title: procedure.title, procedure },
    other: asOther(await latestIssue(tx, operatorId, procedureId, number)),
    ...basis(row.candidate.sheet, row.candidate.policy),
    ...{ kept: [], may: { keep: false } },
  };
}

type Stored = { readonly content: string };
const basis = (
  sheet: (Stored & { readonly revision: string }) | null,
  policy: (Stored & { readonly version: number }) | null,
): Pick<OpenFlight, 'sheet' | 'policy' | 'policyVersion'> => ({
  sheet: sheet && { revision: sheet.revision, content: JSON.parse(sheet.content) as unknown },
  policy: policy && (JSON.parse(policy.content) as Policy),
  policyVersion: policy?.version ?? null,
});

const open = (state: string): boolean => state === 'waiting' || state === 'recommended';

/** Runs kept with a candidate, newest first. */
export function keptFlights(viewer: Viewer, candidateId: string): Answered<readonly KeptFlight[]> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read candidates');
    const { operatorId } = standing;
    const row = await tx.candidate.findUnique({
      where: { operatorId_id: { operatorId, id: candidateId } },
      select: { id: true },
    });
    if (!row) throw new Refused('unknown');
    return keptOf(tx, operatorId, candidateId);
  });
}

async function keptOf(tx: Tx, operatorId: string, candidateId: string): Promise<readonly KeptFlight[]> {
  const rows = await tx.flightRun.findMany({ where: { operatorId, candidateId }, orderBy: { at: 'desc' } });
  const nameOf = await namesOf(
    tx,
    rows.map((row) => row.personId),
  );
  return rows.map((row) => ({
    runId: row.id,
    engine: row.engine,
    conditions: JSON.parse(row.conditions) as Conditions,
    figures: JSON.parse(row.figures) as readonly Figure[],
    note: row.note,
    by: nameOf(row.personId),
    at: row.at.toISOString(),
  }));
}

/** More would be no evidence that anybody reads. */
const MOST_KEPT = 50;

/**
 * Flies the candidate as it was frozen, with the sheet and the policy of its submission, and keeps the run with it. What is
 * not among `conditions` is as the aerodrome's card and the policy have it. Refused with `not-waiting` once it was decided.
 */
export function keepFlight(
  viewer: Viewer,
  input: {
    readonly candidateId: string;
    readonly conditions: Partial<Conditions> & Pick<Conditions, 'weight'>;
    readonly note: string;
  },
): Answered<KeptFlight> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'keep flight');
    const { operatorId, personId, at } = standing;
    const { candidateId } = input;
    const { procedureId, state, ...held } = await holdCandidate(tx, operatorId, candidateId);
    if (!open(state)) throw new Refused('not-waiting');
    const note = said(input.note);
    if (note === '') throw new Refused('reason-too-thin');
    const count = await tx.flightRun.count({ where: { operatorId, candidateId } });
    if (count >= MOST_KEPT) throw new Refused('too-large', [`${MOST_KEPT} flights are kept with this candidate.`]);
    const { sheet, policy } = await tx.candidate.findUniqueOrThrow({
      where: { operatorId_id: { operatorId, id: candidateId } },
      select: { sheet: true, policy: true },
    });
    const read = sheet && readSheet(JSON.parse(sheet.content));
    if (!read?.ok) throw new Refused('not-understood', ['No type data sheet was frozen with this candidate.']);
    const facts = { sheet: read.value, policy: JSON.parse(policy.content) as Policy };
    const procedure = withLabels(frozen(held), await labelsOf(tx, operatorId, procedureId));
    const place = placeOf(procedure, await libraryOf(tx, operatorId));
    const conditions = conditionsFor(procedure, facts, input.conditions, place);
    const trace = flyProcedure(procedure, facts, conditions, settingsFor(procedure, facts.sheet));
    if (trace.end.reason === 'refused') throw new Refused('not-understood', [trace.end.says]);
    const figures = figuresOf(procedure, trace);
    const id = newId('ru');
    const row = {
      ...{ operatorId, id, candidateId, engine: FLIGHT_VERSION, note, personId, at },
      conditions: canonicalText(conditions),
      figures: canonicalText(figures),
    };
    await tx.flightRun.create({ data: row, select: { id: true } });
    const told = { run: id, candidate: candidateId, sha256: held.sha256, engine: FLIGHT_VERSION, note };
    await enter(tx, standing, 'flight kept', procedureId, told);
    const nameOf = await namesOf(tx, [personId]);
    return {
      ...{ runId: id, engine: FLIGHT_VERSION, conditions, figures, note },
      ...{ by: nameOf(personId), at: at.toISOString() },
    };
  });
}
