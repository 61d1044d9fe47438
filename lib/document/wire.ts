// What server and browser tell one another about a draft beside Yjs' own messages: JSON in Hocuspocus' "stateless"
// messages, and the codes with which a socket is closed. One file for both, so that they can't drift apart.

/**
 * Told by the server. `saved`: the database has COMMITTED a change of this client; `seq` is its number in the draft's
 * journal, `at` the server's time as ISO 8601. `refused`: the change was not taken over. `frozen`: the draft was submitted,
 * it is read-only from now on and `next` is the draft to go on in, if there is one. `revoked`: the session has ended.
 */
export type ServerSays =
  | { readonly kind: 'saved'; readonly seq: number; readonly at: string }
  | { readonly kind: 'refused'; readonly sentence: string }
  | { readonly kind: 'frozen'; readonly next: string | null; readonly sentence: string }
  | { readonly kind: 'revoked'; readonly sentence: string };

/** Close codes (4000 to 4999 are the application's). With each the client stops trying again by itself. */
export const CLOSED = {
  revoked: 4401,
  notAllowed: 4403,
  tooLarge: 4413,
  tooMany: 4429,
} as const;

export const SENTENCES = {
  revoked: 'You were signed out. What you typed is kept in this browser; sign in to send it.',
  notAllowed: 'You have no access to this draft any more. What you typed is kept in this browser.',
  tooMany: 'Too many changes at once. What you typed is kept in this browser and is sent again in a moment.',
  frozen: 'This draft was submitted. It can be read here; changes go to the next draft.',
  readOnly: 'You may read this draft, not change it.',
  broken: 'This change could not be read by the server. What you typed is kept in this browser; load the page again.',
} as const;

/** Path of the one socket; the draft's id is the document's name. */
export const COLLAB_PATH = '/collab';

/** Reason with which the server refuses to open a draft; they reach the client as `authenticationFailed`. */
export type Denied = 'signed-out' | 'no-access';

export const write = (says: ServerSays): string => JSON.stringify(says);

/** What the server said, or null when it is from a newer server: then there is nothing to do. */
export function readServerSays(payload: string): ServerSays | null {
  try {
    const says = JSON.parse(payload) as Partial<ServerSays>;
    const known = ['saved', 'refused', 'frozen', 'revoked'].includes(String(says.kind));
    return known ? (says as ServerSays) : null;
  } catch {
    return null;
  }
}

/** What each person shows of themselves to the others; kept in memory alone. */
export type Presence = {
  readonly person: { readonly id: string; readonly name: string; readonly initials: string };
  /** The row and field with the caret, and where in it (code units), or null. */
  readonly at: { readonly row: string; readonly field: string; readonly caret: number | null } | null;
};
