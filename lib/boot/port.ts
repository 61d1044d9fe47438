/**
 * Whether the address to serve at is free, asked before the long work begins; if not, the sentence that helps.
 */
import net from 'node:net';
import { Refusal } from './refusal.ts';

const LOOPBACK = new Set(['127.0.0.1', 'localhost', '::1']);

/** An address that only this machine reaches. */
export const isLocal = (host: string): boolean => LOOPBACK.has(host);

/** PORT as a number from 1 to 65535; 3000 when not set. */
export function portFrom(text: string | undefined): number {
  const port = Number(text || 3000);
  if (!Number.isInteger(port) || port < 1 || port > 65_535) {
    throw new Refusal(
      `PORT is "${text}", which is not a port. Use a whole number from 1 to 65535, such as PORT=3001 npm start.`,
    );
  }
  return port;
}

async function isCuewright(port: number): Promise<boolean> {
  try {
    const answer = await fetch(`http://127.0.0.1:${port}/healthz`, { signal: AbortSignal.timeout(1000) });
    return ((await answer.json()) as { name?: string }).name === 'cuewright';
  } catch {
    return false;
  }
}

/** The sentence for a failure to listen. */
export async function whyNotListening(error: NodeJS.ErrnoException, host: string, port: number): Promise<Refusal> {
  const another = `PORT=${port === 65_535 ? 3001 : port + 1} npm start`;
  if (error.code === 'EADDRINUSE') {
    if (await isCuewright(port)) {
      return new Refusal(
        `Cuewright is already running at http://localhost:${port}. Open that, or start another with ${another}.`,
      );
    }
    return new Refusal(`Port ${port} is taken by another program. Stop that program, or use another port: ${another}`);
  }
  if (error.code === 'EACCES')
    return new Refusal(`This account may not use port ${port}. Use a higher one: PORT=3000 npm start`);
  if (error.code === 'EADDRNOTAVAIL' || error.code === 'ENOTFOUND') {
    return new Refusal(`This machine has no address ${host}. Set HOST to one of its own, or leave it out.`);
  }
  return new Refusal(`Cannot listen on ${host}:${port}: ${error.message}`);
}

/** Refuses, with the sentence, when `host`:`port` cannot be listened on. */
export async function checkPort(host: string, port: number): Promise<void> {
  const trial = net.createServer();
  try {
    await new Promise<void>((resolve, reject) => {
      trial.once('error', reject);
      trial.listen(port, host, resolve);
    });
  } catch (error) {
    throw await whyNotListening(error as NodeJS.ErrnoException, host, port);
  } finally {
    trial.close();
  }
}
