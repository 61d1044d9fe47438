import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { withClient } from '../../lib/boot/roles.ts';
import { closeDatabase } from '../../lib/server/db.ts';
import { desk } from '../../lib/server/desk.ts';
import { inForce } from '../../lib/server/reading.ts';
import { verifyRecord } from '../../lib/server/record.ts';
import { openCandidate } from '../../lib/server/reviews.ts';
import { signIn } from '../../lib/server/sign-in.ts';
import { freshDatabase, type TestDatabase } from '../kit/database.ts';
import { must, seedText } from './house.ts';

let database: TestDatabase;
const seed = fileURLToPath(new URL('../../seed/seed.ts', import.meta.url));
const run = () => {
  const done = spawnSync(process.execPath, [seed], { encoding: 'utf8', env: process.env });
  expect(done.status, done.stderr).toBe(0);
};
const rows = () =>
  withClient(database.ownerUrl, async (owner) => {
    const { rows: counts } = await owner.query(
      `SELECT (SELECT count(*) FROM record_entry) AS entries, (SELECT count(*) FROM draft) AS drafts, (SELECT count(*) FROM person) AS people`,
    );
    return counts[0];
  });

beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.appUrl;
  run();
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

test('the demo world stands: every procedure in force for every tail, one set of hands each, the record whole', async () => {
  const password = seedText('demo-password.txt').trim();
  const pilot = await must(signIn('osk', password));
  const auditor = await must(signIn('vale', password));
  const writer = await must(signIn('reth', password));
  const { procedures, drafts } = await must(desk(writer));
  expect(procedures.length).toBeGreaterThanOrEqual(4);
  expect(procedures.filter((line) => line.issue?.number !== 1)).toEqual([]);
  expect(drafts.length).toBeGreaterThanOrEqual(1);
  for (const tail of ['Q-SKA', 'Q-SKI']) {
    const { lines } = await must(inForce(pilot, tail));
    expect(lines).toHaveLength(procedures.length);
  }
  expect(await must(verifyRecord(auditor))).toMatchObject({ ok: true, issues: procedures.length });
});

test('the seed has no STOP', async () => {
  const auditor = await must(signIn('vale', seedText('demo-password.txt').trim()));
  const ids = await withClient(database.ownerUrl, (owner) => owner.query('SELECT "id" FROM "candidate"'));
  expect(ids.rowCount).toBeGreaterThanOrEqual(4);
  for (const { id } of ids.rows) {
    const page = await must(openCandidate(auditor, id));
    expect(page.findings.filter((finding) => finding.severity === 'STOP')).toEqual([]);
    expect(page.editors).toEqual(['Oona Reth']);
  }
});

test('run again it adds nothing', async () => {
  const before = await rows();
  run();
  expect(await rows()).toEqual(before);
});
