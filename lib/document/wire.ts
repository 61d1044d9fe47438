// What server and browser tell one another about a draft beside Yjs' own messages: JSON in Hocuspocus' "stateless"
// messages, and the codes with which a socket is closed. One file for both, so that they can't drift apart.
import { CHANGE_BYTES, DRAFT_BYTES } from './limits.ts';

/**
 * A fence: the browser asks to be told when everything it sent before is committed. Messages of a socket are taken in order,
 * so one answer stands for all of them, also for deletions, which a state vector doesn't show.
 */
export type ClientSays = { readonly kind: 'fence'; readonly upTo: number };

/**
 * `saved`: the database has COMMITTED all that this browser sent before its fence `upTo`; `at` is the server's time as ISO
 * 8601. `frozen`: the draft was submitted, it is read-only from now on and `next` is the draft to go on in, if there is one.
 */
export type ServerSays =
  | { readonly kind: 'saved'; readonly upTo: number; readonly at: string }
  | { readonly kind: 'frozen'; readonly next: string | null };

/** Close codes (4000 to 4999 are the application's). After `tooMany` and `again` the browser tries again by itself. */
export const CLOSED = {
  broken: 4400,
  revoked: 4401,
  notAllowed: 4403,
  tooLarge: 4413,
  full: 4414,
  tooMany: 4429,
  again: 4503,
} as const;

export const SENTENCES = {
  broken: 'The server could not read this change. What you typed is kept in this browser; load the page again.',
  revoked: 'You were signed out. What you typed is kept in this browser; sign in to send it.',
  notAllowed: 'You have no access to this draft any more. What you typed is kept in this browser.',
  tooLarge: CHANGE_BYTES.says,
  full: DRAFT_BYTES.says,
  frozen: 'This draft was submitted. It can be read here; changes go to the next draft.',
} as const;

/** Reason with which the server refuses to open a draft; they reach the client as `authenticationFailed`. */
export type Denied = 'signed-out' | 'no-access';

export const write = (says: ServerSays | ClientSays): string => JSON.stringify(says);

function parsed(payload: string): Record<string, unknown> {
  try {
    return (JSON.parse(payload) as Record<string, unknown> | null) ?? {};
  } catch {
    return {};
  }
}

/** What the server said, or null when it is from a newer server: then there is nothing to do. */
export function readServerSays(payload: string): ServerSays | null {
  const says = parsed(payload);
  const known = ['saved', 'frozen'].includes(String(says.kind));
  return known ? (says as ServerSays) : null;
}

/** What a browser said, or null: it may say anything. */
export function readClientSays(payload: string): ClientSays | null {
  const { kind, upTo } = parsed(payload);
  return kind === 'fence' && Number.isSafeInteger(upTo) ? { kind, upTo: upTo as number } : null;
}

/** What each person shows of themselves to the others; kept in memory alone. */
export type Presence = {
  readonly person: { readonly id: string; readonly name: string; readonly initials: string };
  /** The row and field with the caret, and where in it (code units), or null. */
  readonly at: { readonly row: string; readonly field: string; readonly caret: number | null } | null;
};
