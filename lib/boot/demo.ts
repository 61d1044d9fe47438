/**
 * The demo world: put in when the database is empty or when asked. While its passwords exist the app is not for others'
 * machines.
 */
import { spawn } from 'node:child_process';
import path from 'node:path';
import { step } from './progress.mjs';
import { ownEnvironment, ownNode, root } from './project.mjs';
import { withClient } from './roles.ts';

type Urls = { readonly ownerUrl: string; readonly appUrl: string };

const WANTED = 'demo world: being put in';
const IN = 'demo world: in';

/** The note is a comment on a table that is always there, so it goes with the database wherever that goes. */
async function readNote(ownerUrl: string): Promise<string | null> {
  return withClient(ownerUrl, async (client) => {
    const { rows } = await client.query(`SELECT obj_description('"_prisma_migrations"'::regclass, 'pg_class') AS note`);
    return rows[0].note;
  });
}

const writeNote = (ownerUrl: string, note: string): Promise<unknown> =>
  withClient(ownerUrl, (client) => client.query(`COMMENT ON TABLE "_prisma_migrations" IS '${note}'`));

/** Whether nothing was ever written: asked by size, because row-level security hides rows from the owner too. */
async function isEmpty(ownerUrl: string): Promise<boolean> {
  return withClient(ownerUrl, async (client) => {
    const { rows } = await client.query(
      `SELECT coalesce(sum(pg_relation_size(oid)), 0)::bigint AS bytes FROM pg_class
       WHERE relnamespace = 'public'::regnamespace AND relkind = 'r' AND relname <> '_prisma_migrations'`,
    );
    return BigInt(rows[0].bytes) === 0n;
  });
}

async function seed({ ownerUrl, appUrl }: Urls): Promise<void> {
  const env = ownEnvironment({ DATABASE_URL: appUrl, OWNER_DATABASE_URL: ownerUrl });
  const child = spawn(ownNode, [path.join(root, 'seed', 'seed.ts')], {
    cwd: root,
    env,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const output: Buffer[] = [];
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk) => output.push(chunk));
  const code = await new Promise((resolve) => child.on('close', resolve));
  if (code !== 0)
    throw new Error(`The demo world could not be put in:\n${Buffer.concat(output).toString().slice(-3000)}`);
}

/** Puts the demo world in if `asked`, if the database is empty, or if an earlier try was broken off. */
export async function ensureDemo(urls: Urls, asked: boolean): Promise<void> {
  const note = await readNote(urls.ownerUrl);
  if (note === IN && !asked) return;
  if (note !== WANTED && !asked && !(await isEmpty(urls.ownerUrl))) return;
  await writeNote(urls.ownerUrl, WANTED);
  await step('Putting the demo world in', () => seed(urls));
  await writeNote(urls.ownerUrl, IN);
}
