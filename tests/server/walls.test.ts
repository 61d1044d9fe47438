import pg from 'pg';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Link } from '../../lib/approval/chain.ts';
import { verify } from '../../lib/approval/verify.ts';
import { withClient } from '../../lib/boot/roles.ts';
import { acknowledge } from '../../lib/server/reading.ts';
import { exportRecord, verifyRecord } from '../../lib/server/record.ts';
import { sha256Hex } from '../../lib/server/sha256.ts';
import { type House, importDraft, must, openHouse, PROCEDURE_ID, signThrough } from './house.ts';

let house: House;
let pool: pg.Pool;
beforeAll(async () => {
  house = await openHouse();
  const { draftId } = await importDraft(house.people.drafter);
  await signThrough(house, draftId);
  const receipt = { registration: 'Q-AAA', procedureId: PROCEDURE_ID, issueNumber: 1, device: 'phone' };
  await must(acknowledge(house.people.line, receipt));
  pool = new pg.Pool({ connectionString: house.database.appUrl, max: 2 });
});
afterAll(async () => {
  await pool.end();
  await house.close();
});

/** Runs `sql` as the app inside operator A; gives the database's refusal, or null. */
async function asApp(sql: string): Promise<string | null> {
  const client = await pool.connect();
  try {
    await client.query('BEGIN');
    await client.query(`SELECT set_config('cuewright.operator', 'op_a', true)`);
    await client.query(sql);
    return null;
  } catch (error) {
    return (error as Error).message;
  } finally {
    await client.query('ROLLBACK');
    client.release();
  }
}

const INSERT_ONLY = ['record_entry', 'draft_update', 'acknowledgement', 'sign_off', 'flight_run'];
const FROZEN = ['issue', 'finding', 'finding_answer', 'review', 'step_label', 'sheet_revision', 'policy_version'];

describe("through the app's own pool", () => {
  test.each([...INSERT_ONLY, ...FROZEN])('%s: what is written stays', async (table) => {
    expect(await asApp(`SELECT 1 FROM "${table}"`)).toBe(null);
    const refused = /permission denied|must be owner/;
    expect(await asApp(`UPDATE "${table}" SET "operatorId" = 'op_b'`)).toMatch(refused);
    expect(await asApp(`DELETE FROM "${table}"`)).toMatch(refused);
    expect(await asApp(`TRUNCATE "${table}"`)).toMatch(refused);
    expect(await asApp(`TRUNCATE "${table}" CASCADE`)).toMatch(refused);
    expect(await asApp(`ALTER TABLE "${table}" DISABLE ROW LEVEL SECURITY`)).toMatch(refused);
    expect(await asApp(`ALTER TABLE "${table}" ADD COLUMN "x" text`)).toMatch(refused);
    expect(await asApp(`DROP TABLE "${table}" CASCADE`)).toMatch(refused);
    expect(await asApp(`DROP POLICY own_operator ON "${table}"`)).toMatch(refused);
    expect(await asApp(`CREATE INDEX ON "${table}" ("operatorId")`)).toMatch(refused);
    expect(await asApp(`LOCK TABLE "${table}" IN ACCESS EXCLUSIVE MODE`)).toMatch(refused);
  });

  test('no setting, role or grant opens the way', async () => {
    expect(await asApp('SET ROLE cuewright_owner')).toMatch(/permission denied/);
    expect(await asApp('SET SESSION AUTHORIZATION cuewright_owner')).toMatch(/permission denied/);
    expect(await asApp(`SET session_replication_role = 'replica'`)).toMatch(/permission denied/);
    expect(await asApp('SET row_security = off; SELECT 1 FROM "record_entry"')).toMatch(/row-level security/);
    expect(await asApp('GRANT UPDATE ON "record_entry" TO cuewright_app; UPDATE "record_entry" SET "act" = 1')).toMatch(
      /permission denied|no privileges/,
    );
    expect(await asApp('ALTER TABLE "record_entry" DISABLE TRIGGER ALL')).toMatch(/must be owner/);
    expect(await asApp('ALTER ROLE cuewright_app BYPASSRLS')).toMatch(/permission denied|must be/);
    expect(await asApp('CREATE TABLE "x" ()')).toMatch(/permission denied/);
    expect(await asApp('SELECT * FROM "_prisma_migrations"')).toMatch(/permission denied/);
    expect(await asApp('DROP FUNCTION "stays_as_written"() CASCADE')).toMatch(/must be owner/);
  });

  test('a candidate keeps its content: its state alone moves', async () => {
    expect(await asApp(`UPDATE "candidate" SET "content" = '{}'`)).toMatch(/permission denied/);
    expect(await asApp(`UPDATE "candidate" SET "sha256" = 'x'`)).toMatch(/permission denied/);
    expect(await asApp(`UPDATE "candidate" SET "state" = 'flown'`)).toMatch(/check constraint/);
    expect(await asApp(`UPDATE "in_force_interval" SET "startsAt" = now()`)).toMatch(/permission denied/);
    expect(await asApp(`UPDATE "session" SET "expiresAt" = now() + interval '1 year'`)).toMatch(/permission denied/);
  });

  test('every table is behind row-level security, and the other operator is not there', async () => {
    const tables = await withClient(house.database.ownerUrl, async (owner) => {
      const { rows } = await owner.query(
        `SELECT relname AS name, relrowsecurity AS walled FROM pg_class
         WHERE relnamespace = 'public'::regnamespace AND relkind = 'r' AND relname <> '_prisma_migrations'`,
      );
      return rows as { name: string; walled: boolean }[];
    });
    expect(tables.length).toBeGreaterThan(25);
    expect(tables.filter((table) => !table.walled)).toEqual([]);
    for (const { name } of tables) {
      const { rows } = await pool.query(`SELECT count(*)::int AS n FROM "${name}"`);
      expect(`${name} ${rows[0].n}`).toBe(`${name} 0`);
    }
    const foreign = `INSERT INTO "fleet" VALUES ('op_b', 'fl_x', 'x', 'x')`;
    expect(await asApp(foreign)).toMatch(/row-level security/);
  });
});

