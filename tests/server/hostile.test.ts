import { afterAll, beforeAll, expect, test } from 'vitest';
import { CHANGE_BYTES } from '../../lib/document/limits.ts';
import { importSheetRevision } from '../../lib/server/aircraft.ts';
import { createProcedure, importProcedureFile, openDraft } from '../../lib/server/drafts.ts';
import { appendUpdate, readJournal } from '../../lib/server/journal.ts';
import { oldIssue } from '../../lib/server/reading.ts';
import { submitDraft } from '../../lib/server/submission.ts';
import { CHANGE, codeOf, type House, importDraft, must, openHouse, PROCEDURE, reword, write } from './house.ts';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

test('a malformed file is told with its lines, and nothing of it is kept', async () => {
  const { drafter } = house.people;
  const bring = (text: string) => importProcedureFile(drafter, { text, name: 'go.yaml', change: CHANGE });
  for (const text of ['', 'format: [', PROCEDURE.slice(0, 3_000), PROCEDURE.replace('verb: call', 'verb: shout')]) {
    const result = await bring(text);
    expect(result).toMatchObject({ ok: false, error: { code: 'file-unreadable' } });
    if (!result.ok) expect(result.error.details[0]).toMatch(/^Line \d+, column \d+: /);
  }
  const sheet = await importSheetRevision(drafter, { text: 'a: &a [*a]', name: 'sheet' });
  expect(sheet).toMatchObject({ ok: false, error: { code: 'file-unreadable' } });
});

test('a step of 10 MB is refused with a sentence, and the draft stays as it was', async () => {
  const { drafter } = house.people;
  const { draftId } = await importDraft(drafter);
  const large = new Uint8Array(10_000_000);
  const result = await appendUpdate(drafter, draftId, large);
  expect(result).toMatchObject({ ok: false, error: { code: 'too-large', details: [CHANGE_BYTES.says] } });
  expect((await must(readJournal(drafter, draftId))).updates).toHaveLength(1);
});

test('many small pieces that make one step too long are kept, and not frozen', async () => {
  const { drafter } = house.people;
  const other = PROCEDURE.replace('pr_7sxkk2', 'pr_long').replaceAll('DT-', 'LG-');
  const { draftId } = await importDraft(drafter, other);
  await write(drafter, draftId, reword('x'.repeat(9_000)));
  const result = await submitDraft(drafter, draftId, '');
  expect(result).toMatchObject({ ok: false, error: { code: 'draft-malformed' } });
  expect((await must(openDraft(drafter, draftId))).procedure.steps[0]!.note).toHaveLength(9_000 + 66);
});

test('a character that no text holds is left out of what is typed, refused in a draft, and names nothing', async () => {
  const { drafter, line } = house.people;
  const nul = '\u0000';
  const created = await must(
    createProcedure(drafter, { title: `a${nul}b`, change: { ...CHANGE, reason: `c${nul}d` } }),
  );
  expect(await must(openDraft(drafter, created.draftId))).toMatchObject({ title: 'ab', change: { reason: 'cd' } });
  await write(drafter, created.draftId, (doc) => doc.getMap('meta').set('label', 'x'));
  const other = PROCEDURE.replace('pr_7sxkk2', 'pr_nul').replaceAll('DT-', 'NU-');
  const { draftId } = await importDraft(drafter, other);
  await write(drafter, draftId, reword(`e${nul}f`));
  expect(await codeOf(submitDraft(drafter, draftId, ''))).toBe('draft-malformed');
  expect(await codeOf(openDraft(drafter, `x${nul}`))).toBe('unknown');
  expect(await codeOf(oldIssue(line, `x${nul}`, 1))).toBe('unknown');
});

test('an update that is no update is kept from the text', async () => {
  const { drafter } = house.people;
  const other = PROCEDURE.replace('pr_7sxkk2', 'pr_noise').replaceAll('DT-', 'NO-');
  const { draftId } = await importDraft(drafter, other);
  expect(await codeOf(appendUpdate(drafter, draftId, new Uint8Array([9, 9, 9, 9])))).toBe('not-understood');
  expect(await codeOf(appendUpdate(drafter, draftId, new Uint8Array()))).toBe('not-understood');
  expect((await must(openDraft(drafter, draftId))).readProblems).toEqual([]);
});
