import { afterAll, beforeAll, expect, test } from 'vitest';
import { answerFinding, waiveStop } from '../../lib/server/answers.ts';
import { inForceAt } from '../../lib/server/audit.ts';
import { desk } from '../../lib/server/desk.ts';
import { openDraft, startDraft } from '../../lib/server/drafts.ts';
import { permitDraft } from '../../lib/server/journal.ts';
import { acknowledge, inForce, issuesOf, oldIssue, readIssue } from '../../lib/server/reading.ts';
import { readRecord, verifyRecord } from '../../lib/server/record.ts';
import { openCandidate, recommend, sendBack } from '../../lib/server/reviews.ts';
import { openForSigning, refuseCandidate, signCandidate } from '../../lib/server/signing.ts';
import { submitDraft } from '../../lib/server/submission.ts';
import {
  adopt,
  CHANGE,
  codeOf,
  type House,
  importDraft,
  must,
  openHouse,
  orphan,
  PASSWORD,
  PROCEDURE_ID,
  reword,
  STATEMENT,
  silence,
  write,
} from './house.ts';
import { checksOf } from './live-checks.ts';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

test('draft, check, fix, answer, submit, send back, resubmit, recommend, sign, read, acknowledge', async () => {
  const { drafter, captain, approver, line, auditor } = house.people;
  const { draftId } = await importDraft(drafter);
  await write(drafter, draftId, orphan);
  await write(drafter, draftId, silence);
  const refused = await submitDraft(drafter, draftId, '');
  expect(refused).toMatchObject({ ok: false, error: { code: 'stop-open' } });
  await write(drafter, draftId, adopt);
  expect(await codeOf(submitDraft(drafter, draftId, ''))).toBe('answer-missing');

  const draft = await must(openDraft(drafter, draftId));
  const open = checksOf(draft).find((finding) => finding.severity === 'ANSWER')!;
  expect(await codeOf(answerFinding(drafter, draftId, open, 'ok'))).toBe('reason-too-thin');
  expect(await codeOf(answerFinding(drafter, draftId, { check: open.check, read: 'gone' }, 'x'))).toBe('finding-gone');
  const reason = 'PF is on the radio at this moment, and the line checks heard the distance read twice';
  await must(answerFinding(drafter, draftId, open, reason));

  house.setTime('2030-01-02T08:00:00Z');
  const first = await must(submitDraft(drafter, draftId, 'first try'));
  expect(await permitDraft(drafter, draftId)).toBe('read');
  expect(await permitDraft(drafter, first.nextDraftId)).toBe('write');
  await must(sendBack(captain, first.candidateId, 'The note of the first step says nothing'));
  const back = await must(openDraft(drafter, first.nextDraftId));
  expect(back.sentBack?.reason).toContain('says nothing');

  await write(drafter, first.nextDraftId, reword('spelled twice, '));
  const second = await must(submitDraft(drafter, first.nextDraftId, ''));
  const page = await must(openCandidate(captain, second.candidateId));
  expect(page.findings[0]?.settled?.reason).toBe(reason);
  expect(page.may).toMatchObject({ review: true, sign: false });
  await must(recommend(captain, second.candidateId, STATEMENT));

  const sign = await must(openForSigning(approver, second.candidateId));
  expect(sign).toMatchObject({ issueNumber: 1, tails: ['Q-AAA', 'Q-BBB'], supersedes: null, may: { sign: true } });
  const input = { sha256: sign.sha256, password: PASSWORD, effectiveFrom: '2030-01-05T00:00:00Z' };
  expect(await codeOf(signCandidate(approver, second.candidateId, { ...input, password: 'wrong' }))).toBe(
    'wrong-password',
  );
  expect(await codeOf(signCandidate(approver, second.candidateId, { ...input, sha256: 'x' }))).toBe('content-moved');
  await must(signCandidate(approver, second.candidateId, input));

  expect((await must(inForce(line, 'Q-AAA'))).lines).toEqual([]);
  expect(await codeOf(readIssue(line, 'Q-AAA', PROCEDURE_ID))).toBe('unknown');
  house.setTime('2030-01-05T00:00:01Z');
  const [read] = (await must(inForce(line, 'Q-AAA'))).lines;
  expect(read).toMatchObject({ procedureId: PROCEDURE_ID, issueNumber: 1, acknowledged: false });
  const issue = await must(readIssue(line, 'Q-AAA', PROCEDURE_ID));
  expect(issue.procedure.steps.every((step) => /^[A-Z]+-\w+$/.test(step.label))).toBe(true);
  const receipt = { registration: 'Q-AAA', procedureId: PROCEDURE_ID, issueNumber: 1, device: 'phone' };
  const { acknowledgedAt } = await must(acknowledge(line, receipt));
  expect((await must(acknowledge(line, receipt))).acknowledgedAt).toBe(acknowledgedAt);

  const answer = await must(inForceAt(auditor, 'Q-BBB', '2030-01-06T00:00:00Z'));
  expect(answer.issues[0]).toMatchObject({
    issueNumber: 1,
    signedBy: 'approver',
    recommendedBy: 'captain',
    editedBy: ['drafter'],
    sheetRevision: 'A',
    newerRevision: null,
    acknowledgedBy: [{ name: 'line' }],
    notAcknowledgedBy: ['everything'],
  });
  expect((await must(inForceAt(auditor, 'Q-BBB', '2030-01-04T00:00:00Z'))).issues).toEqual([]);
  expect(await must(verifyRecord(auditor))).toMatchObject({ ok: true, issues: 1 });
});

