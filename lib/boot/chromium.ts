/**
 * The browser of the end-to-end tests: Debian's Chromium, installed when that can be done without asking.
 */
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';

const CANDIDATES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

export const findChromium = (): string | undefined => CANDIDATES.find((file) => fs.existsSync(file));

/** What a person must type where it cannot be installed for them. */
export const HOW = 'apt-get install -y chromium';

/** The browser's path; installs it first when this is root on a Debian machine. */
export function haveChromium(): string | undefined {
  const found = findChromium();
  if (found || process.getuid?.() !== 0 || !fs.existsSync('/usr/bin/apt-get')) return found;
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  spawnSync('apt-get', ['update', '-qq'], { env, stdio: 'ignore' });
  spawnSync('apt-get', ['install', '-y', '-qq', 'chromium'], { env, stdio: 'ignore' });
  return findChromium();
}
