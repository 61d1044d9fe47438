import { expect, type Page, test } from '@playwright/test';
import { saved } from './kit/draft.ts';
import { signIn } from './kit/people.ts';

const MOST_STOPS = 120;

/** Presses Tab until what has the focus bears this name, as somebody without a mouse would. */
async function tabTo(page: Page, name: RegExp, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  for (let stop = 0; stop < MOST_STOPS; stop++) {
    await page.keyboard.press(key);
    const here = await page.evaluate(() => {
      const at = document.activeElement as HTMLElement | null;
      const label = (at as HTMLInputElement | null)?.labels?.[0]?.textContent ?? '';
      return at?.getAttribute('aria-label') ?? (label || (at?.textContent ?? ''));
    });
    if (name.test(here.trim())) return;
  }
  throw new Error(`${name} was not reached in ${MOST_STOPS} stops`);
}

test('a procedure is begun by keyboard alone', async ({ page }) => {
  test.setTimeout(120_000);
  const title = `Fuel check in the hold ${Date.now()}`;
  await signIn(page, 'drafter', '/desk');
  await tabTo(page, /^New procedure$/);
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/desk\/new/);
  await tabTo(page, /^Name of the procedure/);
  await page.keyboard.type(title);
  await tabTo(page, /^Why it must change/);
  await page.keyboard.type('Crews ask for one place that says when the fuel is read.');
  await tabTo(page, /^Start writing$/);
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/\/desk\/(?!new)/);
  await expect(page.getByText('No step yet')).toBeVisible();

  // The first step: its cue has the caret; a completion is taken with the arrow and Enter.
  await tabTo(page, /^Add a step$/);
  await page.keyboard.press('Enter');
  const cue = page.getByRole('textbox', { name: 'Cue', exact: true });
  await expect(cue).toBeFocused();
  await page.keyboard.type('speed >= VMM F1');
  await expect(page.getByRole('option', { name: 'F12' })).toBeVisible();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await expect(cue).toHaveText('speed >= VMM F12');
  await tabTo(page, /^Who acts$/);
  await page.keyboard.type('PM');
  await tabTo(page, /^Action$/);
  await page.keyboard.type('read');
  await tabTo(page, /^Object$/);
  await page.keyboard.type('fuel');
  await expect(page.getByRole('combobox', { name: 'Who acts' })).toHaveValue('PM');

  // A second one behind it, then moved before it, undone, done again, removed and brought back.
  await page.keyboard.press('Control+Enter');
  await expect(cue).toHaveText('');
  await expect(cue).toBeFocused();
  await page.keyboard.type('then');
  await page.keyboard.press('Escape');
  const heads = page.locator('[data-head]');
  const cues = () => page.locator('[data-open="cue"]').allTextContents();
  await expect(heads).toHaveCount(2);
  expect(await cues()).toEqual(['speed ≥ VMM F12', 'then']);
  await page.keyboard.press('Alt+ArrowUp');
  await expect.poll(cues).toEqual(['then', 'speed ≥ VMM F12']);
  await page.keyboard.press('Control+z');
  await expect.poll(cues).toEqual(['speed ≥ VMM F12', 'then']);
  await heads.last().focus();
  await page.keyboard.press('Delete');
  await expect(heads).toHaveCount(1);
  await heads.first().focus();
  await page.keyboard.press('Control+z');
  await expect(heads).toHaveCount(2);
  await saved(page);
  await page.reload();
  await expect.poll(cues).toEqual(['speed ≥ VMM F12', 'then']);
});
