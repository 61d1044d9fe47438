#!/usr/bin/env node
// The command `cuewright`. It starts on whatever Node the machine has (20 or later) and goes on in the one that the project
// brings along, which runs TypeScript as it stands. Built-ins only up to there.
import { spawn } from 'node:child_process';
import fs from 'node:fs';
import module from 'node:module';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** From this major version on, a file of TypeScript is run without being built. */
const RUNS_TYPESCRIPT = 24;
/** As told in format.md. */
const CANNOT = 2;

const root = fileURLToPath(new URL('../..', import.meta.url));
const modules = path.join(root, 'node_modules');
const ownNode = path.join(modules, 'node', 'bin', process.platform === 'win32' ? 'node.exe' : 'node');
const major = Number(process.versions.node.split('.')[0]);

if (!fs.existsSync(path.join(modules, 'yaml', 'package.json'))) {
  refuse(`The packages of this checkout are not installed. Run "npm ci" in ${root}, then the same command again.`);
} else if (major >= RUNS_TYPESCRIPT) {
  // Kept between starts: reading a hundred small files anew is most of the time of a short command.
  module.enableCompileCache?.(path.join(modules, '.cache', 'compiled'));
  const { main } = await import('./main.ts');
  await main(process.argv.slice(2));
} else if (fs.existsSync(ownNode)) {
  handOver();
} else {
  refuse(`The project's own Node is missing. Run "npm ci" in ${root}, then the same command again.`);
}

function handOver() {
  const child = spawn(ownNode, [fileURLToPath(import.meta.url), ...process.argv.slice(2)], { stdio: 'inherit' });
  // Ctrl-C reaches both; this process only waits for the end of the other.
  process.on('SIGINT', () => {});
  for (const signal of ['SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
  child.on('error', (error) => refuse(`The project's own Node does not start: ${error.message}`));
  child.on('exit', (code, signal) => {
    process.exitCode = code ?? 128 + (os.constants.signals[signal] ?? 0);
  });
}

/** @param {string} sentence */
function refuse(sentence) {
  console.error(sentence);
  process.exitCode = CANNOT;
}
