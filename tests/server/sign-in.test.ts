import { encode } from 'next-auth/jwt';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { withClient } from '../../lib/boot/roles.ts';
import { FAILURES_ALLOWED } from '../../lib/server/passwords.ts';
import { recommend } from '../../lib/server/reviews.ts';
import { SESSION_MS, signIn, signOut } from '../../lib/server/sign-in.ts';
import { signCandidate } from '../../lib/server/signing.ts';
import { submitDraft } from '../../lib/server/submission.ts';
import { sessionCookie, sessionName, viewerOfCookie } from '../../lib/server/viewer.ts';
import { welcome } from '../../lib/server/welcome.ts';
import type { Viewer } from '../../lib/server/within.ts';
import { codeOf, type House, importDraft, must, openHouse, PASSWORD, STATEMENT } from './house.ts';

let house: House;
let day = 0;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());
beforeEach(() => {
  day += 1;
  house.setTime(`2030-05-${String(day).padStart(2, '0')}T08:00:00Z`);
});

const cookieOf = async (viewer: Viewer, secret = 'only for tests') =>
  `a=b; ${sessionCookie()}=${await encode({ token: { session: sessionName(viewer) }, secret })}; c=d`;

test('the cookie names a session, and the rows say who it is', async () => {
  const viewer = await must(signIn('  Line ', PASSWORD));
  expect(await viewerOfCookie(await cookieOf(viewer))).toEqual(viewer);
  expect(await must(welcome(viewer))).toMatchObject({ name: 'line', may: { acknowledge: true, write: false } });
  expect(await viewerOfCookie(await cookieOf(viewer, 'another secret'))).toBe(null);
  expect(await viewerOfCookie(await cookieOf({ ...viewer, operatorId: 'op_b' }))).toBe(null);
  expect(await viewerOfCookie(undefined)).toBe(null);
  expect(await viewerOfCookie(`${sessionCookie()}=rubbish`)).toBe(null);
});

test('a session ends when it is signed out, and by itself', async () => {
  const first = await must(signIn('line', PASSWORD));
  await signOut(first);
  expect(await codeOf(welcome(first))).toBe('signed-out');
  expect(await viewerOfCookie(await cookieOf(first))).toBe(null);
  const second = await must(signIn('line', PASSWORD));
  house.setTime(new Date(Date.parse(`2030-05-${String(day).padStart(2, '0')}T08:00:00Z`) + SESSION_MS).toISOString());
  expect(await codeOf(welcome(second))).toBe('done');
  house.setTime(`2030-05-${String(day).padStart(2, '0')}T20:01:00Z`);
  expect(await codeOf(welcome(second))).toBe('signed-out');
});

test('an unknown name and a wrong password get the same answer after the same work, and the same limit', async () => {
  const answers: Record<string, unknown[]> = { line: [], nobody: [] };
  for (const name of ['line', 'nobody']) {
    for (let attempt = 0; attempt < FAILURES_ALLOWED + 2; attempt++) {
      answers[name]!.push(await signIn(name, 'wrong'));
    }
  }
  expect(answers.line).toEqual(answers.nobody);
  const codes = (answers.line as { error: { code: string } }[]).map((each) => each.error.code);
  expect(codes.slice(0, FAILURES_ALLOWED)).toEqual(Array(FAILURES_ALLOWED).fill('sign-in-failed'));
  expect(codes.slice(FAILURES_ALLOWED)).toEqual(['too-many-attempts', 'too-many-attempts']);
  expect(await codeOf(signIn('line', PASSWORD))).toBe('too-many-attempts');
  house.setTime(`2030-05-${String(day).padStart(2, '0')}T08:20:00Z`);
  expect(await codeOf(signIn('line', PASSWORD))).toBe('done');
});

test('the work for an unknown name is the work for a known one', async () => {
  const times = { auditor: [] as number[], nobody2: [] as number[] };
  for (let round = 0; round < 9; round++) {
    for (const name of ['auditor', 'nobody2'] as const) {
      const began = process.hrtime.bigint();
      await signIn(`${name}`, 'wrong');
      times[name].push(Number(process.hrtime.bigint() - began));
    }
  }
  const middle = (list: number[]) => list.sort((a, b) => a - b)[4]!;
  // Without the decoy the unknown name would take a fifth or less.
  const ratio = middle(times.nobody2) / middle(times.auditor);
  expect(ratio).toBeGreaterThan(0.5);
  expect(ratio).toBeLessThan(2);
});

test('a volley of attempts at once gets no more than the limit', async () => {
  const codes = await Promise.all(Array.from({ length: 12 }, () => codeOf(signIn('volley', 'wrong'))));
  expect(codes.filter((code) => code === 'sign-in-failed')).toHaveLength(FAILURES_ALLOWED);
  expect(codes.filter((code) => code === 'too-many-attempts')).toHaveLength(12 - FAILURES_ALLOWED);
});

test('the password that signs is limited too, and its failures outlive the refusal', async () => {
  const { drafter, captain, approver } = house.people;
  const { draftId } = await importDraft(drafter);
  const { candidateId, sha256 } = await must(submitDraft(drafter, draftId, ''));
  await must(recommend(captain, candidateId, STATEMENT));
  const sign = (password: string) =>
    codeOf(signCandidate(approver, candidateId, { sha256, password, effectiveFrom: null }));
  for (let attempt = 0; attempt < FAILURES_ALLOWED; attempt++) expect(await sign('wrong')).toBe('wrong-password');
  expect(await sign(PASSWORD)).toBe('too-many-attempts');
  expect(await codeOf(signIn('approver', PASSWORD))).toBe('too-many-attempts');
  house.setTime(`2030-05-${String(day).padStart(2, '0')}T08:20:00Z`);
  expect(await sign(PASSWORD)).toBe('done');
});

test('passwords are kept as argon2id, and nothing else of them is kept', async () => {
  await withClient(house.database.ownerUrl, async (owner) => {
    const { rows } = await owner.query('SELECT "hash" FROM "password_credential"');
    expect(rows.length).toBeGreaterThan(8);
    for (const { hash } of rows) expect(hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
    const failures = await owner.query('SELECT * FROM "sign_in_failure"');
    expect(JSON.stringify(failures.rows, (_, value) => (typeof value === 'bigint' ? '' : value))).not.toContain(
      'wrong',
    );
  });
});
