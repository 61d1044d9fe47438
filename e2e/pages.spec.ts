import AxeBuilder from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';
import { asPerson, PHONE, type Who } from './kit/people.ts';

/** Every page, with someone who may see it. `open`: a link on that page leads on to the one meant, or to the one under it, `further`. */
const PAGES: readonly { who: Who; path: string; open?: RegExp | string; further?: string; heading: RegExp }[] = [
  { who: 'drafter', path: '/desk', heading: /^Desk$/ },
  { who: 'drafter', path: '/desk/new', heading: /New procedure/ },
  { who: 'drafter', path: '/desk', open: 'Go-around, all engines', heading: /Go-around/ },
  { who: 'drafter', path: '/notation', heading: /Gate notation/ },
  { who: 'drafter', path: '/procedures', heading: /Procedures/ },
  { who: 'captain', path: '/procedures', open: 'Go-around, all engines', heading: /Go-around/ },
  { who: 'captain', path: '/policy', heading: /Policy/ },
  { who: 'captain', path: '/sheets', heading: /heets/ },
  { who: 'captain', path: '/library', heading: /Library/ },
  { who: 'captain', path: '/checks', heading: /^Checks$/ },
  { who: 'captain', path: '/checks', open: 'Flap above its limit', heading: /Flap above/ },
  { who: 'captain', path: '/sheets', open: 'TN-182, revision A', heading: /Tarnavel/ },
  { who: 'drafter', path: '/sheets', open: 'TN-182, revision A', further: '/edit/modes', heading: /next mode table/ },
  { who: 'drafter', path: '/account', heading: /Oona Reth/ },
  { who: 'administrator', path: '/people', heading: /People/ },
  { who: 'administrator', path: '/people', open: 'Tam Osk', heading: /Tam Osk/ },
  { who: 'administrator', path: '/fleet', heading: /Fleet/ },
  { who: 'administrator', path: '/policy/new', heading: /Policy, version/ },
  { who: 'approver', path: '/desk', heading: /^Desk$/ },
  { who: 'pilot', path: '/read', heading: /Which tail/ },
  { who: 'pilot', path: '/read', open: 'Q-SKA', heading: /Q-SKA/ },
  { who: 'auditor', path: '/record', heading: /Record/ },
  { who: 'auditor', path: '/record?tail=Q-SKD&at=2026-11-20T12:00', heading: /Record/ },
];

// Each person and size is a walk of its own, so that two walk at once.
test.describe.configure({ mode: 'parallel' });

async function look(page: Page, heading: RegExp): Promise<void> {
  await expect(page.getByRole('heading', { name: heading }).first()).toBeAttached();
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(' | ')}`)).toEqual(
    [],
  );
  // Nothing may stand out to the side of the screen.
  expect(
    await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
  ).toBeLessThanOrEqual(0);
}

const SIZES = [
  ['at the desk', {}],
  ['on a phone', PHONE],
  ['at night', { colorScheme: 'dark' as const }],
] as const;

for (const who of [...new Set(PAGES.map((one) => one.who))]) {
  for (const [size, options] of SIZES) {
    test(`every page of the ${who}, ${size}`, async ({ browser }) => {
      test.setTimeout(180_000);
      const page = await asPerson(browser, who, '/account', options);
      for (const { path, open, further = '', heading } of PAGES.filter((one) => one.who === who)) {
        await test.step(open ? `${path} > ${open} ${further}` : path, async () => {
          await page.goto(path);
          if (open) {
            await page.getByRole('link', { name: open }).first().click();
            await page.waitForURL((url) => url.pathname !== path);
          }
          if (further) await page.goto(page.url() + further);
          await look(page, heading);
        });
      }
      await page.context().close();
    });
  }
}

test('sign-in, nothing there, and not part of the role', async ({ page, browser }) => {
  await page.goto('/sign-in');
  await look(page, /Sign in/);
  const osk = await asPerson(browser, 'pilot', '/read');
  await osk.goto('/record');
  await look(osk, /not part of your role/);
  await osk.goto('/desk/no-such-draft');
  await expect(osk.getByText(/nothing by that address|not part of your role/)).toBeVisible();
  await osk.goto('/no-such-page');
  await look(osk, /nothing by that address/);
});
