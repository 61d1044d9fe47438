import fs from 'node:fs';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { openDatabase } from '../../lib/boot/database.ts';
import { type Embedded, openEmbedded } from '../../lib/boot/embedded-database.ts';
import { isAlive } from '../../lib/boot/lock.ts';
import { withClient } from '../../lib/boot/roles.ts';
import { startUntil, temporaryFolder } from '../kit/temporary.ts';

async function open(folder: string): Promise<Embedded> {
  const server = await openEmbedded(folder);
  onTestFinished(() => server.release());
  return server;
}
const serverPid = (server: Embedded): number =>
  Number(fs.readFileSync(path.join(server.home, 'data', 'postmaster.pid'), 'utf8').split('\n')[0]);
const count = (server: Embedded) =>
  withClient(server.adminUrl, async (client) => (await client.query('SELECT count(*)::int AS n FROM kept')).rows[0].n);

test('is PostgreSQL 18 on a private socket, and every way in wants a password', async () => {
  const server = await open(temporaryFolder());
  await withClient(server.adminUrl, async (client) => {
    const { rows } = await client.query(
      `SELECT current_setting('server_version_num')::int / 10000 AS version, current_setting('listen_addresses') AS addresses`,
    );
    expect(rows).toEqual([{ version: 18, addresses: '' }]);
  });
  const guessed = new URL(server.adminUrl);
  guessed.password = 'guessed';
  await expect(withClient(guessed.toString(), async () => {})).rejects.toMatchObject({ code: '28P01' });
});

test('a server killed with -9 starts again with everything that was committed', async () => {
  const folder = temporaryFolder();
  const first = await open(folder);
  await withClient(first.adminUrl, (client) =>
    client.query('CREATE TABLE kept AS SELECT generate_series(1, 100) AS n'),
  );
  process.kill(serverPid(first), 'SIGKILL');
  const second = await open(folder);
  expect(await count(second)).toBe(100);
});

test('a server whose app was killed with -9 is taken over by the next start', async () => {
  const folder = temporaryFolder();
  const holder = await startUntil(
    'open',
    `import { openEmbedded } from './lib/boot/embedded-database.ts';
     await openEmbedded(${JSON.stringify(folder)}); console.log('open'); setInterval(() => {}, 1000);`,
  );
  await holder.kill();
  const server = await open(folder);
  const pid = serverPid(server);
  await withClient(server.adminUrl, (client) => client.query('SELECT 1'));
  await server.release();
  expect(isAlive(String(pid))).toBe(false);
});

test('a stale process file and an empty socket lock do not keep it from starting', async () => {
  const folder = temporaryFolder();
  const first = await openEmbedded(folder);
  await first.release();
  fs.writeFileSync(path.join(first.home, 'data', 'postmaster.pid'), `${process.pid}\n`);
  const lock = path.join(first.home, 'run', '.s.PGSQL.5432.lock');
  if (fs.existsSync(path.dirname(lock))) {
    fs.writeFileSync(lock, '');
    fs.utimesSync(lock, 0, 0);
  }
  const second = await open(folder);
  await withClient(second.adminUrl, (client) => client.query('SELECT 1'));
});

test('half a cluster is made anew', async () => {
  const folder = temporaryFolder();
  fs.mkdirSync(path.join(folder, 'postgres', 'data.new', 'base'), { recursive: true });
  const server = await open(folder);
  await withClient(server.adminUrl, (client) => client.query('SELECT 1'));
  expect(fs.existsSync(path.join(server.home, 'data.new'))).toBe(false);
});

test('the last of two holders stops it, not the first', async () => {
  const folder = temporaryFolder();
  const one = await openEmbedded(folder);
  const two = await openEmbedded(folder);
  const pid = serverPid(one);
  await one.release();
  await withClient(two.adminUrl, (client) => client.query('SELECT 1'));
  await two.release();
  expect(isAlive(String(pid))).toBe(false);
});

test('opening a second time applies nothing and keeps the passwords', async () => {
  const folder = temporaryFolder();
  const first = await openDatabase(folder);
  onTestFinished(() => first.release());
  expect(first.applied.length).toBeGreaterThan(0);
  const second = await openDatabase(folder);
  onTestFinished(() => second.release());
  expect(second.applied).toEqual([]);
  expect(second.appUrl).toBe(first.appUrl);
});
