/** A server of a spec's own, on a port and a data folder of its own: for specs that kill it, stop it or look behind it. */
import { type ChildProcess, spawn } from 'node:child_process';
import fs from 'node:fs';
import net, { type AddressInfo } from 'node:net';
import os from 'node:os';
import path from 'node:path';
import { ownEnvironment, ownNode, root } from '../../lib/boot/project.mjs';

const READY_MS = 300_000;

export type App = {
  readonly url: string;
  readonly folder: string;
  /** Everything it printed. */
  said(): string;
  /** Ends it without a chance to clear up. */
  kill(): Promise<void>;
  /** Ends it as Ctrl-C does; gives its exit code. */
  stop(): Promise<number | null>;
};

/** A data folder; remove it with `removeFolder` when no server uses it any more. */
export function makeFolder(): string {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'cuewright-spec-'));
  fs.chmodSync(folder, 0o711); // root's database runs as another account
  return folder;
}
export const removeFolder = (folder: string): void => fs.rmSync(folder, { recursive: true, force: true });

export async function freePort(): Promise<number> {
  const probe = net.createServer();
  await new Promise<void>((resolve) => probe.listen(0, '127.0.0.1', resolve));
  const { port } = probe.address() as AddressInfo;
  await new Promise((resolve) => probe.close(resolve));
  return port;
}

async function ended(child: ChildProcess): Promise<number | null> {
  if (child.exitCode !== null || child.signalCode !== null) return child.exitCode;
  return new Promise((resolve) => child.once('exit', (code) => resolve(code)));
}

/** Starts the server on `folder` and waits until it says that it is ready. */
export async function startApp(folder: string, port: number, extra: Record<string, string> = {}): Promise<App> {
  const own = {
    PORT: String(port),
    HOST: '127.0.0.1',
    CUEWRIGHT_DATA: folder,
    DATABASE_URL: '',
    NEXTAUTH_URL: '',
    NEXTAUTH_SECRET: '',
  };
  const env = ownEnvironment({ ...own, NODE_OPTIONS: '', ...extra });
  const child = spawn(ownNode, [path.join(root, 'lib', 'boot', 'up.ts')], {
    cwd: root,
    env,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  await new Promise<void>((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error(`not ready in time:\n${said}`)), READY_MS);
    for (const stream of [child.stdout, child.stderr]) {
      stream.on('data', (chunk) => {
        said += chunk;
        if (!said.includes('Ctrl-C stops it.')) return;
        clearTimeout(timer);
        resolve();
      });
    }
    child.on('exit', () => {
      clearTimeout(timer);
      reject(new Error(`ended before it was ready:\n${said}`));
    });
  });
  return {
    url: `http://localhost:${port}`,
    folder,
    said: () => said,
    async kill() {
      child.kill('SIGKILL');
      await ended(child);
    },
    async stop() {
      child.kill('SIGINT');
      return ended(child);
    },
  };
}
