import { afterAll, beforeAll, expect, test } from 'vitest';
import { openDraft } from '../../lib/server/drafts.ts';
import { appendUpdate, keepSnapshot, readJournal } from '../../lib/server/journal.ts';
import { verifyRecord } from '../../lib/server/record.ts';
import { openCandidate, recommend, sendBack } from '../../lib/server/reviews.ts';
import { openForSigning, refuseCandidate, signCandidate } from '../../lib/server/signing.ts';
import { submitDraft, withdrawCandidate } from '../../lib/server/submission.ts';
import type { Viewer } from '../../lib/server/within.ts';
import {
  codeOf,
  type House,
  importDraft,
  must,
  openHouse,
  PASSWORD,
  PROCEDURE,
  PROCEDURE_ID,
  reword,
  STATEMENT,
  write,
} from './house.ts';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

let copies = 0;
/** One more procedure with the same steps. */
const another = (): string => {
  copies += 1;
  return PROCEDURE.replaceAll(PROCEDURE_ID, `pr_copy${copies}`)
    .replaceAll('DT-', `D${copies}-`)
    .replace(/^title: .*/m, `title: Trial ${copies}`);
};
const sign = (viewer: Viewer, candidateId: string, sha256: string) =>
  codeOf(signCandidate(viewer, candidateId, { sha256, password: PASSWORD, effectiveFrom: null }));

test('who edited a word neither reviews nor signs, whatever roles they hold', async () => {
  const { drafter, captain, everything } = house.people;
  const { draftId } = await importDraft(drafter, another());
  await write(everything, draftId, reword('a'));
  const { candidateId, sha256 } = await must(submitDraft(drafter, draftId, ''));
  expect(await codeOf(recommend(everything, candidateId, STATEMENT))).toBe('same-person-edited');
  expect(await codeOf(sendBack(everything, candidateId, 'why'))).toBe('same-person-edited');
  expect((await must(openCandidate(everything, candidateId))).whyNot).toContain('You edited this text');
  await must(recommend(captain, candidateId, STATEMENT));
  expect(await sign(everything, candidateId, sha256)).toBe('same-person-edited');
  expect(await codeOf(refuseCandidate(everything, candidateId, 'why'))).toBe('same-person-edited');
});

test('who edited an earlier draft of the same change stays an editor of the next candidate', async () => {
  const { drafter, captain, everything } = house.people;
  const { draftId } = await importDraft(drafter, another());
  await write(everything, draftId, reword('b'));
  const first = await must(submitDraft(drafter, draftId, ''));
  await must(sendBack(captain, first.candidateId, 'The wording of the first note'));
  await write(drafter, first.nextDraftId, reword('c'));
  const second = await must(submitDraft(drafter, first.nextDraftId, ''));
  expect(await codeOf(recommend(everything, second.candidateId, STATEMENT))).toBe('same-person-edited');
});

test('who reviewed does not sign, and who only submitted does not review', async () => {
  const { drafter, everything, approver } = house.people;
  const first = await must(submitDraft(drafter, (await importDraft(drafter, another())).draftId, ''));
  await must(recommend(everything, first.candidateId, STATEMENT));
  expect(await sign(everything, first.candidateId, first.sha256)).toBe('same-person-reviewed');
  expect(await sign(approver, first.candidateId, first.sha256)).toBe('done');
  const second = await must(submitDraft(everything, (await importDraft(drafter, another())).draftId, ''));
  expect(await codeOf(recommend(everything, second.candidateId, STATEMENT))).toBe('same-person-edited');
});

test('two submissions at once: one candidate, and a clear answer for the other', async () => {
  const { drafter, second } = house.people;
  const { draftId } = await importDraft(drafter, another());
  const both = await Promise.all([submitDraft(drafter, draftId, ''), submitDraft(second, draftId, '')]);
  expect(both.filter((each) => each.ok)).toHaveLength(1);
  expect(both.find((each) => !each.ok)).toMatchObject({ error: { code: 'already-submitted' } });
});

