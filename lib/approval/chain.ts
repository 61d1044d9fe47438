// The record as a hash chain. Signs bytes, and doesn't know what a procedure is. Every hash has a prefix that says what was
// hashed, so that no text can stand in for another kind of thing; whatever can't be understood is broken, never passed over.

/** SHA-256 as lower-case hex; given by the caller, since a browser and a server have different ones. */
export type Hash = (bytes: Uint8Array) => string;

/** One link: `body` is exactly the text that was hashed. */
export type Link = {
  readonly seq: number;
  readonly body: string;
  readonly previous: string;
  readonly hash: string;
};

/** What stands before the first entry. */
export const START = '0'.repeat(64);
const ENTRY = 'cuewright record entry 1';

/** The hash of one entry, over its place, its predecessor's hash and its text. */
export function hashOf(seq: number, previous: string, body: string, hash: Hash): string {
  return hash(new TextEncoder().encode(`${ENTRY}\n${seq}\n${previous}\n${body}`));
}

/** The link after `last` (null: the first). */
export function seal(last: Pick<Link, 'seq' | 'hash'> | null, body: string, hash: Hash): Link {
  const seq = last ? last.seq + 1 : 1;
  const previous = last ? last.hash : START;
  return { seq, body, previous, hash: hashOf(seq, previous, body, hash) };
}
