// From the machine's Node to the project's own: install what is missing, run the real program, pass on signals and its end.
import { spawn } from 'node:child_process';
import path from 'node:path';
import { install } from './install.mjs';
import { ownEnvironment, ownNode, root } from './project.mjs';

const WATCH_MS = 500;

/** @param {string} program a file of this folder @param {readonly string[]} args */
export async function handOver(program, args) {
  try {
    await install();
  } catch (error) {
    console.error(
      `\n${error.code === 'ENOSPC' ? 'The disk is full. Free about 2 GB, then run the same command again.' : error.message}`,
    );
    process.exitCode = 1;
    return;
  }
  // The channel tells the program when this process dies, however that happens.
  const child = spawn(ownNode, [path.join(root, 'lib', 'boot', program), ...args], {
    cwd: root,
    env: ownEnvironment(),
    stdio: ['inherit', 'inherit', 'inherit', 'ipc'],
  });
  // Ctrl-C reaches the whole group by itself; this process only waits until the other has cleared up.
  process.on('SIGINT', () => {});
  for (const signal of ['SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill('SIGTERM'));
  // A signal to npm ends npm and its shell but does not come through to here: their end is the sign.
  const parent = process.ppid;
  const watch = setInterval(() => {
    if (process.env.npm_lifecycle_event && process.ppid !== parent) child.kill('SIGTERM');
  }, WATCH_MS);
  watch.unref();
  process.exitCode = await new Promise((resolve) => {
    child.on('error', (error) => {
      console.error(error.message);
      resolve(1);
    });
    child.on('exit', (code, signal) => resolve(code ?? (signal ? 1 : 0)));
  });
}
