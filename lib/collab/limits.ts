// What one socket may send. A person types, pastes and moves; whatever sends more than this is no person.
import { CHANGE_BYTES } from '../document/limits.ts';

/** A message larger than this ends the socket before it is looked at; above what a change may have, to leave room to say so. */
export const MESSAGE_BYTES = 16_000_000;
/** Room for the addresses and kinds around a change. */
export const ENVELOPE_BYTES = 4_096;
export const fits = (message: Uint8Array): boolean => message.byteLength <= CHANGE_BYTES.most + ENVELOPE_BYTES;

/** Messages a socket may send at once, and how many of these come back each second. */
const BURST = 600;
const PER_SECOND = 150;
/** Characters of what a tab shows of itself. */
export const PRESENCE_CHARACTERS = 2_000;

/** Counts messages; `take` is false when there were too many. `now` in milliseconds. */
export class Meter {
  #left = BURST;
  #at: number;

  constructor(now: number) {
    this.#at = now;
  }

  take(now: number): boolean {
    this.#left = Math.min(BURST, this.#left + ((now - this.#at) / 1000) * PER_SECOND);
    this.#at = now;
    this.#left -= 1;
    return this.#left >= 0;
  }
}
