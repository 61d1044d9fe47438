// Installs what package-lock.json names when it is missing, out of date or half made. Built-ins only.
import { spawn, spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { step } from './progress.mjs';
import { ownNode, root } from './project.mjs';

const read = (file) => {
  try {
    return JSON.parse(fs.readFileSync(file, 'utf8'));
  } catch {
    return undefined;
  }
};

/** Why the packages in `folder` are not those of its lock file; undefined when they are. */
export function whatIsMissing(folder = root) {
  const modules = path.join(folder, 'node_modules');
  const wanted = read(path.join(folder, 'package-lock.json'))?.packages;
  if (!wanted) throw new Error('package-lock.json is missing or damaged. Put it back as it was in the checkout.');
  if (!fs.existsSync(modules)) return 'packages are not installed yet';
  // npm writes this list when it has finished, so a broken-off install has none.
  const found = read(path.join(modules, '.package-lock.json'))?.packages;
  if (!found) return 'an earlier install was broken off';
  for (const [place, { version, optional }] of Object.entries(wanted)) {
    if (place === '' || (optional && !found[place])) continue;
    if (found[place]?.version !== version) return 'the list of packages has changed';
    if (!fs.existsSync(path.join(folder, place, 'package.json'))) return `${place} has gone`;
  }
  return undefined;
}

const nodeWorks = () => spawnSync(ownNode, ['--version']).status === 0;

function run(title, program, args, folder) {
  return step(title, async () => {
    const output = [];
    const child = spawn(program, args, {
      cwd: folder,
      env: { ...process.env, NODE_ENV: '' },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk) => output.push(chunk));
    const code = await new Promise((resolve, reject) => {
      child.on('error', reject);
      child.on('close', resolve);
    });
    if (code === 0) return;
    const said = Buffer.concat(output).toString();
    if (/ENOSPC|no space left/i.test(said)) {
      throw new Error('The disk is full. Free about 2 GB, then run the same command again: the install is repaired.');
    }
    if (/ENOTFOUND|EAI_AGAIN|ETIMEDOUT|ECONNREFUSED|ECONNRESET/.test(said)) {
      throw new Error(
        `The package registry does not answer. Check the network, then run the same command again.\n${said.slice(-600)}`,
      );
    }
    throw new Error(
      `npm could not install the packages. Put right what it says, then run the same command again.\n${said.slice(-2000)}`,
    );
  });
}

/** Installs if need be; afterwards the project's own Node is there too, even where install scripts are switched off. */
export async function install() {
  const missing = whatIsMissing();
  // npm itself is on the path of whoever could type the command; under `npm start` it says which one it is.
  const viaNpm = process.env.npm_execpath?.endsWith('.js')
    ? [process.execPath, [process.env.npm_execpath]]
    : ['npm', []];
  if (missing) {
    const args = ['ci', '--include=dev', '--include=optional', '--prefer-offline', '--no-audit', '--no-fund'];
    await run(`Installing packages: ${missing}`, viaNpm[0], [...viaNpm[1], ...args], root);
  }
  if (!nodeWorks()) {
    const folder = path.join(root, 'node_modules', 'node');
    await run('Installing the project’s own Node', process.execPath, ['installArchSpecificPackage.js'], folder);
    if (!nodeWorks()) throw new Error(`${ownNode} does not run. Remove node_modules, then run the same command again.`);
  }
}
