import AxeBuilder from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';
import { checkedNow, openStep, retype, saved, startDraft } from './kit/draft.ts';
import { fly } from './kit/fly.ts';
import { asPerson, PHONE } from './kit/people.ts';

const worst = (page: Page) => page.getByRole('region', { name: 'Worst case' });
const cursor = (page: Page) => page.getByRole('slider', { name: /Moment of the flight/ });
const reading = (page: Page) => page.locator('[data-reading]');

test('assumptions first, then one cursor over all charts by keys and by hand', async ({ browser }) => {
  const page = await asPerson(browser, 'drafter', '/procedures');
  await fly(page, 'Go-around, all engines');
  const assumptions = page.getByRole('region', { name: 'Assumptions' });
  await expect(assumptions).toContainText('Flight model');
  await expect(assumptions).toContainText('What this model cannot say');
  const above = await assumptions.boundingBox();
  const chart = await page.getByRole('img', { name: /^Speed against time/ }).boundingBox();
  expect(above!.y).toBeLessThan(chart!.y);

  await cursor(page).focus();
  await page.keyboard.press('ArrowRight');
  await expect(reading(page)).toContainText(/^1\ss/);
  await page.keyboard.press('Shift+ArrowRight');
  await expect(reading(page)).toContainText(/^11\ss/);
  await page.keyboard.press('PageUp');
  await expect(reading(page)).toContainText(/^12\ss/);
  await page.keyboard.press('PageDown');
  await expect(reading(page)).toContainText(/^10\ss/);
  await expect(cursor(page)).toHaveAttribute('aria-valuetext', /ft AAL.*kt.*band \d+ to \d+ kt.*GOAROUND/);
  await page.keyboard.press('End');
  await expect(reading(page)).toContainText(/LEVEL/);
  await page.keyboard.press('Home');
  await expect(reading(page)).toContainText(/^0\ss/);

  // A press on any chart moves the same cursor.
  const lanes = page.getByRole('img', { name: /^Over time/ });
  const speeds = page.getByRole('img', { name: /^Speed against time/ });
  const middle = (await lanes.boundingBox())!.width / 2;
  await lanes.click({ position: { x: middle, y: 40 } });
  await expect(reading(page)).not.toContainText(/^0\ss/);
  const there = await reading(page).textContent();
  await cursor(page).press('Home');
  await speeds.click({ position: { x: middle, y: 120 } });
  await expect(reading(page)).toHaveText(there!);

  // A stretch of it, and the tables behind the charts.
  await page.getByRole('radio', { name: '30 s' }).check();
  await page.getByText('Speed in its band as a table').click();
  await expect(page.getByRole('columnheader', { name: 'Limit, kt' })).toBeVisible();
  await page.getByText('Modes, levers, pilots and voice as a table').click();
  await expect(page.getByRole('cell', { name: 'flaps F35 → F18, 12 s' })).toBeVisible();
  await page.context().close();
});

test('the worst case is chosen and explained, shown, and can be stopped', async ({ browser }) => {
  test.setTimeout(120_000);
  const page = await asPerson(browser, 'captain', '/procedures');
  await fly(page, 'Go-around, all engines');
  await worst(page).getByRole('button', { name: 'Find the worst case' }).click();
  await expect(worst(page).locator('[data-worst]')).toHaveText(
    /^Smallest margin below the limit of 22 weights: \d+\skt at [\d.]+\st\.$/,
    {
      timeout: 60_000,
    },
  );
  await expect(worst(page)).toContainText('Checked over 22 flights');
  await expect(worst(page)).toContainText('The ends alone would have said');
  await worst(page).getByRole('button', { name: 'Show it' }).click();
  await expect(worst(page).getByRole('button', { name: 'Show it' })).toHaveCount(0);
  await worst(page)
    .getByLabel(/winds and temperatures/)
    .check();
  await worst(page)
    .getByLabel(/each again/)
    .check();
  await worst(page).getByRole('button', { name: 'Find the worst case' }).click();
  await expect(worst(page).getByText(/\d+ of \d+ flights flown/)).toBeVisible({ timeout: 30_000 });
  await worst(page).getByRole('button', { name: 'Stop' }).click();
  await expect(worst(page)).toContainText('Stopped. Nothing was chosen');
  await page.context().close();
});

test('a recording, an interruption and a condition outside the sheet', async ({ browser }) => {
  const page = await asPerson(browser, 'drafter', '/procedures');
  await fly(page, 'Go-around, all engines');
  const over = page.getByRole('region', { name: 'Lay over' });
  const text = 'Time (s),Speed (kt),height\n0,131,200\n5,14o,190\n10,158,260\n20,170,560\n';
  await over
    .getByLabel(/recorded flight/)
    .setInputFiles({ name: 'session.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
  await expect(over).toContainText('session.csv: 3 lines laid over, 1 left out or said');
  await expect(over).toContainText(/recorded at most \d+ kt (faster|slower) than computed/);
  await over.getByText('What could not be read').click();
  await expect(over).toContainText('Line 3: speed "14o" is no number; the line is left out.');
  await expect(page.getByText('speed as recorded')).toBeVisible();
  await over
    .getByLabel(/recorded flight/)
    .setInputFiles({ name: 'bad.csv', mimeType: 'text/csv', buffer: Buffer.from('a,b\n1,2') });
  await expect(over).toContainText('it names no column "time"');

  await cursor(page).focus();
  for (let press = 0; press < 3; press += 1) await page.keyboard.press('ArrowRight');
  const interrupt = page.getByRole('region', { name: 'Interrupt it' });
  await interrupt.getByRole('button', { name: 'Drop it at 3 s' }).click();
  await expect(interrupt.getByRole('listitem')).toHaveText(/radio at 3 s/);
  await page.getByText('Modes, levers, pilots and voice as a table').click();
  await expect(page.getByRole('cell', { name: 'the controller calls, PM answers' })).toBeVisible();
  await interrupt.getByRole('button', { name: /Take away/ }).click();
  await expect(page.getByRole('cell', { name: 'the controller calls, PM answers' })).toHaveCount(0);

  const weight = page.getByLabel('Weight, t');
  await weight.fill('90');
  await expect(page.getByRole('alert').filter({ hasText: 'Not flown.' })).toContainText(
    'A weight of 90.0 t is outside the sheet',
  );
  await weight.fill('ninety');
  await expect(page.getByText('no number; flown as before')).toBeVisible();
  await weight.fill('58');
  await expect(page.getByText(/Flown to its end at/)).toBeVisible();
  await page.context().close();
});

test('a draft laid over the issue in force; on paper nothing is to be pressed', async ({ browser }) => {
  const page = await asPerson(browser, 'drafter', '/desk');
  await page.getByRole('link', { name: 'Go-around, all engines' }).first().click();
  await page.getByRole('link', { name: 'Fly it' }).click();
  await expect(page.locator('[data-flown="speed"]')).toBeAttached({ timeout: 30_000 });
  await page.getByLabel(/issue 1, flown under the same conditions/).check();
  await expect(page.getByText('speed, issue 1')).toBeVisible();
  await expect(page.getByText('second row of each: issue 1')).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('region', { name: 'Assumptions' })).toBeVisible();
  await expect(page.getByRole('img', { name: /^Speed against time/ })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Find the worst case' })).toBeHidden();
  await expect(page.getByLabel('Weight, t')).toBeHidden();
  expect((await page.pdf()).length).toBeGreaterThan(20_000);
  await page.context().close();
});

test('a flight is kept with the candidate, and flown again it is the same', async ({ browser }) => {
  test.setTimeout(180_000);
  const writer = await asPerson(browser, 'second', '/desk');
  await startDraft(
    writer,
    'Climb and altitude change',
    'The read-back of the level is asked for twice on some flights.',
  );
  const step = await openStep(writer, 'CL-01');
  await retype(writer, step.getByRole('textbox', { name: 'Note', exact: true }), 'Said once.');
  await saved(writer);
  await checkedNow(writer);
  await writer.getByRole('button', { name: 'Submit …' }).click();
  await writer.getByRole('button', { name: 'Submit', exact: true }).click();
  await expect(writer).toHaveURL(/\/reviews\//);
  const page = await asPerson(browser, 'captain', new URL(writer.url()).pathname);
  await page.getByRole('link', { name: 'Fly it' }).click();
  await expect(page.locator('[data-flown="speed"]')).toBeAttached({ timeout: 30_000 });
  const kept = page.getByRole('region', { name: 'Flights kept with this candidate' });
  await kept.getByLabel('Why this one').fill('the middle of the envelope');
  await kept.getByRole('button', { name: 'Keep this flight' }).click();
  await expect(kept).toContainText('the middle of the envelope');
  await kept.getByRole('button', { name: 'Fly it again and compare' }).click();
  await expect(kept).toContainText(/Flown again: all \d+ figures are the same/);
  await writer.context().close();
  await page.context().close();
});

for (const [size, options] of [
  ['at the desk', {}],
  ['on a phone', PHONE],
  ['at night', { colorScheme: 'dark' as const }],
] as const) {
  test(`the page holds for everybody, ${size}`, async ({ browser }) => {
    const page = await asPerson(browser, 'auditor', '/procedures', options);
    for (const title of ['Deviation around weather and rejoin', 'Instrument approach on course and glide']) {
      await fly(page, title);
      const { violations } = await new AxeBuilder({ page })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
        .analyze();
      expect(
        violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(' | ')}`),
      ).toEqual([]);
      // Charts take the width that is there once they have seen it.
      const wider = () =>
        page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      await expect.poll(wider).toBeLessThanOrEqual(0);
      // Drawn at its real size: the figures in it are not scaled down.
      const scale = await page.getByRole('img', { name: /^Speed against time/ }).evaluate((svg) => {
        const drawn = (svg as unknown as SVGSVGElement).viewBox.baseVal.width;
        return svg.getBoundingClientRect().width / drawn;
      });
      expect(scale).toBeCloseTo(1, 1);
    }
    await page.goto('/fly');
    await expect(page.getByRole('heading', { name: 'Which text shall be flown?' })).toBeVisible();
    await page.context().close();
  });
}
