import fs from 'node:fs';
import net, { type AddressInfo } from 'node:net';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { whatIsMissing } from '../../lib/boot/install.mjs';
import { checkPort, portFrom } from '../../lib/boot/port.ts';
import { sentenceFor } from '../../lib/boot/refusal.ts';
import { properAddress } from '../../lib/boot/serve.ts';
import { runToEnd, temporaryFolder } from '../kit/temporary.ts';

async function takenPort(): Promise<number> {
  const server = net.createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  onTestFinished(() => void server.close());
  return (server.address() as AddressInfo).port;
}

test('a taken port gets a sentence that names another, before anything is made', async () => {
  const port = await takenPort();
  const folder = temporaryFolder();
  const { code, said } = runToEnd(['lib/boot/up.ts'], { PORT: String(port), CUEWRIGHT_DATA: folder });
  expect(said).toContain(
    `Port ${port} is taken by another program. Stop that program, or use another port: PORT=${port + 1} npm start`,
  );
  expect(code).toBe(1);
  expect(fs.readdirSync(folder)).toEqual([]);
});

test('a free port passes, and an address of another machine gets a sentence', async () => {
  const probe = await takenPort();
  await expect(checkPort('127.0.0.1', probe)).rejects.toThrow(/is taken/);
  await expect(checkPort('192.0.2.1', 3000)).rejects.toThrow(/no address 192\.0\.2\.1/);
});

test.each(['0', '65536', 'http', '30.5', '-1'])('PORT=%s is refused', (text) => {
  expect(() => portFrom(text)).toThrow(/is not a port/);
});

test('PORT may be left out', () => {
  expect([portFrom(undefined), portFrom(''), portFrom('8080')]).toEqual([3000, 3000, 8080]);
});

test('an old Node gets a sentence', () => {
  const old = 'data:text/javascript,Object.defineProperty(process.versions,"node",{value:"18.20.4"})';
  const { code, said } = runToEnd(['--import', old, 'lib/boot/start.mjs']);
  expect(said).toMatch(/This is Node 18\.20\.4; Cuewright needs Node 20 or later .* run the same command again/);
  expect(code).toBe(1);
});

test.each([
  [
    { code: 'ENOSPC', message: 'ENOSPC: no space left on device, write' },
    /The disk is full .* run the same command again/,
  ],
  [{ code: '53100', message: 'could not extend file' }, /The disk is full/],
  [{ message: 'initdb: could not create: No space left on device' }, /The disk is full/],
  [{ code: 'EACCES', message: 'permission denied, mkdir /x' }, /may not write .* CUEWRIGHT_DATA/],
])('%o has a sentence', (fields, sentence) => {
  expect(sentenceFor(Object.assign(new Error(fields.message), fields))).toMatch(sentence);
});

test('a half-made or outdated install is noticed', () => {
  const folder = temporaryFolder();
  const write = (place: string, value: unknown) => {
    fs.mkdirSync(path.dirname(path.join(folder, place)), { recursive: true });
    fs.writeFileSync(path.join(folder, place), JSON.stringify(value));
  };
  const packages = (version: string) => ({
    packages: { 'node_modules/a': { version }, 'node_modules/b': { version: '1', optional: true } },
  });
  write('package-lock.json', packages('1.0.0'));
  expect(whatIsMissing(folder)).toMatch(/not installed yet/);
  fs.mkdirSync(path.join(folder, 'node_modules'));
  expect(whatIsMissing(folder)).toMatch(/broken off/);
  write('node_modules/.package-lock.json', { packages: { 'node_modules/a': { version: '0.9.0' } } });
  expect(whatIsMissing(folder)).toMatch(/has changed/);
  write('node_modules/.package-lock.json', { packages: { 'node_modules/a': { version: '1.0.0' } } });
  expect(whatIsMissing(folder)).toMatch(/node_modules\/a has gone/);
  write('node_modules/a/package.json', {});
  expect(whatIsMissing(folder)).toBeUndefined();
});

test('one machine has many names, but cookies hold for one: the others lead there', () => {
  const asked = (host: string, url = '/desk?x=1', method = 'GET') => ({ headers: { host }, url, method });
  const home = 'http://localhost:3000';
  expect(properAddress(asked('127.0.0.1:3000'), home)).toBe('http://localhost:3000/desk?x=1');
  expect(properAddress(asked('localhost:3000'), home)).toBeUndefined();
  expect(properAddress(asked('127.0.0.1:3000', '/x', 'POST'), home)).toBeUndefined();
  expect(properAddress(asked('127.0.0.1:4000'), home)).toBeUndefined();
  expect(properAddress(asked('manuals.example'), home)).toBeUndefined();
  expect(properAddress(asked('127.0.0.1:3000', '//other.example/x'), home)).toMatch(/^http:\/\/localhost:3000\//);
  expect(properAddress(asked('127.0.0.1:3000'), 'https://manuals.example')).toBeUndefined();
});
