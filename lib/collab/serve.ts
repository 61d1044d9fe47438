/**
 * The collaboration server's door. It takes no connections yet.
 */
import type { IncomingMessage } from 'node:http';
import type { Duplex } from 'node:stream';

export type Collaboration = {
  upgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void;
  close(): Promise<void>;
};

/** Opens the collaboration server; `upgrade` takes over a socket, `close` ends when everything is written. */
export async function attach(): Promise<Collaboration> {
  return {
    upgrade: (_request, socket) => void socket.end('HTTP/1.1 503 Service Unavailable\r\n\r\n'),
    close: async () => {},
  };
}
