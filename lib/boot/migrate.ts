/**
 * Applies prisma/migrations and keeps Prisma's own table, lock and checksums, so that Prisma's commands agree with it. A
 * migration and its record are one transaction: a kill in between leaves nothing to put right by hand.
 */
import crypto from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import type pg from 'pg';
import { root } from './project.mjs';
import { Refusal } from './refusal.ts';
import { withClient } from './roles.ts';

export type Migration = { readonly name: string; readonly sql: string; readonly checksum: string };

const TABLE = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
  "id" VARCHAR(36) PRIMARY KEY NOT NULL, "checksum" VARCHAR(64) NOT NULL, "finished_at" TIMESTAMPTZ,
  "migration_name" VARCHAR(255) NOT NULL, "logs" TEXT, "rolled_back_at" TIMESTAMPTZ,
  "started_at" TIMESTAMPTZ NOT NULL DEFAULT now(), "applied_steps_count" INTEGER NOT NULL DEFAULT 0)`;
const INSERT = `INSERT INTO "_prisma_migrations" (id, checksum, migration_name, started_at, finished_at, applied_steps_count)
  VALUES ($1, $2, $3, $4, clock_timestamp(), 1)`;
// The key that Prisma's own engine takes, so the two never migrate at once.
const LOCK_KEY = 72707369;

export const migrationsFolder = path.join(root, 'prisma', 'migrations');

/** The migrations of the checkout in their order. */
export function readMigrations(folder = migrationsFolder): Migration[] {
  if (!fs.existsSync(folder)) return [];
  const names = fs.readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  return names
    .map((entry) => entry.name)
    .sort()
    .map((name) => {
      const sql = fs.readFileSync(path.join(folder, name, 'migration.sql'), 'utf8');
      return { name, sql, checksum: crypto.createHash('sha256').update(sql).digest('hex') };
    });
}

async function pending(client: pg.Client, migrations: readonly Migration[]): Promise<Migration[]> {
  const { rows } = await client.query(
    'SELECT migration_name AS name, checksum, finished_at FROM "_prisma_migrations" WHERE rolled_back_at IS NULL',
  );
  for (const row of rows) {
    const known = migrations.find((migration) => migration.name === row.name);
    if (!row.finished_at)
      throw new Refusal(`Migration ${row.name} failed earlier. Run "prisma migrate resolve" as the owner.`);
    if (!known)
      throw new Refusal(
        `The database has migration ${row.name}, which this version does not know. Use a newer version.`,
      );
    if (known.checksum !== row.checksum) {
      throw new Refusal(`Migration ${row.name} was changed after it had been applied. Put its file back as it was.`);
    }
  }
  const done = new Set(rows.map((row) => row.name));
  return migrations.filter((migration) => !done.has(migration.name));
}

async function apply(client: pg.Client, migration: Migration): Promise<void> {
  const started = new Date();
  try {
    await client.query('BEGIN');
    await client.query(migration.sql);
    await client.query(INSERT, [crypto.randomUUID(), migration.checksum, migration.name, started]);
    await client.query('COMMIT');
  } catch (error) {
    await client.query('ROLLBACK').catch(() => {});
    throw new Error(`Migration ${migration.name} failed: ${(error as Error).message}`, { cause: error });
  }
}

/** Brings the database at `ownerUrl` up to date; gives the names of what was applied. The roles must exist already. */
export async function migrate(ownerUrl: string, folder = migrationsFolder): Promise<string[]> {
  const migrations = readMigrations(folder);
  return withClient(ownerUrl, async (client) => {
    await client.query('SELECT pg_advisory_lock($1)', [LOCK_KEY]); // goes with the connection
    await client.query(TABLE);
    const wanted = await pending(client, migrations);
    for (const migration of wanted) await apply(client, migration);
    return wanted.map((migration) => migration.name);
  });
}
