import { expect, type Locator, type Page } from '@playwright/test';

/** Opens a step of the draft by its label, with the keyboard: its name is a button. */
export async function openStep(page: Page, label: string): Promise<Locator> {
  const head = page.getByRole('button', { name: new RegExp(`^Step ${label}\\b`) });
  await head.focus();
  if ((await head.getAttribute('aria-expanded')) !== 'true') await page.keyboard.press('Enter');
  await expect(head).toHaveAttribute('aria-expanded', 'true');
  return page.locator('[data-step]').filter({ has: head });
}

/** Replaces the words of one cell by typing, as a person would. */
export async function retype(page: Page, cell: Locator, words: string): Promise<void> {
  await cell.focus();
  await page.keyboard.press('ControlOrMeta+a');
  if (words === '') await page.keyboard.press('Delete');
  else await page.keyboard.type(words);
}

/** "Saved" is only shown when the database has committed. */
export async function saved(page: Page): Promise<void> {
  await expect(page.getByText(/^Saved/).first()).toBeVisible();
}

/** Waits until the checks have answered for the text as it stands. */
export async function checkedNow(page: Page): Promise<void> {
  await expect(page.getByRole('complementary', { name: 'Checks' }).getByRole('status').first()).not.toContainText(
    'hecking',
  );
}

/** A draft of a procedure, from its page: the reason is asked. Gives the draft's address. */
export async function startDraft(page: Page, title: string, reason: string): Promise<string> {
  await page.goto('/procedures');
  await page.getByRole('link', { name: title, exact: true }).click();
  await page.getByLabel('Why it must change').fill(reason);
  await page.getByLabel('Source').fill('Line checks, autumn');
  await page.getByLabel('Risk note').fill('The words are heard by both pilots; no value changes.');
  await page.getByRole('button', { name: 'Start a draft' }).click();
  await expect(page).toHaveURL(/\/desk\/(?!new)[^/]+$/);
  await saved(page);
  return page.url();
}
