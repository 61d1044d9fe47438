// Edits that the database has not yet committed, kept in this browser: written at once, so that a tab that is closed the
// moment after a key still has them, and read again by the next tab of the same person on the same draft.
import * as Y from 'yjs';

/** What of `localStorage` is needed; a test gives its own. */
export type Shelf = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

/** Entries beyond this are merged into one. */
const MERGE_FROM = 64;

const toText = (bytes: Uint8Array) => btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
const toBytes = (text: string) => Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));

export class Unsent {
  readonly #shelf: Shelf;
  readonly #prefix: string;
  readonly #tab: string;
  /** Key on the shelf by the number of the edit; one key may stand for several. */
  #entries: { readonly upTo: number; readonly count: number; readonly key: string }[] = [];
  #last = 0;
  /** False once the browser had no room: then edits live in this tab alone, and the screen must say so. */
  roomy = true;

  constructor(shelf: Shelf, personId: string, draftId: string, tab: string) {
    this.#shelf = shelf;
    this.#prefix = `cuewright.unsent.${personId}.${draftId}.`;
    this.#tab = tab;
  }

  /** The number of the latest edit: a fence with it covers all before. */
  get last(): number {
    return this.#last;
  }
  get count(): number {
    return this.#entries.reduce((sum, one) => sum + one.count, 0);
  }

  /** What earlier tabs left. Each becomes an entry of this one; edits are the same however often they are applied. */
  adopt(): Uint8Array[] {
    const keys = Array.from({ length: this.#shelf.length }, (_, i) => this.#shelf.key(i));
    return keys.flatMap((key) => {
      const text = key?.startsWith(this.#prefix) ? this.#shelf.getItem(key) : null;
      if (!key || !text) return [];
      this.#entries.push({ upTo: ++this.#last, count: 1, key });
      return [toBytes(text)];
    });
  }

  add(update: Uint8Array): void {
    const key = `${this.#prefix}${this.#tab}.${++this.#last}`;
    this.#entries.push({ upTo: this.#last, count: 1, key });
    this.#put(key, update);
    if (this.#entries.length > MERGE_FROM) this.#merge();
  }

  #put(key: string, update: Uint8Array): void {
    try {
      this.#shelf.setItem(key, toText(update));
    } catch {
      this.roomy = false;
    }
  }

  #merge(): void {
    const kept = this.#entries.map((one) => this.#shelf.getItem(one.key));
    if (kept.some((text) => text === null)) return;
    const { key } = this.#entries[0]!;
    this.#put(key, Y.mergeUpdates(kept.map((text) => toBytes(text!))));
    for (const one of this.#entries.slice(1)) this.#shelf.removeItem(one.key);
    this.#entries = [{ upTo: this.#last, count: this.count, key }];
  }

  /** Forgets what is committed. */
  drop(upTo: number): void {
    for (const one of this.#entries) if (one.upTo <= upTo) this.#shelf.removeItem(one.key);
    this.#entries = this.#entries.filter((one) => one.upTo > upTo);
    if (this.#entries.length === 0) this.roomy = true;
  }
}
