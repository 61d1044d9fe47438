/**
 * A fresh, migrated database for a test file, copied from a template that is made once for each set of migrations. The tests
 * have a cluster of their own; CUEWRIGHT_TEST_DATABASE_URL (a superuser's) names another server.
 */
import crypto from 'node:crypto';
import { testDataFolder } from '../../lib/boot/data-folder.ts';
import { openEmbedded } from '../../lib/boot/embedded-database.ts';
import { migrate, migrationsFolder, readMigrations } from '../../lib/boot/migrate.ts';
import { APP_ROLE, makeDatabase, makeRole, OWNER_ROLE, urlOf, withClient } from '../../lib/boot/roles.ts';

export type TestDatabase = {
  /** The owner's way in: migrations, seeding, looking behind the app's back. */
  readonly ownerUrl: string;
  /** The app's way in, as the server uses it. */
  readonly appUrl: string;
  /** The superuser's, for what only a server's administrator can do. */
  readonly adminUrl: string;
  /** Drops the database; call it in `afterAll`. */
  drop(): Promise<void>;
};

const LOCK_KEY = 7_270_101;
const PASSWORD = 'only-for-tests-on-a-private-socket';

/** Makes a database with the schema of `folder` (the project's own migrations unless told otherwise). */
export async function freshDatabase(folder = migrationsFolder): Promise<TestDatabase> {
  const own = process.env.CUEWRIGHT_TEST_DATABASE_URL
    ? { adminUrl: process.env.CUEWRIGHT_TEST_DATABASE_URL, release: async () => {} }
    : // Nothing in the tests' cluster is worth keeping, so it need not wait for the disk.
      await openEmbedded(testDataFolder(), {
        settings: { fsync: 'off', synchronous_commit: 'off', full_page_writes: 'off' },
      });
  const { adminUrl } = own;
  const checksums = readMigrations(folder).map(({ name, checksum }) => [name, checksum]);
  const digest = crypto.createHash('sha256').update(JSON.stringify(checksums)).digest('hex').slice(0, 16);
  const template = `template_${digest}`;
  const name = `test_${crypto.randomUUID().replaceAll('-', '')}`;
  const asOwner = (database: string) => urlOf(adminUrl, { database, role: OWNER_ROLE, password: PASSWORD });
  await withClient(adminUrl, async (client) => {
    await client.query('SELECT pg_advisory_lock($1)', [LOCK_KEY]);
    const made = await client.query('SELECT 1 FROM pg_database WHERE datname = $1 AND datistemplate', [template]);
    if (!made.rowCount) {
      await makeRole(client, OWNER_ROLE, PASSWORD);
      await makeRole(client, APP_ROLE, PASSWORD);
      await client.query(`DROP DATABASE IF EXISTS ${template}`);
      await makeDatabase(client, template);
      await migrate(asOwner(template), folder);
      await client.query(`ALTER DATABASE ${template} IS_TEMPLATE true`);
    }
    await makeDatabase(client, name, template);
  });
  return {
    ownerUrl: asOwner(name),
    appUrl: urlOf(adminUrl, { database: name, role: APP_ROLE, password: PASSWORD }),
    adminUrl: urlOf(adminUrl, { database: name }),
    async drop() {
      await withClient(adminUrl, (client) => client.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`));
      await own.release();
    },
  };
}
