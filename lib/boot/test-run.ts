/**
 * npm test, second half: one stage after the other, a line each, and at the very end the count. Any failure makes the exit
 * code differ from zero.
 */
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { makeBuild, makeClient } from './build.ts';
import { HOW, haveChromium } from './chromium.ts';
import { testDataFolder } from './data-folder.ts';
import { openEmbedded } from './embedded-database.ts';
import { generateRouteTypes } from './generate.mjs';
import { step } from './progress.mjs';
import { ownEnvironment, ownNode, root } from './project.mjs';
import { sentenceFor } from './refusal.ts';
import { browserTests, type Count, type Outcome, oneOutcome, run, unitTests } from './stages.ts';

const TAIL = 6000;

type Stage = { readonly title: string; readonly deed: () => Promise<Outcome> };

async function generated(): Promise<Outcome> {
  await makeClient();
  generateRouteTypes();
  return oneOutcome({ code: 0, output: '' });
}

async function unitTestsOnOneServer(): Promise<Outcome> {
  // Held for the whole stage: else each file would start and stop the server for itself.
  const server = await openEmbedded(testDataFolder(), {
    settings: { fsync: 'off', synchronous_commit: 'off', full_page_writes: 'off' },
  });
  try {
    return await unitTests();
  } finally {
    await server.release();
  }
}

async function browserTestsIfPossible(): Promise<Outcome> {
  if (haveChromium()) {
    await makeBuild();
    return browserTests();
  }
  const specs = fs.readdirSync(path.join(root, 'e2e')).filter((name) => name.endsWith('.spec.ts'));
  const why = `no Chromium on this machine; to run these, as root: ${HOW}`;
  return {
    count: { passed: 0, failed: 0, skipped: specs.length },
    output: '',
    skips: specs.map((name) => `e2e/${name}: ${why}`),
  };
}

const quickStages: readonly Stage[] = [
  { title: 'Generated code', deed: generated },
  {
    title: 'Format and lint',
    deed: async () => oneOutcome(await run('node_modules/@biomejs/biome/bin/biome', ['ci', '--colors=off'])),
  },
  { title: 'Types', deed: async () => oneOutcome(await run('node_modules/typescript/bin/tsc', ['--noEmit'])) },
  { title: 'Dead code', deed: async () => oneOutcome(await run('node_modules/knip/bin/knip.js', ['--no-progress'])) },
  { title: 'Unit and house tests', deed: unitTestsOnOneServer },
];
const browserStage: Stage = { title: 'End-to-end tests', deed: browserTestsIfPossible };

async function runStage({ title, deed }: Stage): Promise<Count> {
  const { count, output, skips } = await step(title, async () => {
    try {
      return await deed();
    } catch (error) {
      return oneOutcome({ code: 1, output: sentenceFor(error) });
    }
  });
  if (count.failed > 0) console.log(`\n${output.slice(-TAIL).trim()}\n`);
  for (const skip of skips) console.log(`  skipped: ${skip}`);
  console.log(
    `  ${title}: ${count.passed} passed, ${count.failed} failed${count.skipped ? `, ${count.skipped} skipped` : ''}`,
  );
  return count;
}

async function runAll(stages: readonly Stage[]): Promise<number> {
  let total: Count = { passed: 0, failed: 0, skipped: 0 };
  for (const stage of stages) {
    const count = await runStage(stage);
    total = {
      passed: total.passed + count.passed,
      failed: total.failed + count.failed,
      skipped: total.skipped + count.skipped,
    };
  }
  console.log(`${total.passed} passed, ${total.failed} failed${total.skipped ? `, ${total.skipped} skipped` : ''}`);
  return total.failed === 0 ? 0 : 1;
}

function runBenches(): number {
  const folder = path.join(root, 'tests', 'bench');
  const files = fs.existsSync(folder) ? fs.readdirSync(folder).filter((name) => name.endsWith('.bench.ts')) : [];
  const codes = files.sort().map((name) => {
    console.log(`\n${name}`);
    return (
      spawnSync(ownNode, [path.join(folder, name)], { cwd: root, env: ownEnvironment(), stdio: 'inherit' }).status ?? 1
    );
  });
  if (files.length === 0) console.log('There are no benchmarks in tests/bench.');
  return codes.every((code) => code === 0) ? 0 : 1;
}

const args = process.argv.slice(2);
if (args.includes('--bench')) process.exit(runBenches());
process.exit(await runAll(args.includes('--quick') ? quickStages : [...quickStages, browserStage]));
