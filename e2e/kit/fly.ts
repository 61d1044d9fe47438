import { expect, type Page } from '@playwright/test';

/** From the list of procedures to the flight of the issue in force. */
export async function fly(page: Page, title: string): Promise<void> {
  await page.goto('/procedures');
  await page.getByRole('link', { name: title, exact: true }).click();
  await page
    .getByRole('link', { name: /^Issue \d+$/ })
    .first()
    .click();
  await page.getByRole('link', { name: 'Fly it' }).click();
  await expect(page.locator('[data-flown="speed"]')).toBeAttached({ timeout: 30_000 });
}
