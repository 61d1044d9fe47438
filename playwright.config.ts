import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { defineConfig } from '@playwright/test';
import { findChromium } from './lib/boot/chromium.ts';

// This file is read again by every worker: the first reading decides, the others find it in the environment. The data
// folder goes when the runner does; by then it has stopped the server.
const FIRST_PORT = 20_000;
const PORTS = 10_000;
if (!process.env.CUEWRIGHT_E2E_DATA) {
  process.env.CUEWRIGHT_E2E_PORT = String(FIRST_PORT + (process.pid % PORTS));
  const folder = path.join(os.tmpdir(), `cuewright-e2e-${process.pid}`);
  process.env.CUEWRIGHT_E2E_DATA = folder;
  process.on('exit', () => fs.rmSync(folder, { recursive: true, force: true }));
}
const port = String(process.env.CUEWRIGHT_E2E_PORT);
const url = `http://localhost:${port}`;

export default defineConfig({
  testDir: 'e2e',
  workers: 2,
  retries: 0,
  forbidOnly: true,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  use: {
    baseURL: url,
    screenshot: 'only-on-failure',
    viewport: { width: 1440, height: 900 },
    locale: 'en-GB',
    timezoneId: 'UTC',
    launchOptions: {
      executablePath: findChromium(),
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
  // The starts, the typing and the slider are timed, so they run before the journeys and not beside them.
  projects: [
    { name: 'starts', testMatch: 'start.spec.ts' },
    { name: 'speed', testMatch: 'speed.spec.ts', dependencies: ['starts'] },
    { name: 'journeys', testIgnore: ['start.spec.ts', 'speed.spec.ts'], dependencies: ['speed'] },
  ],
  webServer: {
    command: `"${path.join(import.meta.dirname, 'node_modules', 'node', 'bin', 'node')}" lib/boot/up.ts --demo`,
    url: `${url}/healthz`,
    env: {
      PORT: port,
      HOST: '127.0.0.1',
      CUEWRIGHT_DATA: String(process.env.CUEWRIGHT_E2E_DATA),
      DATABASE_URL: '',
      NEXTAUTH_URL: '',
    },
    timeout: 480_000,
    gracefulShutdown: { signal: 'SIGTERM', timeout: 20_000 },
    stdout: 'ignore',
    stderr: 'pipe',
  },
});
