/** Folders and programs that go away with the test that asked for them. */
import { spawn, spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';
import { ownEnvironment, ownNode, root } from '../../lib/boot/project.mjs';

/** A new folder that other accounts may pass through, because root's database runs as one of them. */
export function temporaryFolder(): string {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'cuewright-'));
  fs.chmodSync(folder, 0o711);
  onTestFinished(() => fs.rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export type Said = { readonly code: number | null; readonly said: string };

/** Runs a file of the checkout with the project's Node until it ends. */
export function runToEnd(args: readonly string[], extra: Record<string, string> = {}): Said {
  const env = ownEnvironment({ DATABASE_URL: '', ...extra });
  const done = spawnSync(ownNode, [...args], { cwd: root, env, encoding: 'utf8' });
  return { code: done.status, said: done.stdout + done.stderr };
}

/** Starts a program that says a line when it is ready, and waits for that line. It is killed when the test ends. */
export async function startUntil(line: string, source: string): Promise<{ pid: number; kill(): Promise<void> }> {
  const child = spawn(ownNode, ['--input-type=module-typescript', '-e', source], { cwd: root, env: ownEnvironment() });
  const ended = new Promise<void>((resolve) => child.on('exit', () => resolve()));
  const kill = async () => {
    child.kill('SIGKILL');
    await ended;
  };
  onTestFinished(kill);
  let said = '';
  child.stderr.on('data', (chunk) => {
    said += chunk;
  });
  await new Promise<void>((resolve, reject) => {
    child.stdout.on('data', (chunk) => {
      said += chunk;
      if (said.includes(line)) resolve();
    });
    child.on('exit', () => reject(new Error(`ended before "${line}":\n${said}`)));
  });
  return { pid: child.pid!, kill };
}
