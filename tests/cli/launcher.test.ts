import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { seedText } from '../kit/seed.ts';
import { changed, cuewright, folderWith, ROOT } from './command.ts';

const COMMAND = path.join(ROOT, 'lib', 'cli', 'cuewright.mjs');
/** Makes the Node that runs it say it is older than it is. */
const OLDER = `data:text/javascript,Object.defineProperty(process,"versions",{value:{...process.versions,node:"20.1.0"}})`;

const asOlder = (args: readonly string[], input = '') =>
  spawnSync(process.execPath, ['--import', OLDER, COMMAND, ...args], { cwd: ROOT, input, encoding: 'utf8' });

test('an older Node hands over: the same output, input and exit', () => {
  const stop = changed(
    seedText('procedures/engine-out-take-off.yaml'),
    'cue: speed >= VMM F12 and',
    'cue: speed >= 90 kt and',
  );
  const [older, own] = [asOlder(['check', '-'], stop), cuewright(['check', '-'], stop)];
  expect([older.status, older.stdout, older.stderr]).toEqual([own.code, own.out, own.err]);
  expect(older.status).toBe(1);
  expect(asOlder(['check', 'missing.yaml']).status).toBe(2);
});

test('without its packages it says what to run', () => {
  const folder = folderWith({ 'lib/cli/cuewright.mjs': readFileSync(COMMAND) });
  const bare = spawnSync(process.execPath, [path.join(folder, 'lib/cli/cuewright.mjs'), 'explain'], {
    encoding: 'utf8',
  });
  expect([bare.status, bare.stdout]).toEqual([2, '']);
  expect(bare.stderr).toContain('Run "npm ci" in');
});

test('package.json names the command, and a shell may run it', () => {
  const { bin } = JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8')) as { bin: { cuewright: string } };
  const done = spawnSync(path.join(ROOT, bin.cuewright), ['help'], { encoding: 'utf8' });
  expect([done.status, done.stdout]).toEqual([0, expect.stringContaining('cuewright check FILES')]);
});
