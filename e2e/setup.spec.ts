import fs from 'node:fs';
import path from 'node:path';
import { expect, test } from '@playwright/test';
import { asPerson } from './kit/people.ts';

const sheetFile = path.join(import.meta.dirname, '..', 'seed', 'aircraft', 'tn-182-a.yaml');

test('an administrator adds a person, who changes the password, gets a role, and loses access', async ({ browser }) => {
  const quill = await asPerson(browser, 'administrator', '/people');
  await quill.getByLabel('Name', { exact: true }).fill('Bram Oldery');
  await quill.getByLabel('Title').fill('First officer');
  await quill.getByLabel('Signs in as').fill('oldery');
  await quill.getByLabel('First password').fill('short');
  await quill.getByRole('checkbox', { name: /line pilot/ }).check();
  await quill.getByRole('button', { name: 'Add this person' }).click();
  await expect(quill.getByLabel('First password')).toBeFocused();
  await quill.getByLabel('First password').fill('first of october');
  await quill.getByRole('button', { name: 'Add this person' }).click();
  await expect(quill.getByText('Added.', { exact: false })).toBeVisible();
  await expect(quill.getByRole('link', { name: 'Bram Oldery' })).toBeVisible();

  // The new one signs in and takes another password; a wrong old one is refused and nothing else happens.
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.goto('/sign-in?next=/account');
  await page.getByLabel('Sign-in name').fill('oldery');
  await page.getByLabel('Password').fill('first of october');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Bram Oldery' })).toBeVisible();
  const change = async (old: string) => {
    await page.getByLabel('Password now').fill(old);
    await page.getByLabel('New password', { exact: false }).first().fill('second of october');
    await page.getByLabel('New password again').fill('second of october');
    await page.getByRole('button', { name: 'Change the password' }).click();
  };
  await change('not this one');
  await expect(page.getByText('The password is not right.', { exact: false })).toBeVisible();
  await change('first of october');
  await expect(page.getByText('Your password is changed.', { exact: false })).toBeVisible();
  await page.goto('/people');
  await expect(page.getByText('not part of your role')).toBeVisible();

  // Another role: open sessions end at once.
  await quill.getByRole('link', { name: 'Bram Oldery' }).click();
  await expect(quill.getByRole('heading', { name: /^Bram Oldery/ })).toBeVisible();
  await quill.getByRole('checkbox', { name: /auditor/ }).check();
  await quill.getByRole('button', { name: 'Set these roles' }).click();
  await expect(quill.getByRole('row', { name: /Bram Oldery/ })).toContainText('auditor');
  await page.goto('/account');
  await expect(page).toHaveURL(/sign-in/);

  // Access ends; the name stays.
  await quill.getByRole('link', { name: 'Bram Oldery' }).click();
  await quill.getByRole('checkbox', { name: /must not sign in/ }).check();
  await quill.getByRole('button', { name: 'End access' }).click();
  await expect(quill.getByRole('region', { name: 'Have left' })).toContainText('Bram Oldery');
  await context.close();
});

test('the last administrator cannot be taken away', async ({ browser }) => {
  const quill = await asPerson(browser, 'administrator', '/people');
  await quill.getByRole('main').getByRole('link', { name: 'Edda Quill' }).click();
  await expect(quill.getByText('This is you.', { exact: false })).toBeVisible();
  await quill.getByRole('checkbox', { name: /^administrator/ }).uncheck();
  await quill.getByRole('button', { name: 'Set these roles' }).click();
  await expect(quill.getByText('the last administrator cannot be taken away', { exact: false })).toBeVisible();
});

test('a tail comes in and is released to the other standard, at its hour and not before', async ({ browser }) => {
  const quill = await asPerson(browser, 'administrator', '/fleet');
  await quill.getByText('Add a tail', { exact: true }).click();
  const adding = quill.locator('details', { hasText: 'Add a tail' });
  await adding.getByLabel('Registration').fill('Q-SKZ');
  await adding.getByLabel('Standard').selectOption('A');
  await adding.getByLabel('From, UTC').fill('2026-01-05T06:00');
  await adding.getByRole('button', { name: 'Add the tail' }).click();
  const row = quill.getByRole('row', { name: /Q-SKZ/ });
  await expect(row).toContainText('5 Jan 2026, 06:00Z');

  await quill.getByText('Release a tail to another standard').click();
  const releasing = quill.locator('details', { hasText: 'Release a tail' });
  const release = async (from: string) => {
    await releasing.getByLabel('Tail').selectOption('Q-SKZ');
    await releasing.getByLabel('Standard').selectOption('B');
    await releasing.getByLabel('From, UTC').fill(from);
    await releasing.getByRole('button', { name: 'Release it' }).click();
  };
  await release('2025-12-01T00:00');
  await expect(releasing.getByText('That exists already.', { exact: false })).toBeVisible();
  await release('2026-02-10T14:05');
  await expect(row).toContainText('10 Feb 2026, 14:05Z');
  await expect(row.getByRole('cell').nth(1)).toHaveText('standard B');
});

