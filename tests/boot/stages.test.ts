import { expect, test } from 'vitest';
import { oneOutcome, playwrightOutcome, vitestOutcome } from '../../lib/boot/stages.ts';

const good = { code: 0, output: '' };
const bad = { code: 1, output: 'said' };
const file = (status: string, ...tests: string[]) => ({
  name: 'a.test.ts',
  status,
  assertionResults: tests.map((each, at) => ({ status: each, fullName: `test ${at}` })),
});
const unit = (numPassedTests: number, numFailedTests: number, ...testResults: ReturnType<typeof file>[]) => ({
  numPassedTests,
  numFailedTests,
  testResults,
});

test('a program that agrees counts as one passed, any other as one failed', () => {
  expect(oneOutcome(good).count).toEqual({ passed: 1, failed: 0, skipped: 0 });
  expect(oneOutcome(bad).count).toEqual({ passed: 0, failed: 1, skipped: 0 });
});

test('skipped and unwritten unit tests are named and never counted as passed', () => {
  const outcome = vitestOutcome(good, unit(1, 0, file('passed', 'passed', 'skipped', 'todo')));
  expect(outcome.count).toEqual({ passed: 1, failed: 0, skipped: 2 });
  expect(outcome.skips).toEqual(['test 1', 'test 2']);
});

test('a file that cannot be loaded, a failure outside tests, no tests and no report are failures', () => {
  expect(vitestOutcome(bad, unit(3, 0, file('passed', 'passed'), file('failed'))).count.failed).toBe(1);
  expect(vitestOutcome(bad, unit(3, 0, file('passed', 'passed'))).count.failed).toBe(1);
  expect(vitestOutcome(good, unit(0, 0)).count.failed).toBe(1);
  expect(vitestOutcome(good, undefined).count.failed).toBe(1);
  expect(vitestOutcome(bad, unit(3, 2, file('failed', 'failed', 'failed'))).count.failed).toBe(2);
});

test('a browser test that passed only the second time has failed', () => {
  const stats = { expected: 4, unexpected: 1, flaky: 1, skipped: 1 };
  const suites = [{ suites: [{ specs: [{ title: 'left out', tests: [{ status: 'skipped' }] }] }] }];
  const outcome = playwrightOutcome(bad, { stats, suites });
  expect(outcome.count).toEqual({ passed: 4, failed: 2, skipped: 1 });
  expect(outcome.skips).toEqual(['left out']);
  expect(
    playwrightOutcome(good, { stats: { expected: 0, unexpected: 0, flaky: 0, skipped: 0 }, suites: [] }).count.failed,
  ).toBe(1);
});
