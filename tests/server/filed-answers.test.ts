import { afterAll, beforeAll, expect, test } from 'vitest';
import { answerFinding, waiveStop } from '../../lib/server/answers.ts';
import { exportDraft, importProcedureFile, openDraft } from '../../lib/server/drafts.ts';
import { CHANGE, type House, importDraft, must, openHouse, orphan, silence, write } from './house.ts';
import { checksOf } from './live-checks.ts';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

const REASON = 'PF is on the radio at this moment, and the line checks heard the distance read twice';

test('answers go out with the file; another procedure takes answers in its own name, and never a waiver', async () => {
  const { drafter, captain } = house.people;
  house.setTime('2030-01-02T08:00:00Z');
  const { draftId } = await importDraft(drafter);
  await write(drafter, draftId, silence);
  await write(drafter, draftId, orphan);
  const found = checksOf(await must(openDraft(drafter, draftId)));
  const asked = found.find(({ severity }) => severity === 'ANSWER')!;
  const stop = found.find(({ severity }) => severity === 'STOP')!;
  await must(answerFinding(drafter, draftId, asked, REASON));
  await must(waiveStop(captain, draftId, stop, { reason: REASON, expiresOn: '2030-05-01' }));

  const { text } = await must(exportDraft(drafter, draftId));
  expect(text).toContain('answers:');
  expect(text).toContain(`by: ${drafter.personId}`);
  expect(text).not.toContain('by: drafter');

  // The same text under another id, months later: the answer keeps its day, the waiver stays out.
  house.setTime('2030-03-01T08:00:00Z');
  const copy = text
    .replace(/^id: .*$/m, 'id: pr_copy01')
    .replaceAll('id: st_', 'id: st_z')
    .replaceAll('step: st_', 'step: st_z');
  const unbound = await must(importProcedureFile(drafter, { text: copy, name: 'copy', change: CHANGE }));
  // What a check reads names the step: a copied step asks anew.
  expect(unbound.answers).toEqual({ taken: 0, left: 2 });

  const same = text.replace(/^id: .*$/m, 'id: pr_copy02');
  const started = await must(importProcedureFile(drafter, { text: same, name: 'same', change: CHANGE }));
  expect(started.answers).toEqual({ taken: 1, left: 1 });
  const { settled } = await must(openDraft(drafter, started.draftId));
  expect(settled).toMatchObject([
    { kind: 'answer', check: asked.check, reason: REASON, by: drafter.personId, on: '2030-01-02' },
  ]);
});