test('edits and a submission at once: every acknowledged edit is in the candidate or refused', async () => {
  const { drafter, second } = house.people;
  const { draftId } = await importDraft(drafter, another());
  const empty = new Uint8Array([0, 0]);
  const edits = Array.from({ length: 8 }, () => appendUpdate(second, draftId, empty));
  const [submitted, ...told] = await Promise.all([submitDraft(drafter, draftId, ''), ...edits]);
  expect(submitted.ok).toBe(true);
  const kept = told.filter((each) => each.ok).map((each) => each.ok && each.value);
  expect(new Set(kept).size).toBe(kept.length);
  for (const each of told) if (!each.ok) expect(each.error.code).toBe('draft-closed');
  const journal = await must(readJournal(drafter, draftId));
  expect(journal.updates).toHaveLength(1 + kept.length);
  expect(await codeOf(appendUpdate(second, draftId, empty))).toBe('draft-closed');
});

test('a recommendation, a way back and a withdrawal at once: one of them holds', async () => {
  const { drafter, captain, everything } = house.people;
  const { candidateId } = await must(submitDraft(drafter, (await importDraft(drafter, another())).draftId, ''));
  const codes = await Promise.all([
    codeOf(recommend(captain, candidateId, STATEMENT)),
    codeOf(sendBack(everything, candidateId, 'why')),
    codeOf(sendBack(captain, candidateId, 'why')),
  ]);
  expect(codes.sort()).toEqual(['done', 'not-waiting', 'not-waiting']);
  await codeOf(withdrawCandidate(drafter, candidateId, 'A better idea'));
  expect(['withdrawn', 'sent back']).toContain((await must(openCandidate(captain, candidateId))).state);
});

test('two signatures at once make one issue, and one at a time is under review', async () => {
  const { drafter, captain, approver, everything } = house.people;
  const { draftId, procedureId } = await importDraft(drafter, another());
  const { candidateId, sha256, nextDraftId } = await must(submitDraft(drafter, draftId, ''));
  await write(drafter, nextDraftId, reword('d'));
  expect(await codeOf(submitDraft(drafter, nextDraftId, ''))).toBe('already-under-review');
  await must(recommend(captain, candidateId, STATEMENT));
  const codes = await Promise.all([sign(approver, candidateId, sha256), sign(everything, candidateId, sha256)]);
  expect(codes.sort()).toEqual(['done', 'not-waiting']);
  const draft = await must(openDraft(drafter, nextDraftId));
  expect(draft).toMatchObject({ state: 'open', procedureId, base: { number: 1 } });
});

test("a draft of the same name holds nobody's signature, a submitted text does", async () => {
  const { drafter, captain, approver } = house.people;
  const text = another();
  const twin = text.replaceAll(`pr_copy${copies}`, 'pr_twin').replaceAll(`D${copies}-`, 'TW-');
  const submitted = async (file: string) => {
    const { draftId } = await importDraft(drafter, file);
    return { draftId, ...(await must(submitDraft(drafter, draftId, ''))) };
  };
  const { candidateId, sha256 } = await submitted(text);
  await must(recommend(captain, candidateId, STATEMENT));
  const drafted = await importDraft(drafter, twin);
  expect((await must(openForSigning(approver, candidateId))).atPublication.findings.map(({ check }) => check)).toEqual([
    'live-before-ready',
  ]);
  await must(submitDraft(drafter, drafted.draftId, ''));
  expect(await sign(approver, candidateId, sha256)).toBe('stop-open');
});

test('a snapshot spares the start of the journal and never goes back', async () => {
  const { drafter } = house.people;
  const { draftId } = await importDraft(drafter, another());
  const [first] = (await must(readJournal(drafter, draftId))).updates;
  await write(drafter, draftId, reword('e'));
  await must(keepSnapshot(drafter, draftId, 1, first!.update));
  await must(keepSnapshot(drafter, draftId, 0, new Uint8Array([0, 0])));
  const journal = await must(readJournal(drafter, draftId));
  expect(journal.snapshot?.upTo).toBe(1);
  expect(journal.updates.map((update) => update.seq)).toEqual([2]);
  const { procedure } = await must(openDraft(drafter, draftId));
  expect(procedure.steps[0]!.note.startsWith('e')).toBe(true);
});

test('the record of all that verifies', async () => {
  expect(await must(verifyRecord(house.people.auditor))).toMatchObject({ ok: true, issues: 2 });
});
