import { expect, test } from '@playwright/test';
import { openStep, retype, saved } from './kit/draft.ts';
import { asPerson } from './kit/people.ts';

const TITLE = 'Direct to a waypoint';

test('two people write one draft at once, and nothing is lost or doubled', async ({ browser }) => {
  test.setTimeout(120_000);
  const wenning = await asPerson(browser, 'second', '/desk');
  await wenning.getByRole('link', { name: TITLE }).click();
  await saved(wenning);
  const reth = await asPerson(browser, 'drafter', new URL(wenning.url()).pathname);
  await saved(reth);

  // They see each other, and where the other's caret is.
  await expect(reth.getByText('Jarl Wenning is here').first()).toBeAttached();
  await openStep(wenning, 'DT-03');
  await wenning.getByRole('textbox', { name: 'Note', exact: true }).focus();
  await expect(
    reth
      .locator('[data-step]')
      .filter({ has: reth.getByRole('button', { name: /^Step DT-03\b/ }) })
      .getByText('Jarl Wenning is here'),
  ).toBeVisible();

  // Both type in the same cell of the same step.
  await openStep(reth, 'DT-03');
  const noteOf = (page: typeof reth) => page.getByRole('textbox', { name: 'Note', exact: true });
  await retype(reth, noteOf(reth), '');
  await noteOf(wenning).focus();
  await Promise.all([
    noteOf(reth).pressSequentially('AAAAAAAAAAAAAAAAAAAA', { delay: 15 }),
    noteOf(wenning).pressSequentially('bbbbbbbbbbbbbbbbbbbb', { delay: 15 }),
  ]);
  for (const page of [reth, wenning]) {
    await expect.poll(async () => ((await noteOf(page).textContent()) ?? '').replace(/[^A]/g, '').length).toBe(20);
    await expect.poll(async () => ((await noteOf(page).textContent()) ?? '').replace(/[^b]/g, '').length).toBe(20);
  }
  expect(await noteOf(reth).textContent()).toBe(await noteOf(wenning).textContent());

  // One moves the step while the other types in it; the caret stays where it is typed.
  await noteOf(wenning).focus();
  const typing = noteOf(wenning).pressSequentially('CCCCCCCCCCCCCCCCCCCC', { delay: 20 });
  const head = reth.getByRole('button', { name: /^Step DT-03\b/ });
  await head.focus();
  await reth.keyboard.press('Alt+ArrowDown');
  await typing;
  for (const page of [reth, wenning]) {
    await expect.poll(async () => ((await noteOf(page).textContent()) ?? '').replace(/[^C]/g, '').length).toBe(20);
    await expect(page.getByRole('button', { name: /^Step DT-03\b/ })).toHaveCount(1);
  }
  const orderOf = (page: typeof reth) => page.locator('[data-head]').allInnerTexts();
  expect(await orderOf(reth)).toEqual(await orderOf(wenning));
  expect((await orderOf(reth)).indexOf('DT-03')).toBe(3);

  // Both move it at once: it stands once, at one of the two places, the same for both.
  await Promise.all([
    wenning.getByRole('button', { name: /^Step DT-03\b/ }).press('Alt+ArrowDown'),
    reth.getByRole('button', { name: /^Step DT-03\b/ }).press('Alt+ArrowUp'),
  ]);
  await expect
    .poll(async () => JSON.stringify(await orderOf(reth)) === JSON.stringify(await orderOf(wenning)))
    .toBe(true);
  expect((await orderOf(reth)).filter((label) => label === 'DT-03')).toHaveLength(1);

  // What both wrote is there after a reload.
  await saved(reth);
  await reth.reload();
  await openStep(reth, 'DT-03');
  await expect.poll(async () => ((await noteOf(reth).textContent()) ?? '').replace(/[^Cb]/g, '').length).toBe(40);
});
