/** The real command as a child process, as a person or another program runs it. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Report } from '../../lib/cli/report.ts';
import { temporaryFolder } from '../kit/temporary.ts';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const COMMAND = path.join(ROOT, 'lib', 'cli', 'cuewright.mjs');

export type Ended = { readonly code: number | null; readonly out: string; readonly err: string };

export function cuewright(args: readonly string[], input: string | Uint8Array = '', cwd = ROOT): Ended {
  const done = spawnSync(process.execPath, [COMMAND, ...args], { cwd, input, encoding: 'utf8', maxBuffer: 64_000_000 });
  return { code: done.status, out: done.stdout, err: done.stderr };
}

export function reported(args: readonly string[], input: string | Uint8Array = '', cwd = ROOT): Report {
  const { code, out, err } = cuewright(['check', ...args, '--format', 'json'], input, cwd);
  if (err !== '') throw new Error(err);
  const report = JSON.parse(out) as Report;
  if (report.exit !== code) throw new Error(`the report says ${report.exit}, the command ended with ${code}`);
  return report;
}

/** A new folder with these files, gone after the test. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = temporaryFolder();
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
    writeFileSync(path.join(folder, name), content);
  }
  return folder;
}

/** Line of the first place where the words stand, from 1. */
export const lineOf = (text: string, words: string): number => text.slice(0, text.indexOf(words)).split('\n').length;

/** `text` with `from`, which must stand there, replaced once. */
export function changed(text: string, from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`"${from}" does not stand there`);
  return text.replace(from, to);
}
