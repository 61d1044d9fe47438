/**
 * The folder that outlives the checkout: the database's files and the generated secrets. `git clean -fdx` does not reach it.
 */
import crypto from 'node:crypto';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { root, shortHash } from './project.mjs';
import { Refusal } from './refusal.ts';

/** Passwords of the database's roles and the key that signs session tokens; all made here, none typed by anybody. */
export type Secrets = {
  readonly superuser: string;
  readonly owner: string;
  readonly app: string;
  readonly session: string;
};

const names: readonly (keyof Secrets)[] = ['superuser', 'owner', 'app', 'session'];

/** CUEWRIGHT_DATA, else a folder named after the checkout in the place that the XDG rules give to an account's data. */
export function dataFolder(env: NodeJS.ProcessEnv = process.env): string {
  if (env.CUEWRIGHT_DATA) return path.resolve(env.CUEWRIGHT_DATA);
  const base = env.XDG_DATA_HOME || path.join(env.HOME || os.homedir(), '.local', 'share');
  return path.join(base, 'cuewright', shortHash(root));
}

/** The separate cluster of the unit tests: never the one that holds somebody's work. */
export const testDataFolder = (env: NodeJS.ProcessEnv = process.env): string =>
  env.CUEWRIGHT_TEST_DATA ? path.resolve(env.CUEWRIGHT_TEST_DATA) : `${dataFolder(env)}-test`;

/** Makes the folder if need be. Root's is open to passing through, because PostgreSQL runs as another account then. */
export function makeFolder(folder: string): void {
  const mode = process.getuid?.() === 0 ? 0o711 : 0o700;
  if (!fs.existsSync(folder)) fs.mkdirSync(folder, { recursive: true, mode });
}

/** Reads the secrets, or makes them: one file, mode 0600, that appears whole or not at all. */
export function readSecrets(folder: string): Secrets {
  const file = path.join(folder, 'secrets.json');
  const known = readFile(file);
  if (known) return known;
  if (fs.existsSync(path.join(folder, 'postgres', 'data', 'PG_VERSION'))) {
    throw new Refusal(
      `${folder} holds a database, but its secrets.json is missing or damaged. Put the file back from a backup, or move the folder away to begin with an empty database.`,
    );
  }
  const made = Object.fromEntries(names.map((name) => [name, crypto.randomBytes(32).toString('base64url')]));
  const draft = `${file}.${process.pid}`;
  fs.writeFileSync(draft, `${JSON.stringify(made, null, 2)}\n`, { mode: 0o600 });
  fs.renameSync(draft, file);
  return made as Secrets;
}

function readFile(file: string): Secrets | undefined {
  try {
    const value = JSON.parse(fs.readFileSync(file, 'utf8'));
    if (!names.every((name) => typeof value?.[name] === 'string' && value[name].length >= 32)) return undefined;
    fs.chmodSync(file, 0o600);
    return value;
  } catch {
    return undefined;
  }
}
