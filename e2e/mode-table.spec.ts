import { expect, test } from '@playwright/test';
import { asPerson } from './kit/people.ts';

/** A rule is doubled, mistyped, mended and sent in with the next revision; the check beside it follows. */
test('the mode table of the next revision, edited by keyboard', async ({ browser }) => {
  test.setTimeout(180_000);
  const page = await asPerson(browser, 'drafter', '/sheets');
  await page.getByRole('link', { name: 'TN-182, revision A' }).first().click();
  await page.getByRole('link', { name: 'Next revision' }).click();
  await page.getByRole('link', { name: 'Its mode table' }).click();
  const panel = page.getByRole('complementary', { name: 'Self-check and drawing' });
  const status = panel.getByRole('status');
  await expect(status).toHaveText(/Every state/);
  await expect(panel.getByText('1 354 states, 12 184 edges')).toBeVisible();

  // From a sentence to its row.
  await panel.getByRole('button', { name: 'Go to T14' }).click();
  const event = (id: string) => page.getByRole('textbox', { name: `Rule ${id}, event` });
  await expect(event('T14')).toBeFocused();

  // Doubled: the copy has the next number, and its event is at hand. Another effect on the same event is said at once.
  const rule = page.getByRole('listitem', { name: 'Rule T23' });
  await rule.getByRole('button', { name: 'Duplicate T23' }).focus();
  await page.keyboard.press('Enter');
  await expect(event('T35')).toBeFocused();
  const cell = (name: string) => page.getByRole('textbox', { name: `Rule T35, ${name}`, exact: true });
  await cell('then, vertical').fill('ASCEND');
  const copy = page.getByRole('listitem', { name: 'Rule T35' });
  await expect(copy.getByText('"ASCEND" is no vertical word; was ASCENT meant?')).toBeVisible();
  await expect(cell('then, vertical')).toHaveAttribute('aria-invalid', 'true');
  await expect(status).toHaveText(/One cell can not be read yet/);
  await cell('then, vertical').fill('ASCENT');
  await expect(panel.getByText(/is answered by T23 and by T35/)).toBeVisible();
  await expect(panel.getByRole('button', { name: 'T35', exact: true })).toBeVisible();

  // Enter walks down a column, as in a spreadsheet.
  await page.getByRole('textbox', { name: 'Rule T23, only when, phase', exact: true }).focus();
  await page.keyboard.press('Enter');
  await expect(cell('only when, phase')).toBeFocused();

  // What was typed outlives the page; a condition is read as gate notation, and asked for by its name.
  await page.reload();
  await expect(cell('then, vertical')).toHaveValue('ASCENT', { timeout: 30_000 });
  await page.getByRole('button', { name: 'Add condition' }).click();
  await page.keyboard.type('low');
  await page.keyboard.press('Tab');
  await page.keyboard.type('height < 400');
  await expect(page.getByText(/400 has no unit/).first()).toBeVisible();
  await page.keyboard.type(' ft AAL');
  await expect(status).toHaveText(/Every state/);
  await cell('only when, condition').fill('low');
  await expect(status).toHaveText(/Every state/);

  // Removed and taken back; what can't be read is not sent.
  await copy.getByRole('button', { name: 'Remove T35' }).click();
  await expect(copy).toHaveCount(0);
  await page.getByRole('button', { name: 'Take back the last row added or removed' }).click();
  await expect(cell('only when, condition')).toHaveValue('low');
  await cell('then, vertical').fill('LEVE');
  // Under a name that is taken, so that other journeys keep the sheet that they know: read, and refused for the name alone.
  await page.getByLabel('Name of the revision').fill('A');
  await page.getByRole('button', { name: 'Import this revision' }).click();
  await expect(page.getByText(/Nothing was imported; all you typed is here/)).toBeVisible();
  await cell('then, vertical').fill('LEVEL');
  await page.getByRole('button', { name: 'Import this revision' }).click();
  await expect(page.getByText(/That exists already/)).toBeVisible();
  await expect(cell('only when, condition')).toHaveValue('low');
  await page.context().close();
});