test('a standards captain makes a new version of the policy, with its reason', async ({ browser }) => {
  const maddock = await asPerson(browser, 'captain', '/policy');
  await maddock.getByRole('link', { name: 'Change it' }).click();
  await maddock.getByLabel('A report is answered within, days').fill('21');
  await expect(maddock.getByText('A report is answered within: 30 → 21 days')).toBeVisible();
  await maddock.getByLabel('Why').fill('Reports lay too long last winter.');
  await maddock.getByRole('button', { name: 'Make this the policy' }).click();
  await expect(maddock).toHaveURL(/\/policy$/);
  const newest = maddock.getByRole('region', { name: 'Every version' }).getByRole('row').nth(1);
  await expect(newest).toContainText('Reports lay too long last winter.');
  await expect(newest).toContainText('30 → 21 days');
  const reth = await asPerson(browser, 'drafter', '/policy/new');
  await expect(reth.getByText('not part of your role')).toBeVisible();
});

test('a sheet that cannot be read is refused by place; mended, it is a revision to read and compare', async ({
  browser,
}) => {
  const reth = await asPerson(browser, 'drafter', '/sheets');
  // A type of its own: what other specs check against stays as it is.
  const good = fs
    .readFileSync(sheetFile, 'utf8')
    .replace('type: TN-182', 'type: TN-184')
    .replace('name: Tarnavel TN-182', 'name: Tarnavel TN-184');
  const bring = async (text: string) => {
    await reth.getByLabel('Its text').fill(text);
    await reth.getByRole('button', { name: 'Import this revision' }).click();
  };
  await bring(good.replace('{ value: 345, unit: kt', '{ value: 345, unit: km/h'));
  await expect(reth.getByText('limits.vmo.unit: the unit is kt here', { exact: false })).toBeVisible();
  await bring(good);
  await expect(reth.getByRole('heading', { name: 'Tarnavel TN-184, revision A' })).toBeVisible();
  await reth.goto('/sheets');
  await bring(
    good.replace('revision: A\n', 'revision: B\n').replace('{ value: 235, unit: kt', '{ value: 220, unit: kt'),
  );
  await expect(reth.getByRole('heading', { name: 'Tarnavel TN-184, revision B' })).toBeVisible();
  await expect(reth.getByRole('img', { name: /^Band of F6 by weight/ })).toBeVisible();
  await expect(reth.getByRole('region', { name: 'Detents' })).toContainText('220 kt');
  await expect(reth.getByText('from memory').first()).toBeVisible();

  await reth.getByRole('link', { name: 'Modes' }).click();
  await reth.getByRole('link', { name: 'vertical', exact: true }).click();
  const captured = reth.getByRole('row', { name: /^CAPTURE/ });
  await expect(captured.getByRole('link', { name: 'T23' })).toBeVisible();

  await reth.goto('/sheets');
  await reth.getByRole('link', { name: 'what changed since A' }).first().click();
  await expect(reth.getByRole('row', { name: /detents\.F6\.vfe\.value/ })).toContainText('−15');

  // The next one is written in cells: a block from a spreadsheet goes down the column.
  await reth.getByRole('link', { name: 'Next revision' }).click();
  const cell = (detent: string) => reth.getByLabel(`Detents: ${detent}, VFE, kt`);
  await cell('F6').evaluate((input) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text', '225\n205\n');
    input.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
  });
  await expect(cell('F12')).toHaveValue('205');
  await reth.reload();
  await expect(cell('F12')).toHaveValue('205');
  await reth.getByLabel('Name of the revision').fill('C');
  await reth.getByRole('button', { name: 'Import this revision' }).click();
  await expect(reth.getByRole('heading', { name: 'Tarnavel TN-184, revision C' })).toBeVisible();
  await expect(reth.getByRole('region', { name: 'Detents' })).toContainText('205 kt');
});

test('the library is found in by words, and takes a file', async ({ browser }) => {
  const reth = await asPerson(browser, 'drafter', '/library');
  await reth.getByLabel('Words').fill('hallowmere');
  await reth.getByRole('button', { name: 'Find' }).click();
  await expect(reth.getByRole('status')).toHaveText('1 found.');
  await expect(reth.getByRole('heading', { name: /Hallowmere/ })).toBeVisible();
  await reth.getByRole('link', { name: 'Show all' }).click();
  await expect(reth.getByRole('status')).toHaveCount(0);
  await expect(reth.getByRole('heading', { name: /^Callouts/ })).toBeVisible();
  const bring = async (text: string) => {
    await reth.getByLabel('Its text').fill(text);
    await reth.getByRole('button', { name: 'Bring it in' }).click();
  };
  const half =
    'format: cuewright-library/1\nterms:\n  - { term: usable band, meaning: Speeds from the lowest to the limit. }\n';
  await bring(half);
  await expect(reth.getByText('has no end mark', { exact: false })).toBeVisible();
  await expect(reth.getByLabel('Its text')).toHaveValue(half);
  await bring(`${half}...\n`);
  await expect(reth.getByText('1 new or changed', { exact: false })).toBeVisible();
  await expect(reth.getByRole('heading', { name: 'usable band' })).toBeVisible();
});
