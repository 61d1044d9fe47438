/**
 * Opens the database that this run works on, embedded or at DATABASE_URL: roles made, schema up to date. Gives the owner's
 * way in (for migrations and seeding) and the app's.
 */
import type pg from 'pg';
import { makeFolder, readSecrets } from './data-folder.ts';
import { openEmbedded } from './embedded-database.ts';
import { migrate } from './migrate.ts';
import { Refusal, sentenceFor } from './refusal.ts';
import { APP_ROLE, makeDatabase, makeRole, OWNER_ROLE, urlOf, withClient } from './roles.ts';

export type Database = {
  readonly ownerUrl: string;
  readonly appUrl: string;
  /** What the screen says about where the data is. */
  readonly place: string;
  readonly applied: readonly string[];
  release(): Promise<void>;
};

const NAME = 'cuewright';
const OLDEST = 150_000;

async function openOwn(folder: string, say: (line: string) => void): Promise<Omit<Database, 'applied'>> {
  const server = await openEmbedded(folder, { say });
  const { secrets, adminUrl } = server;
  await withClient(adminUrl, async (client) => {
    const roles = await client.query('SELECT 1 FROM pg_roles WHERE rolname IN ($1, $2)', [OWNER_ROLE, APP_ROLE]);
    if (roles.rowCount !== 2) {
      await makeRole(client, OWNER_ROLE, secrets.owner);
      await makeRole(client, APP_ROLE, secrets.app);
    }
    const found = await client.query('SELECT 1 FROM pg_database WHERE datname = $1', [NAME]);
    if (!found.rowCount) await makeDatabase(client, NAME);
  });
  return {
    ownerUrl: urlOf(adminUrl, { database: NAME, role: OWNER_ROLE, password: secrets.owner }),
    appUrl: urlOf(adminUrl, { database: NAME, role: APP_ROLE, password: secrets.app }),
    place: server.home,
    release: server.release,
  };
}

const reachable = async <T>(url: string, name: string, deed: (client: pg.Client) => Promise<T>): Promise<T> =>
  withClient(url, deed).catch((error: unknown) => {
    if (error instanceof Refusal) throw error;
    throw new Refusal(
      `The database at ${name} cannot be used: ${sentenceFor(error) || 'no answer'}. Check ${name}, then run the same command again.`,
    );
  });

/** The app's role on a server of the user's own: as given, else made with a generated password. */
async function appUrlOn(ownerUrl: string, given: string | undefined, folder: string): Promise<string> {
  const right = await reachable(ownerUrl, 'DATABASE_URL', async (client) => {
    const { rows } = await client.query(
      `SELECT current_setting('server_version_num')::int AS version, rolsuper OR rolcreaterole AS creates FROM pg_roles WHERE rolname = current_user`,
    );
    if (rows[0].version < OLDEST)
      throw new Refusal('DATABASE_URL names a PostgreSQL server older than version 15. Use version 15 or later.');
    if (given) return true;
    if (!rows[0].creates) return false;
    await makeRole(client, APP_ROLE, readSecrets(folder).app);
    const { rows: names } = await client.query('SELECT current_database() AS name');
    await client.query(`GRANT CONNECT ON DATABASE "${names[0].name}" TO ${APP_ROLE}`);
    return true;
  });
  if (!right) {
    throw new Refusal(
      `The role in DATABASE_URL may not create roles. Have an administrator create the role ${APP_ROLE} (LOGIN, not a superuser), and set CUEWRIGHT_APP_DATABASE_URL to its address.`,
    );
  }
  return given || urlOf(ownerUrl, { role: APP_ROLE, password: readSecrets(folder).app });
}

/** The second wall stands only if the app's role is neither the owner nor above row-level security. */
async function refuseStrongRole(appUrl: string, ownerUrl: string): Promise<void> {
  const owner = decodeURIComponent(new URL(ownerUrl).username);
  await reachable(appUrl, 'CUEWRIGHT_APP_DATABASE_URL', async (client) => {
    const { rows } = await client.query(
      `SELECT rolname AS name, rolsuper OR rolbypassrls OR pg_has_role(rolname, $1, 'MEMBER') AS strong FROM pg_roles WHERE rolname = current_user`,
      [owner],
    );
    if (rows[0].name !== APP_ROLE || rows[0].strong) {
      throw new Refusal(
        `The app must run as the role ${APP_ROLE}, which may be neither a superuser nor the owner (CUEWRIGHT_APP_DATABASE_URL logs in as ${rows[0].name}).`,
      );
    }
  });
}

/** Opens the database and migrates it. `folder` is the data folder; `say` hears of repairs. */
export async function openDatabase(folder: string, say: (line: string) => void = () => {}): Promise<Database> {
  const given = process.env.DATABASE_URL;
  if (!given) {
    const own = await openOwn(folder, say);
    return { ...own, applied: await migrateOrRelease(own) };
  }
  makeFolder(folder);
  const appUrl = await appUrlOn(given, process.env.CUEWRIGHT_APP_DATABASE_URL, folder);
  await refuseStrongRole(appUrl, given);
  const { host, pathname } = new URL(given);
  return {
    ownerUrl: given,
    appUrl,
    place: `${host}${pathname}`,
    applied: await migrate(given),
    release: async () => {},
  };
}

async function migrateOrRelease(own: Omit<Database, 'applied'>): Promise<string[]> {
  try {
    return await migrate(own.ownerUrl);
  } catch (error) {
    await own.release();
    throw error;
  }
}
