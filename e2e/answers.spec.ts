import { expect, test } from '@playwright/test';
import { checkedNow, openStep, retype, saved, startDraft } from './kit/draft.ts';
import { asPerson } from './kit/people.ts';

const TITLE = 'Deviation around weather and rejoin';

/** An ANSWER is answered by the drafter, a STOP waived by a captain who did not draft; both stand before the reviewer. */
test('an answer and a waiver travel with the candidate, and the drafter takes it back', async ({ browser }) => {
  test.setTimeout(180_000);
  const wenning = await asPerson(browser, 'second', '/desk');
  const address = new URL(
    await startDraft(wenning, TITLE, 'A trial of shorter words on one step, before the winter season.'),
  ).pathname;
  const panel = wenning.getByRole('complementary', { name: 'Checks' });

  await openStep(wenning, 'WD-13');
  await retype(wenning, wenning.getByRole('textbox', { name: 'Reply', exact: true }), '');
  await expect(panel.getByText(/ANSWER · call without answer/)).toBeVisible();
  await openStep(wenning, 'WD-09');
  await retype(
    wenning,
    wenning.getByRole('textbox', { name: 'What proves it', exact: true }),
    'VMM F0 + 25 or more and 20 kt or more below the upper limit',
  );
  await checkedNow(wenning);
  await saved(wenning);

  // The reason must be one: a word alone is refused, and stays in the field.
  const answer = panel.getByRole('listitem').filter({ hasText: 'call without answer' });
  await answer.getByRole('button', { name: 'Answer it' }).click();
  await answer.getByLabel('Why it stands').fill('trial');
  await answer.getByRole('button', { name: 'Record the answer' }).click();
  await expect(answer.getByRole('alert')).toBeVisible();
  await expect(answer.getByLabel('Why it stands')).toHaveValue('trial');
  await answer
    .getByLabel('Why it stands')
    .fill('Both pilots look at one display here; the nod is seen, and the next step is spoken aloud anyway.');
  await answer.getByRole('button', { name: 'Record the answer' }).click();
  await expect(answer.getByText(/Answered by Jarl Wenning/)).toBeVisible();

  // Nobody waives a STOP of their own draft: the drafter is not even offered it.
  const stop = panel.getByRole('listitem').filter({ hasText: /STOP/ });
  await expect(stop.first()).toBeVisible();
  await expect(stop.getByRole('button', { name: 'Waive it' })).toHaveCount(0);
  const maddock = await asPerson(browser, 'captain', address);
  const his = maddock.getByRole('complementary', { name: 'Checks' }).getByRole('listitem').filter({ hasText: /STOP/ });
  await expect(his.first()).toBeVisible();
  while ((await his.filter({ hasNotText: /Waived by/ }).count()) > 0) {
    const one = his.filter({ hasNotText: /Waived by/ }).first();
    await one.getByRole('button', { name: 'Waive it' }).click();
    await one
      .getByLabel('Why it may stand')
      .fill('The unit is said in the same line, and the trial card repeats the figure with it for both crews.');
    await one.getByLabel('Until').fill(new Date(Date.now() + 20 * 86_400_000).toISOString().slice(0, 10));
    const open = await his.filter({ hasNotText: /Waived by/ }).count();
    await one.getByRole('button', { name: 'Record the waiver' }).click();
    await expect(his.filter({ hasNotText: /Waived by/ })).toHaveCount(open - 1);
  }

  await wenning.reload();
  await saved(wenning);
  await wenning.getByRole('button', { name: 'Submit …' }).click();
  await wenning.getByRole('button', { name: 'Submit', exact: true }).click();
  await expect(wenning).toHaveURL(/\/reviews\//);
  const findings = wenning.getByRole('region', { name: 'Findings' });
  await expect(findings.getByText(/Answered by Jarl Wenning/)).toBeVisible();
  await expect(findings.getByText(/Waived by Ivo Maddock/).first()).toBeVisible();

  await wenning.getByLabel('Why', { exact: true }).fill('The trial is put off until the simulator is free again.');
  await wenning.getByRole('button', { name: 'Take it back' }).click();
  await expect(wenning.getByText('withdrawn').first()).toBeVisible();
});
