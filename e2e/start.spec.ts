import fs from 'node:fs';
import path from 'node:path';
import { expect, test } from '@playwright/test';
import { dataFolder } from '../lib/boot/data-folder.ts';
import { isAlive } from '../lib/boot/lock.ts';
import { type App, freePort, makeFolder, removeFolder, startApp } from './kit/app.ts';

const READY_MS = 5000;
// The other specs share the machine: the quickest of these counts.
const STARTS = 3;
const databasePid = (folder: string) =>
  fs.readFileSync(path.join(folder, 'postgres', 'data', 'postmaster.pid'), 'utf8').split('\n')[0] ?? '';

test('starts, survives kill -9 of itself and of its database, stops clean, and is quick the second time', async ({
  request,
}) => {
  test.setTimeout(600_000);
  const folder = makeFolder();
  const port = await freePort();
  const started: App[] = [];
  const start = async (extra = {}) => {
    const app = await startApp(folder, port, extra);
    started.push(app);
    return app;
  };
  try {
    const first = await start({ HOST: '0.0.0.0' });
    expect(first.said()).toContain('Putting the demo world in');
    expect(first.said()).toContain(`data and secrets: ${folder}`);
    expect(first.said()).toContain('HOST=0.0.0.0 is not used: anybody could sign in with the demo passwords.');
    expect(first.said()).toContain('Listening on this machine only');
    expect(first.said()).toMatch(/\n {2}reth {2,}\S+ {2}Oona Reth, Fleet technical pilot\n/);
    expect((await request.get(`${first.url}/sign-in`)).status()).toBe(200);
    expect(fs.statSync(path.join(folder, 'secrets.json')).mode & 0o777).toBe(0o600);
    await first.kill();
    const database = databasePid(folder);
    expect(isAlive(database)).toBe(true);
    process.kill(Number(database), 'SIGKILL');

    const second = await start();
    expect(second.said()).not.toContain('Putting the demo world in');
    expect((await request.get(`${second.url}/healthz`)).ok()).toBe(true);
    const running = databasePid(folder);
    expect(await second.stop()).toBe(0);
    expect(isAlive(running)).toBe(false);

    let quickest = Number.POSITIVE_INFINITY;
    for (let turn = 0; turn < STARTS; turn++) {
      const since = Date.now();
      const third = await start();
      quickest = Math.min(quickest, Date.now() - since);
      await third.stop();
    }
    expect(quickest).toBeLessThan(READY_MS);
  } finally {
    for (const app of started) await app.stop(); // one that has ended already stays ended
    removeFolder(folder);
  }
});

test('a page says where it may be embedded and what it may load: nowhere, and nothing from another host', async ({
  request,
}) => {
  const { 'content-security-policy': policy, ...headers } = (await request.get('/sign-in')).headers();
  expect(policy).toContain("frame-ancestors 'none'");
  expect(policy).not.toMatch(/https?:|\*/);
  expect(headers['x-content-type-options']).toBe('nosniff');
  expect(headers['x-powered-by']).toBeUndefined();
});

test('a socket to anywhere but the draft server is closed', async ({ baseURL }) => {
  const socket = new WebSocket(`${baseURL?.replace('http', 'ws')}/elsewhere`);
  const outcome = await new Promise((resolve) => {
    socket.addEventListener('open', () => resolve('open'));
    socket.addEventListener('error', () => resolve('refused'));
  });
  expect(outcome).toBe('refused');
});

test('the run has a data folder of its own', () => {
  expect(process.env.CUEWRIGHT_E2E_DATA).toBeTruthy();
  expect(process.env.CUEWRIGHT_E2E_DATA).not.toBe(
    dataFolder({ HOME: process.env.HOME } as unknown as NodeJS.ProcessEnv),
  );
});
