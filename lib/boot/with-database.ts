/**
 * node lib/boot/with-database.ts COMMAND ARGS…: runs a command with the environment that the app and Prisma's commands
 * expect, for example `prisma migrate dev --name …`, which also needs the right to make its shadow database.
 */
import { spawnSync } from 'node:child_process';
import { dataFolder } from './data-folder.ts';
import { openDatabase } from './database.ts';
import { openEmbedded } from './embedded-database.ts';
import { ownEnvironment } from './project.mjs';
import { OWNER_ROLE, withClient } from './roles.ts';

const [command, ...args] = process.argv.slice(2);
if (!command) throw new Error('Say which command: node lib/boot/with-database.ts COMMAND ARGS…');
const folder = dataFolder();
const database = await openDatabase(folder, console.error);

/** Prisma compares with a shadow database, which the owner may make only while such a command runs. */
async function allowShadow(allowed: boolean): Promise<void> {
  if (process.env.DATABASE_URL) return;
  const server = await openEmbedded(folder);
  const right = allowed ? 'CREATEDB' : 'NOCREATEDB';
  await withClient(server.adminUrl, (client) => client.query(`ALTER ROLE ${OWNER_ROLE} ${right}`));
  await server.release();
}

await allowShadow(true);
try {
  const env = ownEnvironment({ DATABASE_URL: database.appUrl, OWNER_DATABASE_URL: database.ownerUrl });
  process.exitCode = spawnSync(command, args, { stdio: 'inherit', env }).status ?? 1;
} finally {
  await allowShadow(false);
  await database.release();
}
