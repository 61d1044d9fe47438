import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { identify, isAlive, withLock } from '../../lib/boot/lock.ts';
import { ownNode } from '../../lib/boot/project.mjs';
import { startUntil, temporaryFolder } from '../kit/temporary.ts';

const deadPid = (): number => spawnSync(ownNode, ['--version']).pid;

test('a lock whose holder died is cleared, and that is said', async () => {
  const file = path.join(temporaryFolder(), 'lock');
  fs.writeFileSync(file, String(deadPid()));
  const said: string[] = [];
  const result = await withLock(
    file,
    (line) => said.push(line),
    async () => 'done',
  );
  expect(result).toBe('done');
  expect(said).toEqual(['Cleared the database lock of an earlier run that had died.']);
  expect(fs.existsSync(file)).toBe(false);
});

test('a number that another process has by now is not the holder', () => {
  const [pid, since] = identify(process.pid).split(' ');
  expect(isAlive(`${pid} ${since}`)).toBe(true);
  expect(isAlive(`${pid} ${Number(since) - 1}`)).toBe(false);
});

test('the lock is given back when the deed throws', async () => {
  const file = path.join(temporaryFolder(), 'lock');
  const failing = withLock(
    file,
    () => {},
    async () => {
      throw new Error('on purpose');
    },
  );
  await expect(failing).rejects.toThrow('on purpose');
  expect(fs.existsSync(file)).toBe(false);
});

test('a holder that is killed in the middle lets the next one in', async () => {
  const file = path.join(temporaryFolder(), 'lock');
  const holder = await startUntil(
    'held',
    `import { withLock } from './lib/boot/lock.ts';
     await withLock(${JSON.stringify(file)}, () => {}, () => { console.log('held'); return new Promise(() => setInterval(() => {}, 1000)); });`,
  );
  expect(isAlive(fs.readFileSync(file, 'utf8'))).toBe(true);
  await holder.kill();
  await expect(
    withLock(
      file,
      () => {},
      async () => 'in',
    ),
  ).resolves.toBe('in');
});

test('deeds of one process never overlap', async () => {
  const file = path.join(temporaryFolder(), 'lock');
  let inside = 0;
  let most = 0;
  const deed = async () => {
    inside += 1;
    most = Math.max(most, inside);
    await new Promise((resolve) => setImmediate(resolve));
    inside -= 1;
  };
  await Promise.all(Array.from({ length: 8 }, () => withLock(file, () => {}, deed)));
  expect(most).toBe(1);
});
