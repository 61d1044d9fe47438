/** Sooner than this there is nothing to tell; afterwards the line is written anew so often, ms. */
const PATIENCE = 1_000;
const EVERY = 200;

/** One line on standard error about a run that takes long, gone again when it ends. Nothing where no person looks. */
export function progress(all: number): { readonly at: (done: number) => void; readonly end: () => void } {
  if (!process.stderr.isTTY) return { at: () => {}, end: () => {} };
  let next = performance.now() + PATIENCE;
  let written = false;
  return {
    at(done) {
      const now = performance.now();
      if (now < next) return;
      next = now + EVERY;
      written = true;
      process.stderr.write(`\r${done} of ${all} procedures checked; Ctrl-C stops`);
    },
    end() {
      if (written) process.stderr.write('\r\u001B[2K');
    },
  };
}
