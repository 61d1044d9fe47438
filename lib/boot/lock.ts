/**
 * A lock between processes of one machine, held by a file. A holder that died is noticed, said aloud and cleared.
 */
import fs from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import { Refusal } from './refusal.ts';

const PATIENCE_MS = 120_000;
const STEAL_MS = 10_000;

/** What the system says about a process after its name: its state first, when it began in the twentieth place. */
function statusOf(pid: number): string[] | undefined {
  try {
    const stat = fs.readFileSync(`/proc/${pid}/stat`, 'utf8');
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  } catch {
    return undefined;
  }
}

/** A process as this machine knows it: its number and, where that can be had, when it began; numbers are used again. */
export function identify(pid: number): string {
  const status = statusOf(pid);
  return status ? `${pid} ${status[19]}` : String(pid);
}

/** Whether the process that `identity` was taken from is still running; one that only waits to be buried is not. */
export function isAlive(identity: string): boolean {
  const pid = Number(identity.split(' ')[0]);
  if (!Number.isInteger(pid) || pid <= 0) return false;
  try {
    process.kill(pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EPERM') return false;
  }
  const status = statusOf(pid);
  if (status?.[0] === 'Z' || status?.[0] === 'X') return false;
  return !identity.includes(' ') || identify(pid) === identity;
}

const read = (file: string): string | undefined => {
  try {
    return fs.readFileSync(file, 'utf8');
  } catch {
    return undefined;
  }
};

function take(file: string): boolean {
  // Written aside and linked into place: nobody ever sees a lock without its holder's name.
  const draft = `${file}.${process.pid}`;
  fs.writeFileSync(draft, identify(process.pid));
  try {
    fs.linkSync(draft, file);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    return false;
  } finally {
    fs.rmSync(draft, { force: true });
  }
}

/** Only the holder of a second file may clear a dead lock: two that both saw it dead would clear each other's new one. */
function clearIfDead(file: string): boolean {
  const stealing = `${file}.clearing`;
  const age = Date.now() - (fs.statSync(stealing, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
  if (age > STEAL_MS) fs.rmSync(stealing, { force: true });
  try {
    fs.writeFileSync(stealing, '', { flag: 'wx' });
  } catch {
    return false;
  }
  try {
    const holder = read(file);
    if (holder === undefined || isAlive(holder)) return false;
    fs.rmSync(file, { force: true });
    return true;
  } finally {
    fs.rmSync(stealing, { force: true });
  }
}

/** Runs `deed` while no other process holds `file`. `say` hears of a dead holder that was cleared. */
export async function withLock<T>(file: string, say: (line: string) => void, deed: () => Promise<T>): Promise<T> {
  const until = Date.now() + PATIENCE_MS;
  while (!take(file)) {
    const holder = read(file);
    if (holder !== undefined && !isAlive(holder)) {
      if (clearIfDead(file)) say('Cleared the database lock of an earlier run that had died.');
    } else if (Date.now() > until) {
      throw new Refusal(
        `The database lock ${file} is held by process ${holder?.split(' ')[0]}, which does not let go. Stop that process, then run the same command again.`,
      );
    } else {
      await pause(50);
    }
  }
  try {
    return await deed();
  } finally {
    fs.rmSync(file, { force: true });
  }
}
