import { expect, onTestFinished, test, vi } from 'vitest';
import { type Database, openDatabase } from '../../lib/boot/database.ts';
import { readMigrations } from '../../lib/boot/migrate.ts';
import { APP_ROLE, urlOf, withClient } from '../../lib/boot/roles.ts';
import { fifteen, startFifteen } from '../kit/fifteen.ts';
import { temporaryFolder } from '../kit/temporary.ts';

if (!fifteen)
  console.warn(
    'SKIPPED: migrations on PostgreSQL 15, because this machine has none (apt-get install -y postgresql-15)',
  );
const on15 = test.runIf(fifteen);

async function ownDatabase(adminUrl: string, attributes: string): Promise<string> {
  await withClient(adminUrl, async (client) => {
    await client.query(`CREATE ROLE flight_office LOGIN ${attributes}`);
    await client.query('CREATE DATABASE manuals OWNER flight_office');
  });
  return urlOf(adminUrl, { role: 'flight_office', database: 'manuals' });
}

function openAt(ownerUrl: string, appUrl = ''): Promise<Database> {
  vi.stubEnv('DATABASE_URL', ownerUrl);
  vi.stubEnv('CUEWRIGHT_APP_DATABASE_URL', appUrl);
  onTestFinished(() => {
    vi.unstubAllEnvs();
  });
  return openDatabase(temporaryFolder());
}

on15('the migrations run on PostgreSQL 15, and the app’s role is made there', async () => {
  const ownerUrl = await ownDatabase(await startFifteen(fifteen!), 'CREATEROLE');
  const opened = await openAt(ownerUrl);
  expect(opened.applied).toEqual(readMigrations().map((migration) => migration.name));
  await withClient(opened.appUrl, async (client) => {
    const { rows } = await client.query(
      `SELECT current_user AS name, current_setting('server_version_num')::int / 10000 AS version`,
    );
    expect(rows).toEqual([{ name: APP_ROLE, version: 15 }]);
    await expect(client.query('CREATE TABLE mine (id int)')).rejects.toMatchObject({ code: '42501' });
    await expect(client.query('ALTER TABLE operator DISABLE ROW LEVEL SECURITY')).rejects.toMatchObject({
      code: '42501',
    });
  });
});

on15(
  'an owner that may not make roles gets the sentence, and the role that an administrator made is used',
  async () => {
    const adminUrl = await startFifteen(fifteen!);
    const ownerUrl = await ownDatabase(adminUrl, '');
    await expect(openAt(ownerUrl)).rejects.toThrow(/Have an administrator create the role cuewright_app/);
    await withClient(adminUrl, (client) => client.query(`CREATE ROLE ${APP_ROLE} LOGIN`));
    const appUrl = urlOf(ownerUrl, { role: APP_ROLE });
    expect((await openAt(ownerUrl, appUrl)).appUrl).toBe(appUrl);
  },
);

on15('an app role that is the owner, or could become it, is refused', async () => {
  const adminUrl = await startFifteen(fifteen!);
  const ownerUrl = await ownDatabase(adminUrl, '');
  await expect(openAt(ownerUrl, ownerUrl)).rejects.toThrow(/neither a superuser nor the owner/);
  await withClient(adminUrl, (client) => client.query(`CREATE ROLE ${APP_ROLE} LOGIN IN ROLE flight_office`));
  await expect(openAt(ownerUrl, urlOf(ownerUrl, { role: APP_ROLE }))).rejects.toThrow(
    /neither a superuser nor the owner/,
  );
});

test('a server that does not answer gets a sentence that names DATABASE_URL', async () => {
  await expect(openAt('postgresql://somebody@127.0.0.1:1/nothing')).rejects.toThrow(
    /The database at DATABASE_URL cannot be used/,
  );
});