test('even the owner is stopped from changing the record by mistake', async () => {
  await withClient(house.database.ownerUrl, async (owner) => {
    for (const table of INSERT_ONLY) {
      await expect(owner.query(`UPDATE "${table}" SET "operatorId" = 'x'`)).rejects.toThrow('insert-only');
      await expect(owner.query(`DELETE FROM "${table}"`)).rejects.toThrow('insert-only');
      await expect(owner.query(`TRUNCATE "${table}" CASCADE`)).rejects.toThrow('insert-only');
    }
  });
});

describe('whoever gets past all walls is found out', () => {
  /** What only a server's administrator can do: change rows with every trigger off. */
  async function tamper(sql: string, undo: string): Promise<unknown> {
    return withClient(house.database.adminUrl, async (admin) => {
      await admin.query(`SET session_replication_role = 'replica'`);
      await admin.query(sql);
      try {
        return await must(verifyRecord(house.people.auditor));
      } finally {
        await admin.query(undo);
      }
    });
  }
  const swap = (table: string, column: string, where: string, a: string, b: string) =>
    tamper(
      `UPDATE "${table}" SET "${column}" = replace("${column}", '${a}', '${b}') WHERE ${where}`,
      `UPDATE "${table}" SET "${column}" = replace("${column}", '${b}', '${a}') WHERE ${where}`,
    );

  test('in an entry, in a column beside it, in the content, in the sign-off', async () => {
    expect(await swap('record_entry', 'body', '"seq" = 3', 'person added', 'person addeD')).toMatchObject({
      ok: false,
      brokenAt: 3,
    });
    expect(await swap('record_entry', 'act', '"seq" = 3', 'added', 'wanted')).toMatchObject({ ok: false, brokenAt: 3 });
    const entries = (await must(exportRecord(house.people.auditor))).text.trim().split('\n');
    const signed = entries.findIndex((line) => line.includes('issue signed')) + 1;
    expect(await swap('candidate', 'content', 'true', 'read-back', 'read-bacK')).toMatchObject({ brokenAt: signed });
    expect(await swap('sign_off', 'binds', 'true', 'TN-182', 'TN-183')).toMatchObject({ brokenAt: signed });
    expect(await must(verifyRecord(house.people.auditor))).toMatchObject({ ok: true, issues: 1 });
  });

  test('the exported file verifies without the database, and not as the log of another operator', async () => {
    const { text } = await must(exportRecord(house.people.auditor));
    const links = text
      .trim()
      .split('\n')
      .map((line): Link => JSON.parse(line));
    const here = await must(verifyRecord(house.people.auditor));
    expect(verify('op_a', links, sha256Hex)).toEqual({ ok: true, entries: here.entries, head: here.ok && here.head });
    expect(verify('op_b', links, sha256Hex)).toMatchObject({ ok: false, brokenAt: 1 });
  });
});
