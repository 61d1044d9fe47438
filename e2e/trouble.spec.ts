import { expect, test } from '@playwright/test';
import { openStep, retype, saved } from './kit/draft.ts';
import { asPerson, PASSWORD, PEOPLE, PHONE } from './kit/people.ts';

const DRAFT = 'Direct to a waypoint';

test('a malformed procedure file: the lines are named, and what was pasted stays', async ({ browser }) => {
  const page = await asPerson(browser, 'drafter', '/desk/new');
  const form = page.getByRole('region', { name: 'Or from a file' });
  const text =
    'format: cuewright-procedure/1\nid: pr_x1y2z3\ntitle: Half a file\nsteps:\n  - id: st_a1b2c3\n    cue: "speed >="\n    who: nobody-known\n...\n';
  await form.getByLabel('Its text').fill(text);
  await form.getByLabel('Why it must change').fill('A file from another office.');
  await form.getByRole('button', { name: 'Bring it in' }).click();
  await expect(form.getByText('The file could not be read as it stands.', { exact: false })).toBeVisible();
  await expect(form.getByText(/line 7/i).first()).toBeVisible();
  await expect(form.getByLabel('Its text')).toHaveValue(text);
});

test('hostile HTML and ten million characters pasted into a step', async ({ browser }) => {
  const page = await asPerson(browser, 'second', '/desk');
  await page.getByRole('link', { name: DRAFT }).click();
  await openStep(page, 'DT-05');
  const why = page.getByRole('textbox', { name: 'Why', exact: true });
  await retype(page, why, '');
  const paste = (html: string, plain: string, times = 1) =>
    why.evaluate(
      (cell, [markup, words, n]) => {
        const data = new DataTransfer();
        data.setData('text/html', markup);
        data.setData('text/plain', words.repeat(n));
        cell.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
      },
      [html, plain, times] as const,
    );
  await why.focus();
  await paste('<img src=x onerror="window.broken=1"><script>window.broken=2</script><b>held</b>', 'held limits');
  await expect(why).toHaveText('held limits');
  expect(await why.locator('*').count()).toBe(0);
  expect(await page.evaluate(() => (window as { broken?: number }).broken)).toBeUndefined();

  await paste('', 'x', 10_000_000);
  await expect(
    page
      .getByRole('status')
      .filter({ hasText: /longer|too long|at most|most/i })
      .first(),
  ).toBeVisible();
  await expect(why).toHaveText('held limits');
  await saved(page);
});

test('a session that ends in mid-edit: what was typed is kept and sent after signing in again', async ({ browser }) => {
  test.setTimeout(120_000);
  const page = await asPerson(browser, 'second', '/desk');
  await page.getByRole('link', { name: DRAFT }).click();
  await openStep(page, 'DT-06');
  const why = page.getByRole('textbox', { name: 'Why', exact: true });
  await retype(page, why, 'before');
  await saved(page);

  // Signed out in another tab of the same browser: the session row is over, the socket is closed within a second.
  const other = await page.context().newPage();
  await other.goto('/read');
  await other.getByRole('button', { name: 'Sign out' }).click();
  await expect(page.getByText('Signed out.', { exact: true })).toBeVisible({ timeout: 5_000 });
  await why.focus();
  await page.keyboard.press('End');
  await page.keyboard.type(' and after');
  await expect(page.getByText(/kept here/).first()).toBeVisible();

  await page.getByRole('link', { name: 'Sign in' }).first().click();
  await page.getByLabel('Sign-in name').fill(PEOPLE.second);
  await page.getByLabel('Password').fill(PASSWORD);
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/\/desk\//);
  await openStep(page, 'DT-06');
  await expect(why).toHaveText('before and after');
  await saved(page);
  await page.reload();
  await openStep(page, 'DT-06');
  await expect(why).toHaveText('before and after');
});

test('the reader without a network shows the saved copy and says so across the page', async ({ browser }) => {
  const page = await asPerson(browser, 'pilot', '/read/Q-SKA', PHONE);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
  await page.getByRole('link', { name: /Go-around/ }).click();
  await expect(page.getByRole('heading', { name: /Go-around/ })).toBeVisible();
  await page.reload();
  await expect(page.getByRole('heading', { name: /Go-around/ })).toBeVisible();
  await page.context().setOffline(true);
  await page.reload();
  await expect(page.getByRole('heading', { name: /Go-around/ })).toBeVisible();
  await expect(page.getByRole('alert').filter({ hasText: 'may be out of date' })).toBeVisible();
  await page
    .getByRole('button', { name: 'I have read this' })
    .or(page.getByText(/You have read issue/))
    .first()
    .click();
  await page.context().setOffline(false);
});

test('another person’s role learns nothing by asking directly', async ({ browser }) => {
  const osk = await asPerson(browser, 'pilot', '/read');
  for (const path of ['/desk', '/reviews/ca_unknown', '/sign/ca_unknown', '/people', '/record']) {
    await osk.goto(path);
    await expect(osk.getByText(/not part of your role|nothing by that address/), path).toBeVisible();
  }
});
