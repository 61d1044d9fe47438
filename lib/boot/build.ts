/**
 * What is made from the sources before serving: the database client and the production build, each only when its sources
 * changed. A broken-off build is not taken for a whole one.
 */
import { spawn } from 'node:child_process';
import path from 'node:path';
import { fingerprint, makeOnce } from './fingerprint.ts';
import { generateClient } from './generate.mjs';
import { step } from './progress.mjs';
import { ownEnvironment, ownNode, root } from './project.mjs';
import { Refusal, sentenceFor } from './refusal.ts';

const CLIENT_SOURCES = ['prisma/schema', 'package-lock.json', 'lib/boot/generate.mjs'];
const BUILD_SOURCES = ['app', 'lib', 'prisma/schema', 'public', 'next.config.js', 'package-lock.json', 'tsconfig.json'];

/** Makes prisma/generated when the schema is not the one it was made from. */
export async function makeClient(): Promise<void> {
  await makeOnce('prisma/generated/.made-from', fingerprint(CLIENT_SOURCES), () =>
    step('Making the database client', async () => generateClient()),
  );
}

function nextBuild(): Promise<void> {
  const output: Buffer[] = [];
  const command = path.join(root, 'node_modules', 'next', 'dist', 'bin', 'next');
  const env = ownEnvironment({ NODE_ENV: 'production' });
  return new Promise((resolve, reject) => {
    const child = spawn(ownNode, [command, 'build'], { cwd: root, env, stdio: ['ignore', 'pipe', 'pipe'] });
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk) => output.push(chunk));
    child.on('error', reject);
    child.on('close', (code) => {
      const said = Buffer.concat(output).toString();
      if (code === 0) resolve();
      else if (/ENOSPC|no space left/i.test(said)) reject(new Refusal(sentenceFor(new Error('ENOSPC while building'))));
      else reject(new Error(`The build failed. Its last words:\n${said.slice(-4000)}`));
    });
  });
}

/** Makes the production build when any source changed since the last one. */
export async function makeBuild(): Promise<void> {
  await makeOnce('.next/made-from', fingerprint(BUILD_SOURCES, 'lib/boot'), () =>
    step('Building (about a minute, once for each change of the sources)', nextBuild),
  );
}
