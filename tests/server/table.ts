// Every server function with a call that names things of operator A, the roles that may make it, and what the same call
// gives a member of operator B: `unknown` where it names a thing, `own` where it answers from B's own rows.
import * as aircraft from '../../lib/server/aircraft.ts';
import * as answers from '../../lib/server/answers.ts';
import * as askedAgain from '../../lib/server/asked-again.ts';
import * as audit from '../../lib/server/audit.ts';
import * as desk from '../../lib/server/desk.ts';
import * as drafts from '../../lib/server/drafts.ts';
import * as flights from '../../lib/server/flights.ts';
import * as journal from '../../lib/server/journal.ts';
import * as library from '../../lib/server/library.ts';
import * as people from '../../lib/server/people.ts';
import * as policies from '../../lib/server/policies.ts';
import * as reading from '../../lib/server/reading.ts';
import * as record from '../../lib/server/record.ts';
import * as reviews from '../../lib/server/reviews.ts';
import { ROLES, type Role } from '../../lib/server/roles.ts';
import * as signing from '../../lib/server/signing.ts';
import * as submission from '../../lib/server/submission.ts';
import * as welcome from '../../lib/server/welcome.ts';
import type { Answered, Viewer } from '../../lib/server/within.ts';
import { CHANGE, PASSWORD, PROCEDURE, PROCEDURE_ID, STATEMENT } from './house.ts';

export const MODULES = {
  aircraft,
  answers,
  askedAgain,
  audit,
  desk,
  drafts,
  flights,
  journal,
  library,
  people,
  policies,
  reading,
  record,
  reviews,
  signing,
  submission,
  welcome,
};

/** Ids of operator A. */
export type Things = {
  readonly draft: string;
  readonly candidate: string;
  readonly sha256: string;
  readonly fleet: string;
  readonly sheet: string;
  readonly person: string;
};

export type Row = {
  readonly name: string;
  readonly roles: readonly Role[];
  readonly foreign: 'unknown' | 'own';
  readonly call: (viewer: Viewer, things: Things) => Answered<unknown>;
};

const READ_DRAFTS: readonly Role[] = ['technical pilot', 'training captain', 'standards captain', 'auditor'];
const READ_CANDIDATES: readonly Role[] = [...READ_DRAFTS, 'approver'];
const PILOTS: readonly Role[] = ROLES.filter((role) => role !== 'auditor' && role !== 'administrator');
const WRITE: readonly Role[] = ['technical pilot'];
const REVIEW: readonly Role[] = ['standards captain'];
const SIGN: readonly Role[] = ['approver'];
const RECORD: readonly Role[] = ['auditor', 'approver', 'standards captain'];
const ADMINISTER: readonly Role[] = ['administrator'];

const row = (name: string, roles: readonly Role[], foreign: Row['foreign'], call: Row['call']): Row => ({
  name,
  roles,
  foreign,
  call,
});
const finding = { check: 'nobody-does-it', read: 'x' };
const receipt = { registration: 'Q-AAA', procedureId: PROCEDURE_ID, issueNumber: 1, device: 'phone' };
const held = { registration: 'Q-AAA', standard: 'B', from: '2031-01-01T00:00:00Z' };
const file = (text: string) => ({ text, name: 'file', change: CHANGE });
const waiver = { reason: 'why', expiresOn: '2030-02-01' };

