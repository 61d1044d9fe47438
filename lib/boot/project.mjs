// Where the checkout is and what it is called. Built-ins only: the first start reads this before anything is installed.
import crypto from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The checkout, with links resolved, so that one checkout has one data folder however it is reached. */
export const root = fs.realpathSync(fileURLToPath(new URL('../..', import.meta.url)));

/** The Node that the project brings along; the one on the machine only has to be able to install it. */
export const ownNode = path.join(
  root,
  'node_modules',
  'node',
  'bin',
  process.platform === 'win32' ? 'node.exe' : 'node',
);

/** @param {string} text @param {number} length */
export const shortHash = (text, length = 10) => crypto.createHash('sha256').update(text).digest('hex').slice(0, length);

/** The environment for child processes: the project's own Node and tools come first. @returns {Record<string, string>} */
export function ownEnvironment(extra = {}) {
  const bin = path.join(root, 'node_modules', '.bin');
  // Compiled code is kept between starts, which halves the work of starting.
  const compiled = path.join(root, 'node_modules', '.cache', 'compiled');
  const paths = [path.dirname(ownNode), bin, process.env.PATH ?? ''];
  return {
    ...process.env,
    PATH: paths.join(path.delimiter),
    NEXT_TELEMETRY_DISABLED: '1',
    CHECKPOINT_DISABLE: '1',
    NODE_COMPILE_CACHE: compiled,
    ...extra,
  };
}
