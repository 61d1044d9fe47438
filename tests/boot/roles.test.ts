import { afterAll, beforeAll, expect, test } from 'vitest';
import { APP_ROLE, OWNER_ROLE, withClient } from '../../lib/boot/roles.ts';
import { freshDatabase, type TestDatabase } from '../kit/database.ts';

let database: TestDatabase;
beforeAll(async () => {
  database = await freshDatabase();
});
afterAll(() => database.drop());

test('neither role has a special right, and the app’s owns nothing', async () => {
  await withClient(database.adminUrl, async (client) => {
    const { rows } = await client.query(
      `SELECT rolname FROM pg_roles WHERE rolname IN ($1, $2)
         AND NOT (rolsuper OR rolbypassrls OR rolcreaterole OR rolcreatedb OR rolreplication) ORDER BY 1`,
      [APP_ROLE, OWNER_ROLE],
    );
    expect(rows.map((row) => row.rolname)).toEqual([APP_ROLE, OWNER_ROLE]);
    const owned = await client.query(`SELECT relname FROM pg_class WHERE relowner = '${APP_ROLE}'::regrole`);
    expect(owned.rows).toEqual([]);
    const member = await client.query('SELECT pg_has_role($1, $2, $3) AS may', [APP_ROLE, OWNER_ROLE, 'MEMBER']);
    expect(member.rows).toEqual([{ may: false }]);
  });
});

const refused: readonly string[] = [
  'CREATE TABLE public.mine (id int)',
  'CREATE TEMP TABLE operator (id int)',
  'CREATE SCHEMA mine',
  'ALTER TABLE operator DISABLE ROW LEVEL SECURITY',
  'ALTER TABLE operator ADD COLUMN mine int',
  'DROP TABLE operator CASCADE',
  'TRUNCATE operator CASCADE',
  'CREATE FUNCTION mine() RETURNS int LANGUAGE sql AS $$ SELECT 1 $$',
  `SET ROLE ${OWNER_ROLE}`,
  `SET SESSION AUTHORIZATION ${OWNER_ROLE}`,
  'SET session_replication_role = replica',
  `ALTER ROLE ${APP_ROLE} SUPERUSER`,
  `ALTER ROLE ${OWNER_ROLE} PASSWORD 'mine'`,
  'CREATE DATABASE mine',
  'DELETE FROM _prisma_migrations',
];

test.each(refused)('the app’s role is refused: %s', async (statement) => {
  await withClient(database.appUrl, async (client) => {
    await expect(client.query(statement)).rejects.toMatchObject({ code: '42501' });
  });
});

test('a copy of a database is as closed as the first', async () => {
  const copy = await freshDatabase();
  try {
    await withClient(copy.appUrl, async (client) => {
      await expect(client.query('CREATE TEMP TABLE mine (id int)')).rejects.toMatchObject({ code: '42501' });
    });
  } finally {
    await copy.drop();
  }
});
