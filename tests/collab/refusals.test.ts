// What is not taken over, and how the one who sent it is told: a draft that closed, a change too large, bytes that are no
// change, a flood, an id of another operator.
import pg from 'pg';
import { afterAll, beforeAll, expect, test } from 'vitest';
import WebSocket from 'ws';
import * as Y from 'yjs';
import type { DraftConnection } from '../../app/(house)/desk/_draft/connect.ts';
import { Meter } from '../../lib/collab/limits.ts';
import { insertAfter, setText } from '../../lib/document/edit.ts';
import { orderedSteps } from '../../lib/document/order.ts';
import { CLOSED } from '../../lib/document/wire.ts';
import { closeDatabase } from '../../lib/server/db.ts';
import { readJournal } from '../../lib/server/journal.ts';
import { DRAFT_CLOSED } from '../../lib/server/revocation.ts';
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

const enter = async (draftId: string, shelf = new MemoryShelf()) => {
  const draft = await join({ viewer: world.ada, port: served.port, draftId, shelf });
  open.push(draft);
  await until(draft, isSaved);
  return draft;
};
const rowsIn = async (draftId: string) => {
  const journal = await readJournal(world.ada, draftId);
  return journal.ok ? journal.value.updates.length : -1;
};
/** As submission does it, in one transaction. */
const close = async (draftId: string, tell: boolean) => {
  const client = new pg.Client({ connectionString: world.database.adminUrl });
  await client.connect();
  await client.query(`UPDATE draft SET state = 'submitted', "closedAt" = now() WHERE id = $1`, [draftId]);
  if (tell) await client.query('SELECT pg_notify($1, $2)', [DRAFT_CLOSED, draftId]);
  await client.end();
};

test('a draft that is submitted while it is open becomes read-only, and what was typed since is kept', async () => {
  const draftId = await newDraft(world.ada);
  const shelf = new MemoryShelf();
  const draft = await enter(draftId, shelf);
  await close(draftId, true);
  await until(draft, (state) => state.kind === 'frozen');
  const rows = await rowsIn(draftId);
  insertAfter(draft.doc, draft.hand, null, { object: 'too late' });
  expect(draft.saved()).toMatchObject({ kind: 'frozen', kept: 2, sentence: expect.stringContaining('was submitted') });
  expect(shelf.kept.size).toBe(2);
  expect(await rowsIn(draftId)).toBe(rows);
});

test('an edit that crosses with the submission is refused by the journal itself', async () => {
  const draftId = await newDraft(world.ada);
  const draft = await enter(draftId);
  const rows = await rowsIn(draftId);
  await close(draftId, false);
  insertAfter(draft.doc, draft.hand, null, { object: 'too late' });
  await until(draft, (state) => state.kind === 'frozen');
  expect(draft.saved()).toMatchObject({ kind: 'frozen', kept: 2 });
  expect(await rowsIn(draftId)).toBe(rows);
});

test('a step of 10 MB gets a clear answer, is kept, and is not in the journal', async () => {
  const draftId = await newDraft(world.ada);
  const draft = await enter(draftId);
  const id = insertAfter(draft.doc, draft.hand, null);
  await until(draft, isSaved);
  const rows = await rowsIn(draftId);
  setText(draft.doc, draft.hand, { in: 'steps', id }, 'note', 0, 0, 'x'.repeat(10_000_000));
  const state = await until(draft, (one) => one.kind === 'refused');
  expect(state).toMatchObject({ kept: 1, sentence: expect.stringContaining('larger than 1.5 MB') });
  expect(await rowsIn(draftId)).toBe(rows);
  // It doesn't come back by itself to be refused again; that nothing happens takes a while to see.
  let upgrades = 0;
  served.server.on('upgrade', () => upgrades++);
  await new Promise((resolve) => setTimeout(resolve, 1_000));
  expect(upgrades).toBe(0);
});

/** A socket that speaks the protocol by hand: everything in it is shorter than 128 bytes, so each length is one byte. */
async function raw(draftId: string) {
  const headers = { cookie: await cookieOf(world.ada), origin: `http://127.0.0.1:${served.port}` };
  const socket = new WebSocket(`ws://127.0.0.1:${served.port}/collab`, { headers });
  await new Promise((resolve) => socket.once('open', resolve));
  const say = (...bytes: number[]) =>
    socket.send(new Uint8Array([draftId.length, ...new TextEncoder().encode(draftId), ...bytes]));
  const ended = new Promise<number>((resolve) => socket.once('close', resolve));
  const [AUTHENTICATION, TOKEN, SYNC, CHANGE] = [2, 0, 0, 2];
  say(AUTHENTICATION, TOKEN, 0);
  return {
    ended,
    change: (bytes: number[]) => say(SYNC, CHANGE, bytes.length, ...bytes),
    noise: () => socket.send(new Uint8Array([1, 97, 9])),
  };
}

test('bytes that are no change end the socket and never reach the journal', async () => {
  const draftId = await newDraft(world.ada);
  const rows = await rowsIn(draftId);
  const socket = await raw(draftId);
  socket.change([9, 9, 9, 9, 250]);
  expect(await socket.ended).toBe(CLOSED.broken);
  expect(await rowsIn(draftId)).toBe(rows);
});

test('a flood ends the socket', async () => {
  const socket = await raw(await newDraft(world.ada));
  for (let i = 0; i < 2000; i++) socket.noise();
  expect(await socket.ended).toBe(CLOSED.tooMany);
  const meter = new Meter(0);
  const taken = Array.from({ length: 1000 }, () => meter.take(0)).filter(Boolean);
  expect(taken).toHaveLength(600);
  expect(meter.take(10_000)).toBe(true);
});

test('a change that another program wrote straight into the journal is read, a torn row is left out', async () => {
  const draftId = await newDraft(world.ada);
  const client = new pg.Client({ connectionString: world.database.adminUrl });
  await client.connect();
  const doc = new Y.Doc();
  doc.getMap('meta').set('tomorrow', 'kept');
  const rows = [
    [2, Buffer.from([1, 1, 77])],
    [3, Buffer.from(Y.encodeStateAsUpdate(doc))],
  ] as const;
  for (const [seq, update] of rows) {
    await client.query(
      'INSERT INTO draft_update ("operatorId", "draftId", "seq", "update", "at") VALUES ($1, $2, $3, $4, now())',
      [world.ada.operatorId, draftId, seq, update],
    );
  }
  await client.end();
  const draft = await enter(draftId);
  expect(draft.doc.getMap('meta').get('tomorrow')).toBe('kept');
  insertAfter(draft.doc, draft.hand, null);
  await until(draft, isSaved);
  expect(orderedSteps(draft.doc)).toHaveLength(1);
});
