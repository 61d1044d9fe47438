/** Sooner than this there is nothing to tell; afterwards the line is written anew so often, ms. */
const PATIENCE = 1_000;
const EVERY = 200;

type Screen = { readonly isTTY?: boolean; readonly write: (text: string) => unknown };

/** One line about a run that takes long, gone again when it ends. Nothing where no person looks. `now`: ms. */
export function progress(
  all: number,
  screen: Screen,
  now: () => number,
): { readonly at: (done: number) => void; readonly end: () => void } {
  if (!screen.isTTY) return { at: () => {}, end: () => {} };
  let next = now() + PATIENCE;
  let written = false;
  return {
    at(done) {
      if (now() < next) return;
      next = now() + EVERY;
      written = true;
      screen.write(`\r${done} of ${all} procedures checked; Ctrl-C stops`);
    },
    end() {
      if (written) screen.write('\r\u001B[2K');
    },
  };
}
