// kill -9 of the server while two people write: whatever the screen called saved is in the database, and what it did not
// yet call saved is sent again by the browser that kept it.
import { type ChildProcess, spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, test } from 'vitest';
import * as Y from 'yjs';
import type { DraftConnection } from '../../app/(house)/desk/_draft/connect.ts';
import { insertAfter, move, remove, setText } from '../../lib/document/edit.ts';
import { orderedSteps } from '../../lib/document/order.ts';
import { readDraft } from '../../lib/document/read.ts';
import { closeDatabase } from '../../lib/server/db.ts';
import { readJournal } from '../../lib/server/journal.ts';
import { mulberry } from '../document/writers.ts';
import { isSaved, join, makeWorld, SECRET, until, type World } from './world.ts';

const KILLS = 20;
const EDIT_EVERY = 40;

const bundle = fileURLToPath(new URL(`../../node_modules/.cache/cuewright-kill-${process.pid}.mjs`, import.meta.url));
let world: World;
let child: ChildProcess;
let port = 0;

beforeAll(async () => {
  world = await makeWorld();
  port = await freePort();
  // Bundled once, as the real server is: so that it starts fast, twenty times.
  await build({
    entryPoints: [fileURLToPath(new URL('server.ts', import.meta.url))],
    outfile: bundle,
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    logLevel: 'error',
  });
});
afterAll(async () => {
  child.kill('SIGKILL');
  rmSync(bundle, { force: true });
  await closeDatabase();
  await world.drop();
});

const freePort = () =>
  new Promise<number>((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const found = (server.address() as AddressInfo).port;
      server.close(() => resolve(found));
    });
  });

async function start(): Promise<void> {
  child = spawn(process.execPath, [bundle], {
    env: { ...process.env, PORT: String(port), DATABASE_URL: world.database.appUrl, NEXTAUTH_SECRET: SECRET },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  await new Promise<void>((resolve, reject) => {
    child.stdout!.once('data', () => resolve());
    child.once('exit', (code) => reject(new Error(`the server ended with ${code}`)));
  });
}

const killed = () =>
  new Promise<void>((resolve) => {
    child.removeAllListeners('exit');
    child.once('exit', () => resolve());
    child.kill('SIGKILL');
  });

/** The text that the database holds, read by nobody's live document. */
async function stored(): Promise<Y.Doc> {
  const journal = await readJournal(world.ada, world.draftId);
  if (!journal.ok) throw new Error(journal.error.sentence);
  const doc = new Y.Doc();
  if (journal.value.snapshot) Y.applyUpdate(doc, journal.value.snapshot.state);
  for (const { update } of journal.value.updates) Y.applyUpdate(doc, update);
  return doc;
}

/** One person writing: each edit is remembered, and as acknowledged once the screen no longer counts it as waiting. */
function write(draft: DraftConnection, name: string, chance: () => number) {
  const typed: string[] = [];
  const edits: string[] = [];
  let [word, acknowledged] = ['', 0];
  draft.doc.on('update', (_: Uint8Array, origin: unknown) => {
    if (origin !== draft.provider) edits.push(word);
    word = '';
  });
  const off = draft.onSaved(() => {
    const state = draft.saved();
    const waiting = state.kind === 'saved' ? 0 : state.kind === 'saving' ? state.waiting : null;
    if (waiting !== null) acknowledged = Math.max(acknowledged, edits.length - waiting);
  });
  const timer = setInterval(() => {
    const ids = orderedSteps(draft.doc).map((one) => one.id);
    const id = ids[Math.floor(chance() * ids.length)];
    const deed = chance();
    if (!id || (deed < 0.1 && ids.length < 30)) insertAfter(draft.doc, draft.hand, id ?? null);
    else if (deed < 0.2) move(draft.doc, draft.hand, 'steps', [id], { parent: null, after: ids[0] ?? null });
    else if (deed < 0.22) remove(draft.doc, draft.hand, 'steps', [id]);
    else {
      word = `<${name}${typed.length}>`;
      typed.push(word);
      setText(draft.doc, draft.hand, { in: 'steps', id }, 'note', 0, 0, word);
    }
  }, EDIT_EVERY);
  return {
    typed,
    acknowledged: () => edits.slice(0, acknowledged).filter(Boolean),
    stop() {
      clearInterval(timer);
      off();
    },
  };
}

const wordsIn = (doc: Y.Doc) => {
  const all = [...doc.getMap<Y.Map<unknown>>('steps').values()].map((fields) => String(fields.get('note')));
  return all.join('');
};

test(`${KILLS} times kill -9 while two people write`, async () => {
  const chance = mulberry(20);
  await start();
  const ada = await join({ viewer: world.ada, port, draftId: world.draftId });
  const ben = await join({ viewer: world.ben, port, draftId: world.draftId });
  await Promise.all([until(ada, isSaved), until(ben, isSaved)]);
  const writers = [write(ada, 'a', chance), write(ben, 'b', chance)];
  const missing: string[] = [];
  let acknowledged = 0;
  for (let kill = 0; kill < KILLS; kill++) {
    // In the middle of writing: some time after both were told of something new that is saved.
    const before = writers.map((one) => one.acknowledged().length);
    await Promise.all([ada, ben].map((draft, i) => until(draft, () => writers[i]!.acknowledged().length > before[i]!)));
    await new Promise((resolve) => setTimeout(resolve, chance() * 200));
    await killed();
    const claimed = writers.flatMap((one) => one.acknowledged());
    const words = wordsIn(await stored());
    for (const word of claimed) if (!words.includes(word)) missing.push(`kill ${kill}: ${word}`);
    acknowledged = claimed.length;
    await start();
  }
  for (const writer of writers) writer.stop();
  await Promise.all([until(ada, isSaved), until(ben, isSaved)]);
  expect(missing).toEqual([]);
  expect(acknowledged).toBeGreaterThan(KILLS * 2);
  // In the end nothing at all is lost: the browsers sent again what no server had taken.
  const doc = await stored();
  const words = wordsIn(doc);
  for (const writer of writers) for (const word of writer.typed) expect(words.split(word)).toHaveLength(2);
  expect(readDraft(doc)).toEqual(readDraft(ada.doc));
  expect(readDraft(doc)).toEqual(readDraft(ben.doc));
  console.info(
    `${KILLS} kills, ${writers[0]!.typed.length + writers[1]!.typed.length} words typed, ${acknowledged} acknowledged, none lost`,
  );
  ada.close();
  ben.close();
}, 900_000);
