import pg from 'pg';
import { afterAll, beforeAll, expect, test } from 'vitest';
import WebSocket from 'ws';
import type { DraftConnection } from '../../app/(house)/desk/_draft/connect.ts';
import { insertAfter, move, setText } from '../../lib/document/edit.ts';
import { textOf } from '../../lib/document/model.ts';
import { orderedSteps } from '../../lib/document/order.ts';
import { readDraft } from '../../lib/document/read.ts';
import { closeDatabase } from '../../lib/server/db.ts';
import { openDraft } from '../../lib/server/drafts.ts';
import { signOut } from '../../lib/server/sign-in.ts';
import {
  cookieOf,
  isSaved,
  join,
  MemoryShelf,
  makeWorld,
  newDraft,
  type Served,
  serveCollab,
  until,
  type World,
} from './world.ts';

let world: World;
let served: Served;
const open: DraftConnection[] = [];

beforeAll(async () => {
  world = await makeWorld();
  served = await serveCollab();
});
afterAll(async () => {
  for (const draft of open) draft.close();
  await served.stop();
  await closeDatabase();
  await world.drop();
});

const enter = async (
  who: 'ada' | 'ben' | 'auditor' | 'stranger',
  draftId = world.draftId,
  shelf = new MemoryShelf(),
) => {
  const draft = await join({ viewer: world[who], port: served.port, draftId, shelf });
  open.push(draft);
  return draft;
};
/** Resolves when `seen` holds in this replica. */
const seen = (draft: DraftConnection, holds: () => boolean) =>
  new Promise<void>((resolve) => {
    const look = () => {
      if (!holds()) return;
      draft.doc.off('update', look);
      resolve();
    };
    draft.doc.on('update', look);
    look();
  });
/** What the app itself may not do. */
const behind = async (sql: string, ...values: string[]) => {
  const client = new pg.Client({ connectionString: world.database.adminUrl });
  await client.connect();
  await client.query(sql, values);
  await client.end();
};
const stored = async (draftId: string) => {
  const draft = await openDraft(world.ada, draftId);
  if (!draft.ok) throw new Error(draft.error.sentence);
  return draft.value;
};

test('two people write in one draft: one moves a step while the other types in it', async () => {
  const [ada, ben] = [await enter('ada'), await enter('ben')];
  await Promise.all([until(ada, isSaved), until(ben, isSaved)]);
  const first = insertAfter(ada.doc, ada.hand, null);
  const second = insertAfter(ada.doc, ada.hand, first);
  await seen(ben, () => orderedSteps(ben.doc).length === 2);
  setText(ben.doc, ben.hand, { in: 'steps', id: first }, 'object', 0, 0, 'flap lever');
  move(ada.doc, ada.hand, 'steps', [first], { parent: null, after: second });
  await seen(ada, () => textOf(ada.doc, { in: 'steps', id: first }, 'object')?.toString() === 'flap lever');
  await seen(ben, () => orderedSteps(ben.doc)[0]?.id === second);
  expect(readDraft(ada.doc)).toEqual(readDraft(ben.doc));
  const saved = await Promise.all([until(ada, isSaved), until(ben, isSaved)]);
  for (const state of saved) expect(state).toMatchObject({ at: expect.stringMatching(/^\d{4}-.*Z$/) });
  expect((await stored(world.draftId)).procedure).toEqual(readDraft(ada.doc).procedure);
});

test('the others are seen with the row and field of their caret, under their own id alone', async () => {
  const [ada, ben] = [await enter('ada'), await enter('ben')];
  await Promise.all([until(ada, isSaved), until(ben, isSaved)]);
  const arrived = new Promise<unknown>((resolve) => {
    ada.provider.on('awarenessChange', ({ states }: { states: Record<string, unknown>[] }) => {
      const found = states.find((state) => (state.at as { field?: string } | null)?.field === 'cue');
      if (found) resolve(found);
    });
  });
  ben.provider.setAwarenessField('person', { id: world.ada.personId, name: 'Ada', initials: 'AD' });
  ben.point({ row: 'some-step', field: 'cue', caret: 3 });
  expect(await arrived).toMatchObject({
    person: { id: world.ben.personId },
    at: { row: 'some-step', field: 'cue', caret: 3 },
  });
});

