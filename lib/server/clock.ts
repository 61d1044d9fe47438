// The one clock of the server. Every time that is stored or compared comes from here, so a test or the seed can move it.

export type Clock = () => Date;

const system: Clock = () => new Date();
let clock = system;

export const now: Clock = () => clock();

/** Puts another clock in place and gives the deed that puts the system's back. For the seed and for tests. */
export function setClock(other: Clock): () => void {
  clock = other;
  return () => {
    clock = system;
  };
}
