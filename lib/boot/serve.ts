/**
 * The one process that serves: Next's pages and the collaboration sockets on one port. It knows addresses and signals,
 * nothing of what is served.
 */
import { EventEmitter } from 'node:events';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import next from 'next';
import { attach } from '../collab/serve.ts';
import { whyNotListening } from './port.ts';
import { root } from './project.mjs';

export type Served = {
  readonly port: number;
  /** Stops taking requests, lets the collaboration server finish its writing, then ends. */
  stop(): Promise<void>;
};

const COLLAB = '/collab';
const pathOf = (request: IncomingMessage): string => (request.url ?? '/').split('?')[0] ?? '/';

const isLoopbackName = (name: string): boolean => name === '127.0.0.1' || name === 'localhost' || name === '[::1]';

/**
 * Where a page request belongs that came in under another of this machine's names: cookies and the socket's origin hold for
 * one name only.
 */
export function properAddress(request: Pick<IncomingMessage, 'headers' | 'method' | 'url'>, home: string | undefined) {
  const { host } = request.headers;
  if (!request.url?.startsWith('/')) return undefined;
  if (!home || !host || request.method !== 'GET' || !URL.canParse(home) || !URL.canParse(`http://${host}`))
    return undefined;
  const proper = new URL(home);
  const asked = new URL(`http://${host}`);
  if (asked.host === proper.host || !isLoopbackName(asked.hostname) || !isLoopbackName(proper.hostname))
    return undefined;
  return asked.port === proper.port ? `${proper.origin}${request.url}` : undefined;
}

/** Serves on `host`:`port`; `dev` is Next's development mode. Throws a `Refusal` when it cannot listen. */
export async function serve({ dev, host, port }: { dev: boolean; host: string; port: number }): Promise<Served> {
  // Next hangs a listener of its own for socket upgrades on the server it is given. It gets a stand-in instead, and only
  // those requests that are not the collaboration server's.
  const nextUpgrades = new EventEmitter();
  const app = next({ dev, dir: root, hostname: host, port, httpServer: nextUpgrades as unknown as Server });
  const collab = await attach();
  await app.prepare();
  const handle = app.getRequestHandler();

  const answer = (request: IncomingMessage, response: ServerResponse): void => {
    if (pathOf(request) === '/healthz') {
      response.writeHead(200, { 'content-type': 'application/json', 'cache-control': 'no-store' });
      response.end(JSON.stringify({ name: 'cuewright', ok: true }));
      return;
    }
    const proper = properAddress(request, process.env.NEXTAUTH_URL);
    if (proper) {
      response.writeHead(307, { location: proper });
      response.end();
      return;
    }
    void handle(request, response);
  };

  const server = createServer(answer);
  server.on('upgrade', (request, socket, head) => {
    socket.on('error', () => socket.destroy());
    if (pathOf(request) === COLLAB) collab.upgrade(request, socket, head);
    else if (!dev || !nextUpgrades.emit('upgrade', request, socket, head)) socket.destroy();
  });
  try {
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject);
      server.listen(port, host, resolve);
    });
  } catch (error) {
    throw await whyNotListening(error as NodeJS.ErrnoException, host, port);
  }

  return {
    port: (server.address() as AddressInfo).port,
    async stop() {
      server.close();
      await collab.close();
      server.closeAllConnections();
      await app.close();
    },
  };
}
