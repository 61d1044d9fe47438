// Two operators in a fresh database, with people of every role, and the ways through the server that many tests take.
import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import * as Y from 'yjs';
import type { Result } from '../../lib/base/result.ts';
import { withClient } from '../../lib/boot/roles.ts';
import { setField, setText } from '../../lib/document/edit.ts';
import type { Hand } from '../../lib/document/model.ts';
import { addFleet, addTail, importSheetRevision } from '../../lib/server/aircraft.ts';
import { setClock } from '../../lib/server/clock.ts';
import { closeDatabase } from '../../lib/server/db.ts';
import { type ChangeReason, importProcedureFile } from '../../lib/server/drafts.ts';
import type { Problem } from '../../lib/server/errors.ts';
import { foundOperator } from '../../lib/server/found.ts';
import { appendUpdate, readJournal } from '../../lib/server/journal.ts';
import { importLibraryFile } from '../../lib/server/library.ts';
import { addPolicyVersion } from '../../lib/server/policies.ts';
import { openCandidate, recommend } from '../../lib/server/reviews.ts';
import type { Role } from '../../lib/server/roles.ts';
import { signIn } from '../../lib/server/sign-in.ts';
import { signCandidate } from '../../lib/server/signing.ts';
import { submitDraft } from '../../lib/server/submission.ts';
import type { Answered, Viewer } from '../../lib/server/within.ts';
import { freshDatabase, type TestDatabase } from '../kit/database.ts';

export const PASSWORD = 'correct horse of the ramp';
export const seedText = (name: string): string => readFileSync(new URL(`../../seed/${name}`, import.meta.url), 'utf8');
/** Alone in its house: without the link to a procedure that is not there. */
export const PROCEDURE = seedText('procedures/direct-to.yaml').replace('weather-deviation, ', '');
export const PROCEDURE_ID = 'pr_7sxkk2';
export const CHANGE: ChangeReason = {
  reason: 'Two crews on the line heard the read-back too late',
  source: 'Line checks',
  riskNote: 'Words only.',
  dueOn: '2031-03-01',
};
export const STATEMENT = { reason: '', riskNote: 'Small.', statement: 'I have read every step.' };

const CAST = {
  drafter: ['technical pilot'],
  second: ['technical pilot'],
  trainer: ['training captain'],
  captain: ['standards captain'],
  approver: ['approver'],
  line: ['line pilot'],
  auditor: ['auditor'],
  administrator: ['administrator'],
  /** Holds every role that could meet itself: the rules must still keep three people apart. */
  everything: ['technical pilot', 'standards captain', 'approver', 'administrator', 'line pilot', 'auditor'],
} as const satisfies Record<string, readonly Role[]>;
export type Name = keyof typeof CAST;
export const NAMES = Object.keys(CAST) as Name[];
export const rolesOf = (name: Name): readonly Role[] => CAST[name];

export type House = {
  readonly database: TestDatabase;
  readonly people: Readonly<Record<Name, Viewer>>;
  /** A member of another operator who holds every role there. */
  readonly stranger: Viewer;
  /** Puts the clock to a time, from where it goes on by a second each time it is asked. */
  setTime(iso: string): void;
  close(): Promise<void>;
};

export async function must<T>(answer: Answered<T> | Promise<Result<T, Problem>>): Promise<T> {
  const result = await answer;
  if (!result.ok) throw new Error([result.error.code, ...result.error.details].join('\n'));
  return result.value;
}

/** The code of a refusal, or `done`. */
export async function codeOf(answer: Promise<Result<unknown, Problem>>): Promise<string> {
  const result = await answer;
  return result.ok ? 'done' : result.error.code;
}

async function found(id: string, names: readonly Name[], mark: string): Promise<void> {
  const from = new Date('2020-01-01T00:00:00Z');
  await foundOperator({
    id,
    name: id,
    people: names.map((name) => ({
      id: `pe_${mark}${name}`,
      name: `${mark}${name}`,
      signInName: `${mark}${name}`,
      title: '',
      password: PASSWORD,
      roles: rolesOf(name).map((role) => ({ role, from, until: null })),
    })),
  });
}

