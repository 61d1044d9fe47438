// An operator with three people in a fresh database, and the ways in that a browser has: a signed cookie and a socket.
import crypto from 'node:crypto';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { encode } from 'next-auth/jwt';
import pg from 'pg';
import WebSocket from 'ws';
import { connectDraft, type DraftConnection, type SaveState } from '../../app/(house)/desk/_draft/connect.ts';
import type { Shelf } from '../../app/(house)/desk/_draft/unsent.ts';
import { attach, type Collab } from '../../lib/collab/serve.ts';
import { createProcedure } from '../../lib/server/drafts.ts';
import { sessionCookie, sessionName } from '../../lib/server/viewer.ts';
import type { Viewer } from '../../lib/server/within.ts';
import { freshDatabase, type TestDatabase } from '../kit/database.ts';

export const SECRET = 'a secret of the tests alone';
export const OPERATOR = 'op-skarrowmere';

export type World = {
  readonly database: TestDatabase;
  readonly ada: Viewer;
  readonly ben: Viewer;
  /** Reads only. */
  readonly auditor: Viewer;
  /** Of another operator. */
  readonly stranger: Viewer;
  readonly draftId: string;
  drop(): Promise<void>;
};

export async function makeWorld(): Promise<World> {
  const database = await freshDatabase();
  process.env.DATABASE_URL = database.appUrl;
  process.env.NEXTAUTH_SECRET = SECRET;
  const client = new pg.Client({ connectionString: database.adminUrl });
  await client.connect();
  const person = async (operatorId: string, name: string, role: string): Promise<Viewer> => {
    const [personId, sessionId] = [`pe-${name}`, `se-${name}-${crypto.randomUUID()}`];
    await client.query('INSERT INTO operator VALUES ($1, $1, now()) ON CONFLICT DO NOTHING', [operatorId]);
    await client.query('INSERT INTO person ("id", "signInName", "name", "createdAt") VALUES ($1, $2, $2, now())', [
      personId,
      name,
    ]);
    await client.query(
      'INSERT INTO membership ("operatorId", "personId", "title", "since") VALUES ($1, $2, $2, now())',
      [operatorId, personId],
    );
    await client.query(
      `INSERT INTO role_grant ("operatorId", "id", "personId", "role", "heldFrom") VALUES ($1, $2, $3, $4, now() - interval '1 day')`,
      [operatorId, `ro-${name}`, personId, role],
    );
    await client.query(
      `INSERT INTO session ("operatorId", "id", "personId", "startedAt", "expiresAt") VALUES ($1, $2, $3, now(), now() + interval '1 day')`,
      [operatorId, sessionId, personId],
    );
    return { operatorId, personId, sessionId };
  };
  const ada = await person(OPERATOR, 'ada', 'technical pilot');
  const ben = await person(OPERATOR, 'ben', 'technical pilot');
  const auditor = await person(OPERATOR, 'cas', 'auditor');
  const stranger = await person('op-other', 'dot', 'technical pilot');
  await client.end();
  return { database, ada, ben, auditor, stranger, draftId: await newDraft(ada), drop: () => database.drop() };
}

export async function newDraft(viewer: Viewer): Promise<string> {
  const change = { reason: 'A trial of writing together', source: 'test', riskNote: 'none', dueOn: null };
  const started = await createProcedure(viewer, { title: 'Go-around', change });
  if (!started.ok) throw new Error(started.error.sentence);
  return started.value.draftId;
}

export type Served = { readonly port: number; readonly server: Server; readonly collab: Collab; stop(): Promise<void> };

export async function serveCollab(port = 0): Promise<Served> {
  const collab = await attach();
  const server = createServer();
  server.on('upgrade', collab.upgrade);
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  return {
    server,
    collab,
    port: (server.address() as AddressInfo).port,
    async stop() {
      await collab.close();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

export async function cookieOf(viewer: Viewer): Promise<string> {
  const token = await encode({ token: { session: sessionName(viewer) }, secret: SECRET });
  return `${sessionCookie()}=${token}`;
}

/** A browser's socket: it carries the cookie and says which page it is on. */
export function socketClass(headers: Record<string, string>): typeof WebSocket {
  return class extends WebSocket {
    constructor(url: string | URL) {
      super(url, { headers });
    }
  } as typeof WebSocket;
}

/** What a browser keeps over a reload. */
export class MemoryShelf implements Shelf {
  readonly kept = new Map<string, string>();
  get length(): number {
    return this.kept.size;
  }
  key = (at: number) => [...this.kept.keys()][at] ?? null;
  getItem = (key: string) => this.kept.get(key) ?? null;
  setItem = (key: string, value: string) => void this.kept.set(key, value);
  removeItem = (key: string) => void this.kept.delete(key);
}

type Way = { readonly viewer: Viewer; readonly port: number; readonly draftId: string; readonly shelf?: Shelf };

export async function join({ viewer, port, draftId, shelf = new MemoryShelf() }: Way): Promise<DraftConnection> {
  const headers = { cookie: await cookieOf(viewer), origin: `http://127.0.0.1:${port}` };
  return connectDraft({
    url: `ws://127.0.0.1:${port}/collab`,
    draftId,
    person: { id: viewer.personId, name: viewer.personId, initials: 'XX' },
    shelf,
    WebSocketPolyfill: socketClass(headers),
  });
}

/** A busy machine is slow; what takes longer than this is stuck. Milliseconds. */
const STUCK = 60_000;

/** Waits until what is saved is as wanted; rejects with what it was when that never comes. */
export function until(draft: DraftConnection, wanted: (state: SaveState) => boolean): Promise<SaveState> {
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => reject(new Error(`still ${JSON.stringify(draft.saved())}`)), STUCK);
    const look = () => {
      if (!wanted(draft.saved())) return;
      clearTimeout(late);
      off();
      resolve(draft.saved());
    };
    const off = draft.onSaved(look);
    look();
  });
}

export const isSaved = (state: SaveState) => state.kind === 'saved';
