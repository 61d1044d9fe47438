// Bytes from a file or from standard input, as text; never more of them than a file of ours can have.
import { createReadStream } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { err, ok, type Result } from '../base/result.ts';
import type { FileProblem } from '../file/problem.ts';

/** A file, or what was to be one, and what keeps it from being read. */
export type Unreadable = { readonly file: string; readonly problems: readonly FileProblem[] };

export const STDIN = '-';
/** What a file is called in sentences. */
export const nameOf = (file: string): string => (file === STDIN ? 'standard input' : file);

/** The largest file is 2 million characters, which can take three bytes each. What is larger is not taken into memory. */
const MOST_BYTES = 6_000_000;
const OURS = /\.(ya?ml|json)$/i;

const SAID: Readonly<Record<string, string>> = {
  ENOENT: 'There is no such file.',
  ENOTDIR: 'There is no such file.',
  EACCES: 'You may not read this file.',
  EPERM: 'You may not read this file.',
  EISDIR: 'This is a folder; a file is expected.',
  ENAMETOOLONG: 'No file has a name as long as this.',
};

/** A problem of the file itself, which has no line of its own. */
export const wholeFile = (message: string, expected: readonly string[] = [], fix?: string): FileProblem => ({
  ...{ line: 1, column: 1, path: '', message, expected },
  ...(fix === undefined ? {} : { fix }),
});

/** The file as text. Bytes that are not UTF-8 are told with the place of the first of them. */
export async function readText(file: string): Promise<Result<string, readonly FileProblem[]>> {
  const parts: Buffer[] = [];
  let size = 0;
  try {
    for await (const part of file === STDIN ? process.stdin : createReadStream(file, { end: MOST_BYTES })) {
      parts.push(part as Buffer);
      size += (part as Buffer).length;
      if (size > MOST_BYTES) break;
    }
  } catch (error) {
    return err([wholeFile(sayError(error))]);
  }
  if (size > MOST_BYTES) {
    return err([
      wholeFile(`${nameOf(file)} has more than ${MOST_BYTES / 1_000_000} MB.`, ['at most 2 million characters']),
    ]);
  }
  return decoded(Buffer.concat(parts), nameOf(file));
}

function decoded(bytes: Buffer, name: string): Result<string, readonly FileProblem[]> {
  try {
    return ok(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes));
  } catch {
    const before = bytes.toString('utf8').split('\uFFFD', 1)[0]!.split('\n');
    const place = { line: before.length, column: before.at(-1)!.length + 1 };
    return err([
      { ...wholeFile(`${name} is not text from here on.`, ['text in UTF-8'], 'Save it as UTF-8.'), ...place },
    ]);
  }
}

/** A folder stands for the .yaml, .yml and .json files in it, in order of their names; not for what lies deeper. */
export async function filesOf(named: string): Promise<Result<readonly string[], Unreadable>> {
  if (named === STDIN) return ok([named]);
  const refuse = (message: string) => err({ file: named, problems: [wholeFile(message)] });
  try {
    if (!(await stat(named)).isDirectory()) return ok([named]);
    const inside = (await readdir(named)).filter((entry) => OURS.test(entry)).sort();
    if (inside.length === 0) return refuse('This folder holds no .yaml, .yml or .json file.');
    return ok(inside.map((entry) => path.join(named, entry)));
  } catch (error) {
    return refuse(sayError(error));
  }
}

function sayError(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  return SAID[code ?? ''] ?? `It can't be read: ${message}.`;
}