test('the next issue supersedes the one before, which stays readable as not in force', async () => {
  const { drafter, second, captain, approver, line, everything } = house.people;
  house.setTime('2030-02-01T08:00:00Z');
  const { draftId } = await must(startDraft(second, PROCEDURE_ID, CHANGE));
  expect(await codeOf(startDraft(drafter, PROCEDURE_ID, CHANGE))).toBe('draft-open');
  expect(await codeOf(submitDraft(second, draftId, ''))).toBe('nothing-changed');
  await write(second, draftId, reword('by name, '));
  const { candidateId, sha256 } = await must(submitDraft(second, draftId, ''));
  const page = await must(openCandidate(captain, candidateId));
  expect(page.base?.number).toBe(1);
  expect(page.changes).toMatchObject([{ kind: 'field', field: 'note' }]);
  expect(page.editors).toEqual(['second']);
  await must(recommend(captain, candidateId, STATEMENT));
  const sign = (viewer = approver, effectiveFrom: string | null = null) =>
    codeOf(signCandidate(viewer, candidateId, { sha256, password: PASSWORD, effectiveFrom }));
  expect(await sign(approver, '2030-01-20T00:00:00Z')).toBe('effective-in-past');
  expect(await sign(approver, '2030-02-10T06:00:00Z')).toBe('done');
  expect(await sign()).toBe('not-waiting');

  expect((await must(inForce(line, 'Q-AAA'))).lines[0]).toMatchObject({
    issueNumber: 1,
    next: { number: 2, inForceFrom: '2030-02-10T06:00:00.000Z' },
  });
  house.setTime('2030-02-10T06:00:00Z');
  const now = await must(readIssue(line, 'Q-AAA', PROCEDURE_ID));
  expect(now).toMatchObject({ issueNumber: 2, changedSince: { issueNumber: 1, steps: ['st_p998zu'] } });
  expect(await must(oldIssue(line, PROCEDURE_ID, 1))).toMatchObject({ inForce: false, may: { acknowledge: false } });
  const gone = { registration: 'Q-AAA', procedureId: PROCEDURE_ID, issueNumber: 1, device: '' };
  expect(await codeOf(acknowledge(line, gone))).toBe('not-in-force');
  expect((await must(issuesOf(line, PROCEDURE_ID))).map((each) => each.number)).toEqual([2, 1]);
  const lines = (await must(desk(everything))).procedures;
  expect(lines[0]).toMatchObject({ openDraftId: null, issue: { number: 2 } });
});

test('a STOP stands when a standards captain who did not draft waives it, and shows to the signer', async () => {
  const { drafter, captain, approver, auditor, everything } = house.people;
  house.setTime('2030-03-01T08:00:00Z');
  const { draftId } = await must(startDraft(drafter, PROCEDURE_ID, CHANGE));
  await write(drafter, draftId, orphan);
  const stop = checksOf(await must(openDraft(drafter, draftId))).find((finding) => finding.severity === 'STOP')!;
  const why = { reason: 'The cabin acts here until the new panel arrives in May, see bulletin seven' };
  const waive = (viewer = captain, expiresOn = '2030-06-01') =>
    codeOf(waiveStop(viewer, draftId, stop, { ...why, expiresOn }));
  expect(await codeOf(answerFinding(drafter, draftId, stop, why.reason))).toBe('not-answerable');
  expect(await waive(drafter)).toBe('not-permitted');
  expect(await waive(captain, '2030-02-01')).toBe('expiry-wrong');
  expect(await waive(captain, '2039-02-01')).toBe('expiry-wrong');
  await write(everything, draftId, reword('x'));
  expect(await waive(everything)).toBe('same-person-edited');
  expect(await waive()).toBe('done');
  const { candidateId } = await must(submitDraft(drafter, draftId, ''));
  const page = await must(openForSigning(approver, candidateId));
  expect(page.findings.find((finding) => finding.severity === 'STOP')?.settled).toMatchObject({
    kind: 'waiver',
    byName: 'captain',
    until: '2030-06-01',
  });
  await must(recommend(captain, candidateId, STATEMENT));
  await must(refuseCandidate(approver, candidateId, 'Not with an open waiver on the first step'));
  const { lines } = await must(readRecord(auditor, { act: 'candidate refused' }));
  expect(lines[0]).toMatchObject({ by: 'approver', subject: PROCEDURE_ID });
});
