import { afterAll, beforeAll, expect, test } from 'vitest';
import { answerFinding } from '../../lib/server/answers.ts';
import { askedAgain } from '../../lib/server/asked-again.ts';
import { inForceAt } from '../../lib/server/audit.ts';
import { desk } from '../../lib/server/desk.ts';
import { openDraft, startDraft } from '../../lib/server/drafts.ts';
import { readRecord } from '../../lib/server/record.ts';
import { recommend } from '../../lib/server/reviews.ts';
import { openForSigning, signCandidate } from '../../lib/server/signing.ts';
import { submitDraft } from '../../lib/server/submission.ts';
import type { Viewer } from '../../lib/server/within.ts';
import {
  CHANGE,
  codeOf,
  type House,
  importDraft,
  must,
  openHouse,
  PASSWORD,
  PROCEDURE_ID,
  restate,
  reword,
  STATEMENT,
  silence,
  write,
} from './house.ts';
import { checkedOf } from './live-checks.ts';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

const found = async (viewer: Viewer, draftId: string, check: string) =>
  checkedOf(await must(openDraft(viewer, draftId))).findings.filter((finding) => finding.check === check);

async function signed(draftId: string): Promise<void> {
  const { drafter, captain, approver } = house.people;
  const { candidateId, sha256 } = await must(submitDraft(drafter, draftId, ''));
  await must(recommend(captain, candidateId, STATEMENT));
  await must(signCandidate(approver, candidateId, { sha256, password: PASSWORD, effectiveFrom: null }));
}

test('a first issue is compared with nothing; what publication asks is signed and kept with it', async () => {
  const { drafter, captain, approver, auditor } = house.people;
  house.setTime('2030-01-02T08:00:00Z');
  const { draftId } = await importDraft(drafter);
  expect(await found(drafter, draftId, 'changed-without-mark')).toEqual([]);
  const { candidateId, sha256 } = await must(submitDraft(drafter, draftId, ''));
  await must(recommend(captain, candidateId, STATEMENT));

  const page = await must(openForSigning(approver, candidateId));
  expect(page.atPublication.findings.map(({ check, severity }) => [check, severity])).toEqual([
    ['live-before-ready', 'ANSWER'],
  ]);
  expect(page.atPublication.notChecked.map(({ check }) => check)).toContain('tr-lost');
  // Finding and refusal agree: who recommended may not sign.
  const seen = (await must(openForSigning(captain, candidateId))).atPublication.findings;
  expect(seen.filter(({ check }) => check === 'same-person').map(({ severity }) => severity)).toEqual(['STOP']);
  expect(await codeOf(signCandidate(captain, candidateId, { sha256, password: PASSWORD, effectiveFrom: null }))).toBe(
    'not-permitted',
  );
  await must(signCandidate(approver, candidateId, { sha256, password: PASSWORD, effectiveFrom: null }));
  const { lines } = await must(readRecord(auditor, { act: 'issue signed' }));
  expect(lines[0]).toMatchObject({ by: 'approver' });
  house.setTime('2030-01-02T09:00:00Z');
  expect((await must(inForceAt(auditor, 'Q-AAA', '2030-01-02T09:00:00Z'))).issues).toHaveLength(1);
});

test('who drafted is refused at the signature, and the check says the same', async () => {
  const { drafter, captain, everything } = house.people;
  house.setTime('2030-02-01T08:00:00Z');
  const { draftId } = await must(startDraft(drafter, PROCEDURE_ID, CHANGE));
  await write(everything, draftId, reword('by name, '));
  const { candidateId, sha256 } = await must(submitDraft(drafter, draftId, ''));
  await must(recommend(captain, candidateId, STATEMENT));
  const { findings } = (await must(openForSigning(everything, candidateId))).atPublication;
  expect(findings.filter(({ check }) => check === 'same-person').map(({ severity }) => severity)).toEqual(['STOP']);
  const input = { sha256, password: PASSWORD, effectiveFrom: null };
  expect(await codeOf(signCandidate(everything, candidateId, input))).toBe('same-person-edited');
  await must(signCandidate(house.people.approver, candidateId, input));
});

test('a changed value without a source is held, at the desk and at submission; the step may name it', async () => {
  const { drafter } = house.people;
  house.setTime('2030-03-01T08:00:00Z');
  const { draftId } = await must(startDraft(drafter, PROCEDURE_ID, { ...CHANGE, source: '' }));
  await write(drafter, draftId, restate('cue', 'event "clearance direct to a point"'));
  const [held] = await found(drafter, draftId, 'changed-without-mark');
  expect(held).toMatchObject({ severity: 'STOP', witness: { kind: 'order' } });
  const refused = await submitDraft(drafter, draftId, '');
  expect(refused).toMatchObject({ ok: false, error: { code: 'stop-open', details: [held!.message] } });
  await write(drafter, draftId, restate('source', 'Line checks, autumn'));
  expect(await found(drafter, draftId, 'changed-without-mark')).toEqual([]);
  await signed(draftId);
});

test('an older revision of a source that the library has newer is asked once', async () => {
  const { drafter } = house.people;
  house.setTime('2030-04-01T08:00:00Z');
  const { draftId } = await must(startDraft(drafter, PROCEDURE_ID, CHANGE));
  const cite = (revision: string) => restate('source', `Skarrowmere Air, conventions for procedures, rev ${revision}`);
  await write(drafter, draftId, cite('4'));
  expect(await found(drafter, draftId, 'stale-source')).toEqual([]);
  await write(drafter, draftId, cite('3'));
  expect(await found(drafter, draftId, 'stale-source')).toMatchObject([{ severity: 'ANSWER' }]);
  expect(await codeOf(submitDraft(drafter, draftId, ''))).toBe('answer-missing');
});

test('what an issue was signed with is asked again when its time is over', async () => {
  const { drafter, auditor } = house.people;
  house.setTime('2030-05-01T08:00:00Z');
  const line = (await must(desk(drafter))).procedures[0]!;
  const draftId = line.openDraftId!;
  await write(drafter, draftId, restate('source', ''));
  await write(drafter, draftId, silence);
  const open = checkedOf(await must(openDraft(drafter, draftId))).findings.filter(
    ({ severity }) => severity === 'ANSWER',
  );
  const reason = 'PF is on the radio at this moment, and the line checks heard the distance read twice';
  for (const finding of open) await must(answerFinding(drafter, draftId, finding, reason));
  await signed(draftId);
  house.setTime('2030-06-01T08:00:00Z');
  expect(await must(askedAgain(auditor, PROCEDURE_ID))).toMatchObject({ findings: [] });
  house.setTime('2031-06-01T08:00:00Z');
  const asked = await must(askedAgain(auditor, PROCEDURE_ID));
  expect(asked?.findings.length).toBeGreaterThan(0);
  expect(asked?.findings[0]).toMatchObject({ check: 'waived-forever', severity: 'ADVICE' });
  expect(asked?.notChecked.map(({ check }) => check)).toEqual(['old-copy-still-shown']);
  expect(await codeOf(askedAgain(auditor, 'pr_none'))).toBe('unknown');
});
