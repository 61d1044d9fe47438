import fs from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { migrate, readMigrations } from '../../lib/boot/migrate.ts';
import { withClient } from '../../lib/boot/roles.ts';
import { freshDatabase } from '../kit/database.ts';
import { temporaryFolder } from '../kit/temporary.ts';

function folderOf(migrations: Record<string, string>): string {
  const folder = temporaryFolder();
  for (const [name, sql] of Object.entries(migrations)) {
    fs.mkdirSync(path.join(folder, name));
    fs.writeFileSync(path.join(folder, name, 'migration.sql'), sql);
  }
  return folder;
}

async function withEmpty(deed: (ownerUrl: string) => Promise<void>): Promise<void> {
  const database = await freshDatabase(temporaryFolder());
  try {
    await deed(database.ownerUrl);
  } finally {
    await database.drop();
  }
}

const tables = (url: string) =>
  withClient(url, async (client) => {
    const { rows } = await client.query(
      `SELECT relname FROM pg_class WHERE relnamespace = 'public'::regnamespace AND relkind = 'r' ORDER BY 1`,
    );
    return rows.map((row) => row.relname).filter((name) => name !== '_prisma_migrations');
  });

test('the project’s migrations run on PostgreSQL 18 as owner, once', () =>
  withEmpty(async (ownerUrl) => {
    const names = readMigrations().map((migration) => migration.name);
    expect(names.length).toBeGreaterThan(0);
    expect(await migrate(ownerUrl)).toEqual(names);
    expect(await migrate(ownerUrl)).toEqual([]);
    expect((await tables(ownerUrl)).length).toBeGreaterThan(10);
  }));

test('two processes that migrate at once apply each migration once', () =>
  withEmpty(async (ownerUrl) => {
    const folder = folderOf({ '1_a': 'CREATE TABLE a (id int)', '2_b': 'CREATE TABLE b (id int)' });
    const applied = await Promise.all([migrate(ownerUrl, folder), migrate(ownerUrl, folder)]);
    expect(applied.flat().sort()).toEqual(['1_a', '2_b']);
  }));

test('a migration that fails leaves nothing behind, and runs when it is put right', () =>
  withEmpty(async (ownerUrl) => {
    const folder = folderOf({ '1_a': 'CREATE TABLE a (id int); SELECT no_such_function();' });
    await expect(migrate(ownerUrl, folder)).rejects.toThrow(/Migration 1_a failed: .*no_such_function/);
    expect(await tables(ownerUrl)).toEqual([]);
    fs.writeFileSync(path.join(folder, '1_a', 'migration.sql'), 'CREATE TABLE a (id int)');
    expect(await migrate(ownerUrl, folder)).toEqual(['1_a']);
  }));

test('a migration that was changed after it had been applied is refused', () =>
  withEmpty(async (ownerUrl) => {
    const folder = folderOf({ '1_a': 'CREATE TABLE a (id int)' });
    await migrate(ownerUrl, folder);
    fs.appendFileSync(path.join(folder, '1_a', 'migration.sql'), ' ');
    await expect(migrate(ownerUrl, folder)).rejects.toThrow(/was changed after it had been applied/);
  }));

test('a database from a newer version is refused', () =>
  withEmpty(async (ownerUrl) => {
    await migrate(ownerUrl, folderOf({ '1_a': 'CREATE TABLE a (id int)' }));
    await expect(migrate(ownerUrl, folderOf({}))).rejects.toThrow(/does not know\. Use a newer version/);
  }));
