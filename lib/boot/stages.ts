/**
 * The stages of npm test: which program runs, and how its outcome is counted. A skip is never counted as passed.
 */
import { spawn } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { ownEnvironment, ownNode, root } from './project.mjs';

export type Count = { readonly passed: number; readonly failed: number; readonly skipped: number };
export type Outcome = {
  readonly count: Count;
  /** Shown when something failed. */
  readonly output: string;
  /** What was skipped and why, a line each. */
  readonly skips: readonly string[];
};

export type Run = { readonly code: number; readonly output: string };

/** Runs a program of node_modules with the project's Node and keeps what it says. */
export function run(program: string, args: readonly string[], extra: Record<string, string> = {}): Promise<Run> {
  const output: Buffer[] = [];
  return new Promise((resolve) => {
    const child = spawn(ownNode, [path.join(root, program), ...args], {
      cwd: root,
      env: ownEnvironment({ FORCE_COLOR: '0', NO_COLOR: '1', ...extra }),
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk) => output.push(chunk));
    child.on('error', (error) => resolve({ code: 1, output: error.message }));
    child.on('close', (code) => resolve({ code: code ?? 1, output: Buffer.concat(output).toString() }));
  });
}

/** A program that either agrees or does not counts as one. */
export function oneOutcome({ code, output }: Run): Outcome {
  const passed = code === 0;
  return { count: { passed: passed ? 1 : 0, failed: passed ? 0 : 1, skipped: 0 }, output, skips: [] };
}

function readReport<T>(file: string): T | undefined {
  try {
    return JSON.parse(fs.readFileSync(file, 'utf8'));
  } catch {
    return undefined;
  }
}

type VitestReport = {
  numPassedTests: number;
  numFailedTests: number;
  testResults: {
    name: string;
    status: string;
    assertionResults: { status: string; fullName: string }[];
  }[];
};

/** Counts vitest's report. A file that could not be loaded, no test at all and a failure outside tests are failures. */
export function vitestOutcome({ code, output }: Run, report: VitestReport | undefined): Outcome {
  if (!report) return { count: { passed: 0, failed: 1, skipped: 0 }, output, skips: [] };
  const broken = report.testResults.filter(
    (file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'),
  );
  const skips = report.testResults.flatMap((file) =>
    file.assertionResults.filter((test) => !['passed', 'failed'].includes(test.status)).map((test) => test.fullName),
  );
  const known = report.numFailedTests + broken.length;
  const failed = known || (code === 0 && report.numPassedTests > 0 ? 0 : 1);
  return { count: { passed: report.numPassedTests, failed, skipped: skips.length }, output, skips };
}

type PlaywrightReport = {
  stats: { expected: number; unexpected: number; flaky: number; skipped: number };
  suites: Suite[];
};
type Suite = {
  suites?: Suite[];
  specs?: { title: string; tests: { status: string }[] }[];
};

const skippedIn = (suite: Suite): string[] => [
  ...(suite.specs ?? [])
    .filter((spec) => spec.tests.some((test) => test.status === 'skipped'))
    .map((spec) => spec.title),
  ...(suite.suites ?? []).flatMap(skippedIn),
];

/** Counts Playwright's report; a test that passed only the second time has failed. */
export function playwrightOutcome({ code, output }: Run, report: PlaywrightReport | undefined): Outcome {
  if (!report) return { count: { passed: 0, failed: 1, skipped: 0 }, output, skips: [] };
  const { expected, unexpected, flaky, skipped } = report.stats;
  const failed = unexpected + flaky || (code === 0 && expected > 0 ? 0 : 1);
  return { count: { passed: expected, failed, skipped }, output, skips: report.suites.flatMap(skippedIn) };
}

const results = path.join(root, 'test-results');
const reportFile = (name: string): string => {
  fs.mkdirSync(results, { recursive: true });
  const file = path.join(results, `${name}.json`);
  fs.rmSync(file, { force: true });
  return file;
};

/** Unit and house tests. */
export async function unitTests(): Promise<Outcome> {
  const file = reportFile('unit');
  const done = await run('node_modules/vitest/vitest.mjs', [
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile=${file}`,
  ]);
  return vitestOutcome(done, readReport(file));
}

/** End-to-end tests in a real browser. */
export async function browserTests(): Promise<Outcome> {
  const file = reportFile('browser');
  const out = path.join(results, 'browser');
  const args = ['test', '--reporter=list,json', `--output=${out}`];
  const done = await run('node_modules/@playwright/test/cli.js', args, { PLAYWRIGHT_JSON_OUTPUT_NAME: file });
  return playwrightOutcome(done, readReport(file));
}
