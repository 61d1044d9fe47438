/**
 * Writing together: sockets on the one port, each change committed to the journal before anyone sees it. This folder knows
 * sockets, sessions and the journal; it knows neither what a procedure means nor how a table looks, and has no screen.
 */
import type { IncomingMessage } from 'node:http';
import type { Duplex } from 'node:stream';
import type { Hocuspocus } from '@hocuspocus/server';
import { type WebSocket, WebSocketServer } from 'ws';
import { permitDraft } from '../server/journal.ts';
import { DRAFT_CLOSED, listen, REVOKED } from '../server/revocation.ts';
import { stillSignedIn } from '../server/viewer.ts';
import type { Viewer } from '../server/within.ts';
import { type Seat, sameOrigin, seatOf } from './authenticate.ts';
import { fits, MESSAGE_BYTES, Meter } from './limits.ts';
import { type Ending, notAllowed, revoked, tooLarge, tooMany } from './refusal.ts';
import { type Context, freeze, openRoom } from './room.ts';

export type Collab = {
  /** Takes over a request to upgrade at `/collab`. */
  upgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void;
  /** Ends the sockets, waits for what is being committed. */
  close(): Promise<void>;
};

/** Sessions end and roles change without a change being sent: this often each open socket is asked for again, in ms. */
const ASK_AGAIN = 20_000;

type Open = { readonly socket: WebSocket; readonly viewer: Viewer };

/** Starts to listen for ended sessions and closed drafts. Rejects when the database can't be reached. */
export async function attach(): Promise<Collab> {
  const server = new WebSocketServer({ noServer: true, maxPayload: MESSAGE_BYTES });
  const rooms = new Map<string, Hocuspocus<Context>>();
  const sockets = new Set<Open>();
  const roomOf = (operatorId: string) => {
    const room = rooms.get(operatorId) ?? openRoom();
    rooms.set(operatorId, room);
    return room;
  };
  const end = (one: Open, { code, reason }: Ending) => one.socket.close(code, reason);
  const connections = () =>
    [...rooms.values()].flatMap((room) =>
      [...room.documents.values()].flatMap((document) => document.getConnections()),
    );

  const askAll = async () => {
    for (const one of sockets) if (!(await stillSignedIn(one.viewer))) end(one, revoked);
    for (const connection of connections()) {
      const permitted = await permitDraft(connection.context.viewer, connection.document.name);
      if (!permitted) connection.webSocket.close(notAllowed.code, notAllowed.reason);
      else if (permitted === 'read' && !connection.readOnly) await freeze(connection, connection.document.name);
    }
  };
  const closeDraft = async (draftId: string) => {
    const open = connections().filter((one) => one.document.name === draftId && !one.readOnly);
    for (const one of open) {
      if ((await permitDraft(one.context.viewer, draftId)) !== 'write') await freeze(one, draftId);
    }
  };
  const quietly = (deed: Promise<void>) => {
    deed.catch((error: unknown) => console.error('could not ask for open sockets', error));
  };
  const stopListening = await listen((channel, payload) => {
    if (channel === REVOKED) for (const one of sockets) if (one.viewer.sessionId === payload) end(one, revoked);
    if (channel === DRAFT_CLOSED) quietly(closeDraft(payload));
    if (channel === 'gap') quietly(askAll());
  });
  const timer = setInterval(() => quietly(askAll()), ASK_AGAIN);
  timer.unref();

  const seat = (socket: WebSocket, request: IncomingMessage, { viewer }: Seat) => {
    const meter = new Meter(performance.now());
    // Someone without a session is let in to be told so: the room turns them away with the reason.
    const room = viewer ? roomOf(viewer.operatorId) : openRoom();
    const connection = room.handleConnection(socket, toRequest(request), { viewer } as Context);
    const open = viewer && { socket, viewer };
    if (open) sockets.add(open);
    socket.on('message', (data: Buffer) => {
      if (!fits(data)) socket.close(tooLarge.code, tooLarge.reason);
      else if (!meter.take(performance.now())) socket.close(tooMany.code, tooMany.reason);
      else connection.handleMessage(new Uint8Array(data));
    });
    socket.on('close', (code, reason) => {
      if (open) sockets.delete(open);
      connection.handleClose({ code, reason: reason.toString() });
    });
    socket.on('error', () => {});
  };

  return {
    upgrade(request, socket, head) {
      socket.on('error', () => {});
      const refuse = (status: string) =>
        socket.end(`HTTP/1.1 ${status}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
      if (!sameOrigin(request)) return void refuse('403 Forbidden');
      seatOf(request).then(
        (found) => server.handleUpgrade(request, socket, head, (ws) => seat(ws, request, found)),
        () => refuse('503 Service Unavailable'),
      );
    },
    async close() {
      clearInterval(timer);
      await stopListening();
      const writing = connections().map((one) => one.waitForPendingMessages());
      for (const socket of server.clients) socket.close(1001, 'closing');
      await Promise.all(writing);
      for (const socket of server.clients) socket.terminate();
      server.close();
    },
  };
}

function toRequest({ headers, url }: IncomingMessage): Request {
  const plain = Object.entries(headers).flatMap(([name, value]) =>
    value === undefined ? [] : [[name, String(value)]],
  );
  return new Request(`http://${headers.host}${url ?? '/'}`, { headers: plain as [string, string][] });
}
