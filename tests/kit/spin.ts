// Asks the model checker SPIN, where it is installed: `apt-get install -y spin gcc`.
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const answers = (command: string, argument: string): boolean => spawnSync(command, [argument]).status === 0;
export const SPIN = answers('spin', '-V') && answers('gcc', '--version');
export const WITHOUT_SPIN = 'SPIN is not installed here: its answers were not compared (skipped)';
if (!SPIN) console.log(WITHOUT_SPIN);

export type SpinAnswer = {
  readonly states: number;
  readonly transitions: number;
  readonly errors: number;
  /** Seconds of the search, and of everything from the model to the answer. */
  readonly search: number;
  readonly whole: number;
};

const numberIn = (text: string, pattern: RegExp): number => Number(pattern.exec(text)?.[1] ?? Number.NaN);

/** Depth of the search, and bits of the hash table: for some ten thousand states, and for some millions. */
const SMALL = ['-m100000', '-w16'];
export const LARGE = ['-m1000000', '-w22'];

/** Safety, no partial-order reduction; errors are counted and do not end the search. */
export function askSpin(model: string, optimise = '-O0', room = SMALL): SpinAnswer {
  const folder = mkdtempSync(join(tmpdir(), 'mode-spin-'));
  try {
    const began = performance.now();
    writeFileSync(join(folder, 'model.pml'), model);
    const run = (command: string, ...args: string[]): string =>
      execFileSync(command, args, {
        cwd: folder,
        encoding: 'utf8',
        stdio: ['ignore', 'pipe', 'pipe'],
        maxBuffer: 1 << 26,
      });
    // -o2: variables that are written before they are read again are kept apart; merged, they would be fewer states.
    run('spin', '-a', '-o2', 'model.pml');
    run('gcc', optimise, '-DSAFETY', '-DNOREDUCE', '-w', '-o', 'pan', 'pan.c');
    const searched = performance.now();
    const said = run('./pan', ...room, '-c0');
    const now = performance.now();
    return {
      states: numberIn(said, /(\d+) states, stored/),
      transitions: numberIn(said, /(\d+) transitions/),
      errors: numberIn(said, /errors: (\d+)/),
      search: (now - searched) / 1000,
      whole: (now - began) / 1000,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