test('a reader sees and cannot write, also by sending all the same', async () => {
  const draftId = await newDraft(world.ada);
  const auditor = await enter('auditor', draftId);
  await until(auditor, (state) => state.kind === 'read-only');
  const before = (await stored(draftId)).procedure;
  insertAfter(auditor.doc, auditor.hand, null, { object: 'not for me' });
  const ada = await enter('ada', draftId);
  await until(ada, isSaved);
  const id = insertAfter(ada.doc, ada.hand, null, { object: 'mine' });
  await until(ada, isSaved);
  await seen(auditor, () => orderedSteps(auditor.doc).some((one) => one.id === id));
  expect(orderedSteps(ada.doc).map((one) => one.id)).toEqual([id]);
  expect((await stored(draftId)).procedure.steps).toHaveLength(before.steps.length + 1);
});

test("another operator's member, and one who is not signed in, are told so", async () => {
  const stranger = await enter('stranger');
  expect(await until(stranger, (state) => state.kind !== 'opening')).toMatchObject({ kind: 'no-access' });
  const nobody = await join({
    viewer: { ...world.ada, sessionId: 'made-up' },
    port: served.port,
    draftId: world.draftId,
  });
  open.push(nobody);
  expect(await until(nobody, (state) => state.kind !== 'opening')).toMatchObject({ kind: 'signed-out' });
});

test.each([['https://elsewhere.example'], [undefined]])('a page from %s gets no socket', async (origin) => {
  const headers = { cookie: await cookieOf(world.ada), ...(origin && { origin }) };
  const socket = new WebSocket(`ws://127.0.0.1:${served.port}/collab`, { headers });
  const answer = await new Promise((resolve) => {
    socket.on('unexpected-response', (_, response) => resolve(response.statusCode));
    socket.on('error', () => {});
  });
  expect(answer).toBe(403);
});

test('what was typed without network is kept over a reload and sent by the next tab', async () => {
  const draftId = await newDraft(world.ada);
  const shelf = new MemoryShelf();
  const tab = await enter('ada', draftId, shelf);
  await until(tab, isSaved);
  const id = insertAfter(tab.doc, tab.hand, null, { object: 'gear lever' });
  await until(tab, isSaved);
  expect(shelf.kept.size).toBe(0);
  const offline = until(tab, (state) => state.kind === 'offline');
  await served.collab.close();
  await served.stop();
  await offline;
  setText(tab.doc, tab.hand, { in: 'steps', id }, 'object', 4, 0, ' up');
  expect(tab.saved()).toEqual({ kind: 'offline', kept: 1, roomy: true });
  tab.close();
  served = await serveCollab();
  const next = await enter('ada', draftId, shelf);
  expect(next.saved()).toEqual({ kind: 'opening' });
  await until(next, isSaved);
  expect(shelf.kept.size).toBe(0);
  expect((await stored(draftId)).procedure.steps[0]).toMatchObject({ id, object: 'gear up lever' });
});

test('a session that ends closes its open socket within a second, and the edit is kept', async () => {
  const viewer = world.ben;
  const shelf = new MemoryShelf();
  const ben = await enter('ben', world.draftId, shelf);
  await until(ben, isSaved);
  const began = performance.now();
  await signOut(viewer);
  const state = await until(ben, (one) => one.kind === 'signed-out');
  expect(performance.now() - began).toBeLessThan(1000);
  expect(state).toMatchObject({ kind: 'signed-out', kept: 0 });
  const [row] = orderedSteps(ben.doc);
  setText(ben.doc, ben.hand, { in: 'steps', id: row!.id }, 'note', 0, 0, 'typed while signed out');
  expect(ben.saved()).toMatchObject({ kind: 'signed-out', kept: 1 });
  expect(shelf.kept.size).toBe(1);
  // Signed in again, in this browser: the same tab goes on and sends what it kept.
  await behind('UPDATE session SET "revokedAt" = NULL WHERE id = $1', viewer.sessionId);
  ben.tryAgain();
  await until(ben, isSaved);
  expect(shelf.kept.size).toBe(0);
  const steps = (await stored(world.draftId)).procedure.steps;
  expect(steps.find((step) => step.id === row!.id)?.note).toContain('typed while signed out');
});