async function putInBasis(administrator: Viewer): Promise<void> {
  const content: unknown = parse(seedText('library/policy.yaml'));
  await must(addPolicyVersion(administrator, { content, reason: 'first' }));
  await must(importSheetRevision(administrator, { text: seedText('aircraft/tn-182-a.yaml'), name: 'sheet' }));
  for (const name of ['aerodromes', 'callouts', 'checklists', 'sources', 'terms']) {
    await must(importLibraryFile(administrator, { text: seedText(`library/${name}.yaml`), name }));
  }
  const { fleetId } = await must(addFleet(administrator, { name: 'Fleet', type: 'TN-182' }));
  for (const [registration, standard] of [
    ['Q-AAA', 'A'],
    ['Q-BBB', 'B'],
  ] as const) {
    await must(addTail(administrator, { fleetId, registration, standard, from: '2021-01-01T00:00:00Z' }));
  }
}

export async function openHouse(): Promise<House> {
  const database = await freshDatabase();
  process.env.DATABASE_URL = database.appUrl;
  process.env.NEXTAUTH_SECRET = 'only for tests';
  process.env.NEXTAUTH_URL = 'http://localhost:3000';
  let time = 0;
  const setTime = (iso: string): void => {
    time = Date.parse(iso);
  };
  setTime('2030-01-01T08:00:00Z');
  setClock(() => new Date((time += 1_000)));
  await found('op_a', NAMES, '');
  await found('op_b', ['everything'], 'other ');
  const entries = await Promise.all(NAMES.map(async (name) => [name, await must(signIn(name, PASSWORD))] as const));
  const people = Object.fromEntries(entries) as Record<Name, Viewer>;
  const stranger = await must(signIn('other everything', PASSWORD));
  // The tests move the clock by months; the end of a session has a test of its own.
  await withClient(database.ownerUrl, (owner) => owner.query(`UPDATE "session" SET "expiresAt" = '2099-01-01'`));
  await putInBasis(people.administrator);
  return {
    database,
    people,
    stranger,
    setTime,
    async close() {
      await closeDatabase();
      await database.drop();
    },
  };
}

export const importDraft = (viewer: Viewer, text = PROCEDURE) =>
  must(importProcedureFile(viewer, { text, name: 'file', change: CHANGE }));

/** Writes in the draft as the live document would: one journal entry. */
export async function write(viewer: Viewer, draftId: string, edit: (doc: Y.Doc) => void): Promise<number> {
  const journal = await must(readJournal(viewer, draftId));
  const doc = new Y.Doc();
  if (journal.snapshot) Y.applyUpdate(doc, journal.snapshot.state);
  for (const { update } of journal.updates) Y.applyUpdate(doc, update);
  const before = Y.encodeStateVector(doc);
  edit(doc);
  const seq = await must(appendUpdate(viewer, draftId, Y.encodeStateAsUpdate(doc, before)));
  doc.destroy();
  return seq;
}

let ids = 0;
const HAND: Hand = { words: {}, keys: {}, chance: () => 0.5, newId: () => `st_test${++ids}` };
const FIRST = { in: 'steps', id: 'st_p998zu' } as const;

/** A text field of the first step, whole. */
export const restate = (field: string, words: string) => (doc: Y.Doc) =>
  setText(doc, HAND, FIRST, field, 0, 1_000, words);
export const reword = (put: string) => (doc: Y.Doc) => setText(doc, HAND, FIRST, 'note', 0, 0, put);
/** A STOP: nobody does the step. */
export const orphan = (doc: Y.Doc): void => setField(doc, HAND, FIRST, 'who', '');
export const adopt = (doc: Y.Doc): void => setField(doc, HAND, FIRST, 'who', 'PM');
/** An ANSWER: the read-back is not heard by anybody. */
export const silence = (doc: Y.Doc): void => {
  const step = { in: 'steps', id: 'st_rerb8z' } as const;
  setText(doc, HAND, step, 'reply', 0, 1_000, '');
  setField(doc, HAND, step, 'replyBy', '');
};

/** From an open draft to an issue in force, by the people who may. */
export async function signThrough(
  house: House,
  draftId: string,
): Promise<{ candidateId: string; issueNumber: number }> {
  const { people } = house;
  const { candidateId, sha256 } = await must(submitDraft(people.drafter, draftId, ''));
  await must(openCandidate(people.captain, candidateId));
  await must(recommend(people.captain, candidateId, STATEMENT));
  const input = { sha256, password: PASSWORD, effectiveFrom: null };
  const { issueNumber } = await must(signCandidate(people.approver, candidateId, input));
  return { candidateId, issueNumber };
}
