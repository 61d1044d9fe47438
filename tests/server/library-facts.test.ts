import { afterAll, beforeAll, expect, test } from 'vitest';
import { rulesUpTo } from '../../lib/check/stage.ts';
import { releaseTail } from '../../lib/server/aircraft.ts';
import { openDraft, startDraft } from '../../lib/server/drafts.ts';
import { importLibraryFile } from '../../lib/server/library.ts';
import {
  adopt,
  CHANGE,
  type House,
  importDraft,
  must,
  openHouse,
  orphan,
  PROCEDURE_ID,
  seedText,
  signThrough,
  write,
} from './house.ts';
import { checkedOf } from './live-checks.ts';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

test('a draft comes with the others, the library and the tails; an edit elsewhere changes the state it was checked against', async () => {
  const { drafter, administrator } = house.people;
  const { draftId } = await importDraft(drafter);
  const alone = await must(openDraft(drafter, draftId));
  expect(alone.others).toEqual([]);
  expect(alone.library!.terms.length).toBeGreaterThan(20);
  expect(alone.library!.aerodromes.map((card) => card.code)).toContain('QAMB');
  expect(checkedOf(alone).checked.rules).toEqual(expect.arrayContaining(['dead-link', 'odd-one-out']));

  const other = await importDraft(drafter, seedText('procedures/weather-deviation.yaml'));
  const before = await must(openDraft(drafter, draftId));
  expect(before.others!.map(({ head }) => head.title)).toEqual(['Deviation around weather and rejoin']);
  expect(JSON.stringify(before.others).length).toBeLessThan(seedText('procedures/weather-deviation.yaml').length * 2);
  const state = checkedOf(before).checked.library;
  expect(state).not.toBe(checkedOf(alone).checked.library);
  expect(checkedOf(await must(openDraft(drafter, draftId))).checked.library).toBe(state);

  // While there is no issue of it the draft is heard as it stands, then the issue in force and no later draft.
  const heard = async () => checkedOf(await must(openDraft(drafter, other.draftId))).checked.library;
  const drafted = await heard();
  await write(drafter, draftId, orphan);
  const edited = await heard();
  expect(edited).not.toBe(drafted);
  await write(drafter, draftId, adopt);
  await signThrough(house, draftId);
  const signed = await heard();
  const next = await must(startDraft(drafter, PROCEDURE_ID, CHANGE));
  await write(drafter, next.draftId, orphan);
  expect(await heard()).toBe(signed);

  const terms = 'format: cuewright-library/1\nterms:\n  - { term: tail wind, meaning: Wind from behind. }\n...\n';
  await must(importLibraryFile(administrator, { text: terms, name: 'terms' }));
  const later = await must(openDraft(drafter, other.draftId));
  expect(later.library!.terms.map(({ term }) => term)).toContain('tail wind');
  expect(checkedOf(later).checked.library).not.toBe(signed);
});

test('the tails come with the standard that each holds from when until when', async () => {
  const { drafter, administrator } = house.people;
  await must(releaseTail(administrator, { registration: 'Q-AAA', standard: 'B', from: '2031-02-01T00:00:00Z' }));
  const [first] = (
    await must(openDraft(drafter, (await importDraft(drafter, seedText('procedures/holding.yaml'))).draftId))
  ).fleet!.tails;
  expect(first).toEqual({
    registration: 'Q-AAA',
    type: 'TN-182',
    options: [
      { option: 'standard', value: 'A', from: '2021-01-01', until: '2031-02-01' },
      { option: 'standard', value: 'B', from: '2031-02-01', until: null },
    ],
  });
});

test('another operator hears nothing of them', async () => {
  const { draftId } = await importDraft(
    house.stranger,
    seedText('procedures/holding.yaml').replace('pr_tpzc24', 'pr_other1'),
  );
  const draft = await must(openDraft(house.stranger, draftId));
  expect([draft.others, draft.library, draft.fleet]).toEqual([[], null, null]);
  const lacking = new Set(checkedOf(draft).notChecked.map(({ check }) => check));
  const needing = rulesUpTo('submission').filter((rule) => rule.needs.includes('library') && rule.phases === 'all');
  for (const { id } of needing) expect([...lacking]).toContain(id);
});
