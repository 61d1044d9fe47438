// npm run generate: the database client from prisma/schema, and the types of the routes. Starts on any Node.
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { ownEnvironment, ownNode, root } from './project.mjs';

const engine = path.join(root, 'lib', 'boot', 'schema-engine.mjs');

function run(program, args) {
  // Prisma's command wants to see an engine before it does anything; generating never calls it.
  const env = ownEnvironment({ PRISMA_SCHEMA_ENGINE_BINARY: engine, PRISMA_HIDE_UPDATE_MESSAGE: '1' });
  const done = spawnSync(ownNode, [path.join(root, 'node_modules', program), ...args], {
    cwd: root,
    env,
    encoding: 'utf8',
  });
  if (done.status === 0) return;
  throw new Error(
    `${path.basename(program)} ${args.join(' ')} failed:\n${done.error?.message ?? done.stdout + done.stderr}`,
  );
}

/** Makes prisma/generated from prisma/schema. */
export function generateClient() {
  if (fs.existsSync(path.join(root, 'prisma', 'schema'))) run('prisma/build/index.js', ['generate']);
}

/** Makes next-env.d.ts and the types of the routes. */
export function generateRouteTypes() {
  run('next/dist/bin/next', ['typegen']);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  generateClient();
  generateRouteTypes();
  console.log('Made prisma/generated and the types of the routes.');
}
