import AxeBuilder from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';
import { checkedNow, openStep, retype, saved, startDraft } from './kit/draft.ts';
import { asPerson, PASSWORD, PHONE, signIn } from './kit/people.ts';

const TITLE = 'Normal take-off to clean climb';

async function submit(page: Page, note: string): Promise<void> {
  await page.getByRole('button', { name: 'Submit …' }).click();
  await page.getByLabel('Note to the reviewer').fill(note);
  await page.getByRole('button', { name: 'Submit', exact: true }).click();
  await expect(page).toHaveURL(/\/reviews\//);
}

/** The whole way of a change: draft, check, fix, submit, review, send back, again, recommend, sign, read, acknowledge. */
test('a change goes from a draft to a line pilot’s phone', async ({ browser }) => {
  test.setTimeout(240_000);
  const reth = await asPerson(browser, 'drafter', '/desk');
  await startDraft(reth, TITLE, 'The speed cross-check is called too quietly on noisy runways.');

  // A defect, found while typing, with the words as its witness; clicking the finding goes to the step.
  await openStep(reth, 'TO-07');
  const value = reth.getByRole('textbox', { name: 'Value', exact: true });
  await retype(reth, value, '95 both sides');
  const panel = reth.getByRole('complementary', { name: 'Checks' });
  await expect(panel.getByText(/STOP · unit missing/)).toBeVisible();
  await expect(panel.getByText('1 to fix')).toBeVisible();
  await reth.keyboard.press('Escape');
  await panel.getByRole('button', { name: 'TO-07' }).first().click();
  await expect(value).toBeFocused();

  // Submitting it is refused by the server, which says what is open; nothing is lost.
  await saved(reth);
  await reth.getByRole('button', { name: 'Submit …' }).click();
  await reth.getByRole('button', { name: 'Submit', exact: true }).click();
  await expect(reth.getByText('A STOP is open.', { exact: false })).toBeVisible();
  await expect(value).toHaveText('95 both sides');

  // Fixed, and worded anew.
  await retype(reth, value, '95 kt both sides');
  await retype(reth, reth.getByRole('textbox', { name: 'Callout', exact: true }), 'ninety-five knots');
  await reth.getByRole('tab', { name: 'Findings' }).click();
  await expect(panel.getByText(/STOP · unit missing/)).toHaveCount(0);
  await checkedNow(reth);
  await saved(reth);
  await submit(reth, 'One word more in one call.');

  // A standards captain sees the change by its meaning, and sends it back.
  const maddock = await asPerson(browser, 'captain', '/desk');
  await maddock.getByRole('link', { name: TITLE }).first().click();
  const changes = maddock.getByRole('region', { name: 'What changes' });
  await expect(changes.getByText('callout', { exact: true })).toBeVisible();
  await expect(changes.locator('ins')).toContainText(['knots']);
  await maddock
    .getByLabel('What must change, and why')
    .fill('The reply must change too, or the call is not answered by its own words.');
  await maddock.getByRole('button', { name: 'Send back' }).click();
  await expect(maddock.getByText('Sent back.', { exact: false })).toBeVisible();

  // The drafter finds the reason in the draft that goes on, mends it and submits again.
  await reth.goto('/desk');
  await reth.getByRole('link', { name: TITLE }).first().click();
  await reth.goto('/procedures');
  await reth
    .getByRole('row', { name: new RegExp(TITLE) })
    .getByRole('link', { name: 'open draft' })
    .click();
  await expect(reth.getByText('The reply must change too', { exact: false })).toBeVisible();
  await openStep(reth, 'TO-07');
  await retype(reth, reth.getByRole('textbox', { name: 'Reply', exact: true }), 'ninety-five, checked');
  await saved(reth);
  await checkedNow(reth);
  await submit(reth, 'The reply carries the figure now.');
  const candidate = reth.url().split('/').at(-1)!;

  // The drafter may not review, whatever is asked: the page offers nothing, and says why.
  await expect(reth.getByRole('button', { name: 'Recommend' })).toHaveCount(0);

  await maddock.goto(`/reviews/${candidate}`);
  await maddock.getByLabel('Why it may go on').fill('Two words more, heard above the noise; nobody acts differently.');
  await maddock.getByLabel('The risk in one sentence').fill('None in the change; without it the call may be missed.');
  await maddock.getByRole('button', { name: 'Recommend' }).click();
  await expect(maddock.getByText('Recommended. An approver can sign it now.')).toBeVisible();

  // An approver sees what the signature freezes; the password is asked again.
  const harrow = await asPerson(browser, 'approver', '/desk');
  await harrow.goto(`/sign/${candidate}`);
  await expect(harrow.getByText(/sha-256 [0-9a-f]{64}/)).toBeVisible();
  await harrow.getByLabel('Your password, again').fill('not the password');
  await harrow.getByRole('button', { name: /^Sign issue/ }).click();
  await expect(harrow.getByText('The password is not right.', { exact: false })).toBeVisible();
  await harrow.getByLabel('Your password, again').fill(PASSWORD);
  await harrow.getByRole('button', { name: /^Sign issue/ }).click();
  await expect(harrow.getByText(/Signed as issue 2/)).toBeVisible();

  // On the line pilot's phone: the issue in force, what changed, numbers for today, the receipt.
  const osk = await asPerson(browser, 'pilot', '/read', PHONE);
  await osk.getByRole('link', { name: 'Q-SKD' }).click();
  await osk.getByRole('link', { name: new RegExp(TITLE) }).click();
  await expect(osk.getByText(/issue 2 in force/)).toBeVisible();
  await expect(
    osk
      .getByText('“ninety-five knots”', { exact: false })
      .or(osk.locator('q', { hasText: 'ninety-five knots' }))
      .first(),
  ).toBeVisible();
  const weight = osk.getByLabel('Weight today, t');
  await weight.fill('61,1');
  await expect(osk.getByText(/61\.1/).first()).toBeVisible();
  await weight.fill('61.1');
  await expect(osk.getByText('VMO').first()).toBeVisible();
  await expect(osk.getByText('enter the approved figure').first()).toBeVisible();
  await osk.getByLabel('V2, approved, kt').fill('130');
  await expect(osk.getByText('enter the approved figure')).toHaveCount(0);
  await expect(osk.getByText(/V2 .*\+ 10 kt: 140 kt/).first()).toBeVisible();
  await osk.getByRole('button', { name: 'I have read this' }).click();
  await expect(osk.getByText(/You have read issue 2/)).toBeVisible();
  expect((await new AxeBuilder({ page: osk }).analyze()).violations).toEqual([]);

  // The earlier issue is readable as not in force, and the record holds every act.
  const vale = await asPerson(browser, 'auditor', '/record');
  for (const act of [
    'candidate submitted',
    'candidate sent back',
    'candidate recommended',
    'issue signed',
    'issue acknowledged',
  ]) {
    await expect(vale.getByRole('cell', { name: act }).first(), act).toBeVisible();
  }
  await vale.getByRole('button', { name: 'Verify the chain' }).click();
  await expect(vale.getByText(/every hash follows from the one before/)).toBeVisible();
  await maddock.goto('/procedures');
  await maddock.getByRole('link', { name: TITLE, exact: true }).click();
  await maddock.getByRole('link', { name: 'Issue 1' }).click();
  await expect(maddock.getByText('Not in force.')).toBeVisible();
});

test('a wrong password and an unknown name get the same answer', async ({ page }) => {
  const said = async (name: string) => {
    await page.goto('/sign-in');
    await page.getByLabel('Sign-in name').fill(name);
    await page.getByLabel('Password').fill('certainly wrong');
    await page.getByRole('button', { name: 'Sign in' }).click();
    return page.getByRole('alert').filter({ hasText: 'go together' }).textContent();
  };
  expect(await said('vale')).toBe(await said('nobody-of-this-name'));
  await signIn(page, 'auditor', '/record');
  await expect(page.getByRole('heading', { name: 'Record' })).toBeVisible();
});
