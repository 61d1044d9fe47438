import fs from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { dataFolder, makeFolder, readSecrets, testDataFolder } from '../../lib/boot/data-folder.ts';
import { root } from '../../lib/boot/project.mjs';
import { Refusal } from '../../lib/boot/refusal.ts';
import { temporaryFolder } from '../kit/temporary.ts';

const env = (values: Record<string, string | undefined>) => values as unknown as NodeJS.ProcessEnv;

test('the data folder lies outside the checkout, so that cleaning the checkout does not reach it', () => {
  for (const values of [{ HOME: '/home/somebody' }, { HOME: '/root', XDG_DATA_HOME: '/srv/data' }]) {
    for (const folder of [dataFolder(env(values)), testDataFolder(env(values))]) {
      expect(path.relative(root, folder).startsWith('..')).toBe(true);
    }
  }
});

test('CUEWRIGHT_DATA comes before XDG_DATA_HOME, which comes before the home folder', () => {
  const all = { CUEWRIGHT_DATA: '/a', XDG_DATA_HOME: '/b', HOME: '/c' };
  expect(dataFolder(env(all))).toBe('/a');
  expect(dataFolder(env({ ...all, CUEWRIGHT_DATA: '' }))).toMatch(/^\/b\/cuewright\/[0-9a-f]{10}$/);
  expect(dataFolder(env({ HOME: '/c' }))).toMatch(/^\/c\/\.local\/share\/cuewright\/[0-9a-f]{10}$/);
});

test('secrets are made once, differ from each other, and only their owner may read them', () => {
  const folder = temporaryFolder();
  const made = readSecrets(folder);
  expect(new Set(Object.values(made)).size).toBe(4);
  for (const secret of Object.values(made)) expect(secret.length).toBeGreaterThanOrEqual(43);
  expect(fs.statSync(path.join(folder, 'secrets.json')).mode & 0o777).toBe(0o600);
  expect(readSecrets(folder)).toEqual(made);
});

test('a secrets file that others could read is closed again', () => {
  const folder = temporaryFolder();
  readSecrets(folder);
  fs.chmodSync(path.join(folder, 'secrets.json'), 0o644);
  readSecrets(folder);
  expect(fs.statSync(path.join(folder, 'secrets.json')).mode & 0o777).toBe(0o600);
});

test('a database whose secrets are lost is refused with a sentence, not opened with new ones', () => {
  const folder = temporaryFolder();
  fs.mkdirSync(path.join(folder, 'postgres', 'data'), { recursive: true });
  fs.writeFileSync(path.join(folder, 'postgres', 'data', 'PG_VERSION'), '18');
  expect(() => readSecrets(folder)).toThrow(Refusal);
  fs.writeFileSync(path.join(folder, 'secrets.json'), '{"owner":');
  expect(() => readSecrets(folder)).toThrow(/Put the file back from a backup/);
});

test('a new folder is closed to other accounts, but for the passage that root’s database needs', () => {
  const folder = path.join(temporaryFolder(), 'a', 'b');
  makeFolder(folder);
  expect(fs.statSync(folder).mode & 0o777).toBe(process.getuid?.() === 0 ? 0o711 : 0o700);
});