export const TABLE: readonly Row[] = [
  row('welcome', ROLES, 'own', (who) => welcome.welcome(who)),
  row('desk', ROLES, 'own', (who) => desk.desk(who)),
  row('openDraft', READ_DRAFTS, 'unknown', (who, { draft }) => drafts.openDraft(who, draft)),
  row('exportDraft', READ_DRAFTS, 'unknown', (who, { draft }) => drafts.exportDraft(who, draft)),
  row('draftHistory', READ_DRAFTS, 'unknown', (who, { draft }) => drafts.draftHistory(who, draft)),
  row('createProcedure', WRITE, 'own', (who) => drafts.createProcedure(who, { title: 'New', change: CHANGE })),
  row('askedAgain', READ_CANDIDATES, 'unknown', (who) => askedAgain.askedAgain(who, PROCEDURE_ID)),
  row('startDraft', WRITE, 'unknown', (who) => drafts.startDraft(who, PROCEDURE_ID, CHANGE)),
  row('importProcedureFile', WRITE, 'own', (who) => drafts.importProcedureFile(who, file(PROCEDURE))),
  row('readJournal', READ_DRAFTS, 'unknown', (who, { draft }) => journal.readJournal(who, draft)),
  row('appendUpdate', WRITE, 'unknown', (who, { draft }) => journal.appendUpdate(who, draft, new Uint8Array([0, 0]))),
  row('keepSnapshot', WRITE, 'unknown', (who, { draft }) =>
    journal.keepSnapshot(who, draft, 0, new Uint8Array([0, 0])),
  ),
  row('answerFinding', WRITE, 'unknown', (who, { draft }) => answers.answerFinding(who, draft, finding, 'why')),
  row('waiveStop', REVIEW, 'unknown', (who, { draft }) => answers.waiveStop(who, draft, finding, waiver)),
  row('reviewQueue', READ_CANDIDATES, 'own', (who) => reviews.reviewQueue(who)),
  row('openCandidate', READ_CANDIDATES, 'unknown', (who, { candidate }) => reviews.openCandidate(who, candidate)),
  row('signingQueue', READ_CANDIDATES, 'own', (who) => signing.signingQueue(who)),
  row('openForSigning', READ_CANDIDATES, 'unknown', (who, { candidate }) => signing.openForSigning(who, candidate)),
  row('sendBack', REVIEW, 'unknown', (who, { candidate }) => reviews.sendBack(who, candidate, '')),
  row('recommend', REVIEW, 'unknown', (who, { candidate }) => reviews.recommend(who, candidate, STATEMENT)),
  row('refuseCandidate', SIGN, 'unknown', (who, { candidate }) => signing.refuseCandidate(who, candidate, '')),
  row('signCandidate', SIGN, 'unknown', (who, { candidate, sha256 }) =>
    signing.signCandidate(who, candidate, { sha256, password: PASSWORD, effectiveFrom: null }),
  ),
  row('openFlight', READ_DRAFTS, 'unknown', (who, { draft }) => flights.openFlight(who, { draft })),
  row('keptFlights', READ_CANDIDATES, 'unknown', (who, { candidate }) => flights.keptFlights(who, candidate)),
  row('keepFlight', ['technical pilot', 'standards captain'], 'unknown', (who, { candidate }) =>
    flights.keepFlight(who, { candidateId: candidate, conditions: { weight: 58_000 }, note: 'why' }),
  ),
  row('withdrawCandidate', WRITE, 'unknown', (who, { candidate }) =>
    submission.withdrawCandidate(who, candidate, 'why'),
  ),
  row('submitDraft', WRITE, 'unknown', (who, { draft }) => submission.submitDraft(who, draft, '')),
  row('tails', ROLES, 'own', (who) => reading.tails(who)),
  row('inForce', ROLES, 'unknown', (who) => reading.inForce(who, 'Q-AAA')),
  row('readIssue', ROLES, 'unknown', (who) => reading.readIssue(who, 'Q-AAA', PROCEDURE_ID)),
  row('oldIssue', ROLES, 'unknown', (who) => reading.oldIssue(who, PROCEDURE_ID, 1)),
  row('issuesOf', ROLES, 'unknown', (who) => reading.issuesOf(who, PROCEDURE_ID)),
  row('acknowledge', PILOTS, 'unknown', (who) => reading.acknowledge(who, receipt)),
  row('readRecord', RECORD, 'own', (who) => record.readRecord(who, {})),
  row('verifyRecord', RECORD, 'own', (who) => record.verifyRecord(who)),
  row('exportRecord', RECORD, 'own', (who) => record.exportRecord(who)),
  row('inForceAt', RECORD, 'unknown', (who) => audit.inForceAt(who, 'Q-AAA', '2030-01-02T00:00:00Z')),
  row('fleets', ROLES, 'own', (who) => aircraft.fleets(who)),
  row('sheetRevisions', ROLES, 'own', (who) => aircraft.sheetRevisions(who)),
  row('readSheetRevision', ROLES, 'unknown', (who, { sheet }) => aircraft.readSheetRevision(who, sheet)),
  row('importSheetRevision', ['technical pilot', 'administrator'], 'own', (who) =>
    aircraft.importSheetRevision(who, { text: '{}', name: 'file' }),
  ),
  row('addFleet', ADMINISTER, 'own', (who) => aircraft.addFleet(who, { name: 'Other fleet', type: 'TN-182' })),
  row('addTail', ADMINISTER, 'unknown', (who, { fleet }) =>
    aircraft.addTail(who, { ...held, registration: 'Q-CCC', fleetId: fleet }),
  ),
  row('releaseTail', ADMINISTER, 'unknown', (who) => aircraft.releaseTail(who, held)),
  row('policies', ROLES, 'own', (who) => policies.policies(who)),
  row('addPolicyVersion', ['administrator', 'standards captain'], 'own', (who) =>
    policies.addPolicyVersion(who, { content: {}, reason: 'why' }),
  ),
  row('library', ROLES, 'own', (who) => library.library(who)),
  row('importLibraryFile', ['technical pilot', 'administrator'], 'own', (who) =>
    library.importLibraryFile(who, { text: '', name: 'file' }),
  ),
  row('people', ADMINISTER, 'own', (who) => people.people(who)),
  row('addPerson', ADMINISTER, 'own', (who) =>
    people.addPerson(who, {
      name: 'N',
      signInName: `n ${who.operatorId}`,
      title: '',
      password: PASSWORD,
      roles: ['line pilot'],
    }),
  ),
  row('setRoles', ADMINISTER, 'unknown', (who, { person }) => people.setRoles(who, person, ['line pilot'])),
  row('revokeSessions', ADMINISTER, 'unknown', (who, { person }) => people.revokeSessions(who, person)),
  row('deactivate', ADMINISTER, 'unknown', (who, { person }) => people.deactivate(who, person)),
  row('changePassword', ROLES, 'own', (who) => people.changePassword(who, { old: 'not this one', new: PASSWORD })),
];
