/** A PostgreSQL 15 of the machine's own, the oldest that DATABASE_URL may name; undefined where there is none. */
import { spawn, spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { onTestFinished } from 'vitest';
import { layOut } from '../../lib/boot/binaries.ts';
import { withClient } from '../../lib/boot/roles.ts';
import { temporaryFolder } from './temporary.ts';

const FOLDERS = ['/usr/lib/postgresql/15/bin', '/opt/homebrew/opt/postgresql@15/bin', '/usr/pgsql-15/bin'];
const ATTEMPTS = 400;

export const fifteen = FOLDERS.find((folder) => fs.existsSync(path.join(folder, 'initdb')));

/** Makes and starts a cluster for this test; gives the address of its superuser. */
export async function startFifteen(bin: string): Promise<string> {
  const home = temporaryFolder();
  const { account } = layOut(home);
  const data = path.join(home, 'data');
  for (const folder of [data, path.join(home, 'run')]) {
    fs.mkdirSync(folder, { mode: 0o700 });
    if (account.uid !== undefined) fs.chownSync(folder, account.uid, account.gid!);
  }
  const made = spawnSync(
    path.join(bin, 'initdb'),
    ['-D', data, '-U', 'postgres', '-A', 'trust', '-E', 'UTF8', '--locale=C'],
    {
      ...account,
      cwd: '/',
      encoding: 'utf8',
    },
  );
  if (made.status !== 0) throw new Error(`initdb 15: ${made.stderr}`);
  const args = ['-D', data, '-k', path.join(home, 'run'), '-c', 'listen_addresses=', '-c', 'fsync=off'];
  const server = spawn(path.join(bin, 'postgres'), args, { ...account, cwd: '/', stdio: 'ignore' });
  const ended = new Promise((resolve) => server.on('exit', resolve));
  onTestFinished(async () => {
    server.kill('SIGQUIT');
    await ended;
  });
  const url = `postgresql://postgres@localhost/postgres?host=${encodeURIComponent(path.join(home, 'run'))}`;
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    const up = await withClient(url, async () => true).catch(() => false);
    if (up) return url;
    await pause(25);
  }
  throw new Error('PostgreSQL 15 did not start');
}
