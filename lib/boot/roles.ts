/**
 * The two roles and the databases they meet in. The owner migrates; the app's role can neither own nor change a table's
 * shape, so that the record's insert-only rights hold against the app itself.
 */
import pg from 'pg';

export const OWNER_ROLE = 'cuewright_owner';
export const APP_ROLE = 'cuewright_app';

const quote = pg.escapeIdentifier;
const ATTRIBUTES = 'LOGIN NOSUPERUSER NOBYPASSRLS NOCREATEDB NOCREATEROLE NOREPLICATION';

/** Makes `role` without any special right, or takes such rights away, and sets its password. */
export async function makeRole(client: pg.Client, role: string, password: string): Promise<void> {
  const known = await client.query('SELECT 1 FROM pg_roles WHERE rolname = $1', [role]);
  const verb = known.rowCount ? 'ALTER' : 'CREATE';
  await client.query(`${verb} ROLE ${quote(role)} ${ATTRIBUTES} PASSWORD ${pg.escapeLiteral(password)}`);
}

/** Makes `database`, empty or as a copy of `template`, owned by the owner's role and closed to all but the two. */
export async function makeDatabase(client: pg.Client, database: string, template = 'template0'): Promise<void> {
  const name = quote(database);
  await client.query(`CREATE DATABASE ${name} TEMPLATE ${quote(template)} OWNER ${quote(OWNER_ROLE)}`);
  await client.query(`REVOKE ALL ON DATABASE ${name} FROM PUBLIC`);
  await client.query(`GRANT CONNECT ON DATABASE ${name} TO ${quote(APP_ROLE)}`);
}

/** Runs `deed` with a connection that is closed afterwards. */
export async function withClient<T>(url: string, deed: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 10_000 });
  client.on('error', () => {});
  await client.connect();
  try {
    return await deed(client);
  } finally {
    await client.end();
  }
}

/** The same server, role and password, another database. */
export function urlOf(url: string, change: { database?: string; role?: string; password?: string }): string {
  const made = new URL(url);
  if (change.database !== undefined) made.pathname = `/${encodeURIComponent(change.database)}`;
  if (change.role !== undefined) made.username = encodeURIComponent(change.role);
  if (change.password !== undefined) made.password = encodeURIComponent(change.password);
  return made.toString();
}
