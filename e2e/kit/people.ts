import fs from 'node:fs';
import path from 'node:path';
import { type Browser, type BrowserContextOptions, expect, type Page } from '@playwright/test';

/** Demo people by what they do. The password is the demo's own, readable by everybody. */
export const PEOPLE = {
  drafter: 'reth',
  second: 'wenning',
  captain: 'maddock',
  trainer: 'dorrin',
  approver: 'harrow',
  deputy: 'tove',
  pilot: 'osk',
  auditor: 'vale',
  administrator: 'quill',
} as const;
export type Who = keyof typeof PEOPLE;
export const PASSWORD = fs
  .readFileSync(path.join(import.meta.dirname, '..', '..', 'seed', 'demo-password.txt'), 'utf8')
  .trim();

/** Signs in through the form, by keyboard alone. */
export async function signIn(page: Page, who: Who, to = '/'): Promise<void> {
  await page.goto(`/sign-in?next=${encodeURIComponent(to)}`);
  await page.getByLabel('Sign-in name').focus();
  await page.keyboard.type(PEOPLE[who]);
  await page.keyboard.press('Tab');
  await page.keyboard.type(PASSWORD);
  await page.keyboard.press('Enter');
  await expect(page).not.toHaveURL(/sign-in/);
}

/** A browser of one's own, signed in. */
export async function asPerson(
  browser: Browser,
  who: Who,
  to = '/',
  options: BrowserContextOptions = {},
): Promise<Page> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  await signIn(page, who, to);
  return page;
}

export const PHONE: BrowserContextOptions = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };
