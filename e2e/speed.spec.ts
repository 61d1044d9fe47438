import { expect, type Page, test } from '@playwright/test';
import { writeProcedureFile } from '../lib/file/procedure-file.ts';
import type { ProcedureId, StepId } from '../lib/procedure/procedure.ts';
import { sixtySteps } from '../tests/bench/sixty.ts';
import { saved } from './kit/draft.ts';
import { fly } from './kit/fly.ts';
import { asPerson } from './kit/people.ts';

/** ms; of issue 4: the checks on text and numbers answer within it while a person types, and hold no longer task up. */
const LIMIT = 50;
/** The machine of the tests may be shared: held to twice the limit here, the figure itself is printed. */
const SHARED = 2;
const WORDS = 'The crew reads it once, then looks outside again.';

function sixtyUnnamed(): string {
  const { steps, ...rest } = sixtySteps(0);
  const unnamed = steps.map((step, index) => ({
    ...step,
    label: '',
    id: `st_t${Date.now().toString(36)}${100 + index}` as StepId,
  }));
  return writeProcedureFile({
    ...rest,
    id: `pr_t${Date.now().toString(36)}` as ProcedureId,
    title: 'Sixty steps',
    branches: [],
    steps: unnamed,
  });
}

const taken = async (page: Page, name: string): Promise<readonly number[]> => {
  const all = await Promise.all(
    page
      .workers()
      .map((worker) =>
        worker.evaluate((mark) => performance.getEntriesByName(mark).map((entry) => entry.duration), name),
      ),
  );
  return all.flat();
};

test('while somebody types in sixty steps the checks answer at once and hold nothing up', async ({ browser }) => {
  test.setTimeout(120_000);
  const page = await asPerson(browser, 'drafter', '/desk/new');
  const form = page.getByRole('region', { name: 'Or from a file' });
  await form.getByLabel('Its text').fill(sixtyUnnamed());
  await form.getByLabel('Why it must change').fill('A long text, to see how typing goes.');
  await form.getByRole('button', { name: 'Bring it in' }).click();
  await expect(page).toHaveURL(/\/desk\/(?!new)[^/]+$/);
  await saved(page);

  await page
    .getByRole('button', { name: /^Step / })
    .nth(30)
    .click();
  const why = page.getByRole('textbox', { name: 'Why', exact: true });
  await why.click();
  await expect.poll(async () => (await taken(page, 'checks atRest')).length).toBeGreaterThan(0);
  const before = (await taken(page, 'checks atOnce')).length;
  await page.evaluate(() => {
    const kept = window as unknown as { longTasks: number[] };
    kept.longTasks = [];
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) kept.longTasks.push(entry.duration);
    }).observe({ type: 'longtask' });
  });
  await page.keyboard.type(WORDS, { delay: 90 });
  await expect(why).toContainText(WORDS);
  await expect.poll(async () => (await taken(page, 'checks atOnce')).length).toBeGreaterThan(before + WORDS.length / 2);

  const times = (await taken(page, 'checks atOnce')).slice(before).sort((a, b) => a - b);
  const p95 = times[Math.floor(times.length * 0.95)]!;
  const rest = await taken(page, 'checks atRest');
  const long = await page.evaluate(() => (window as unknown as { longTasks: number[] }).longTasks);
  console.log(
    `checks while typing: ${times.length} answers, p50 ${times[times.length >> 1]!.toFixed(1)} ms, p95 ${p95.toFixed(1)} ms; at rest ${Math.max(...rest).toFixed(0)} ms at most; page tasks over 50 ms: ${long.map(Math.round).join(', ') || 'none'}`,
  );
  expect(p95).toBeLessThan(SHARED * LIMIT);
});

test('the weight slider answers at once, and everything follows it', async ({ browser }) => {
  test.setTimeout(180_000);
  const page = await asPerson(browser, 'drafter', '/procedures');
  await fly(page, 'Go-around, all engines');
  // The slower questions of the opening are over before the slider is timed.
  await expect(page.getByText(/found by the checks that need time/)).toBeVisible({ timeout: 90_000 });
  await expect(page.getByText(/with hands ±2 s/).first()).toBeVisible({ timeout: 30_000 });
  const times = await page.evaluate(async () => {
    const slider = document.querySelector<HTMLInputElement>('input[type="range"][aria-label="Weight"]')!;
    const drawn = document.querySelector('[data-flown="speed"]')!;
    const put = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!;
    const once = (weight: number): Promise<number> =>
      new Promise((resolve) => {
        const began = performance.now();
        const watch = new MutationObserver(() => {
          watch.disconnect();
          requestAnimationFrame(() => resolve(performance.now() - began));
        });
        watch.observe(drawn, { attributes: true, attributeFilter: ['d'] });
        put.call(slider, String(weight));
        slider.dispatchEvent(new Event('input', { bubbles: true }));
      });
    const all: number[] = [];
    for (let turn = 0; turn < 30; turn += 1) all.push(await once(48_000 + turn * 600));
    return all;
  });
  // The first ones warm the compiler up, as a hand on a slider does within its first half second.
  const sorted = times.slice(8).sort((a, b) => a - b);
  const median = sorted[sorted.length >> 1]!;
  test.info().annotations.push({
    type: 'slider to drawing, ms',
    description: `${median.toFixed(1)}, most ${sorted.at(-1)!.toFixed(1)}`,
  });
  console.log(`slider to drawing: median ${median.toFixed(1)} ms, most ${sorted.at(-1)!.toFixed(1)} ms`);
  expect(median).toBeLessThan(SHARED * LIMIT);
  await expect(page.getByRole('region', { name: 'Assumptions' })).toContainText('65.4 t');
  await page.context().close();
});
