// How a change that is not taken over ends the socket that sent it: what it sends afterwards would build on it.
import type { Connection } from '@hocuspocus/server';
import { DRAFT_BYTES } from '../document/limits.ts';
import { CLOSED } from '../document/wire.ts';
import type { Problem } from '../server/errors.ts';

export type Ending = { readonly code: number; readonly reason: string };

export const broken: Ending = { code: CLOSED.broken, reason: 'unreadable' };
export const revoked: Ending = { code: CLOSED.revoked, reason: 'signed-out' };
export const notAllowed: Ending = { code: CLOSED.notAllowed, reason: 'no-access' };
export const tooLarge: Ending = { code: CLOSED.tooLarge, reason: 'too-large' };
export const full: Ending = { code: CLOSED.full, reason: 'full' };
export const tooMany: Ending = { code: CLOSED.tooMany, reason: 'too-many' };
/** The database did not answer: nothing was lost, the browser sends it again. */
export const again: Ending = { code: CLOSED.again, reason: 'try-again' };

/** A closed draft stays open to read; everything else ends the socket. */
export function refusal({ code, details }: Problem): Ending | 'frozen' {
  if (code === 'draft-closed') return 'frozen';
  if (code === 'signed-out') return revoked;
  if (code === 'too-large') return details.includes(DRAFT_BYTES.says) ? full : tooLarge;
  if (code === 'not-understood') return broken;
  if (code === 'not-permitted' || code === 'unknown') return notAllowed;
  return again;
}

/** Closes the socket itself: Hocuspocus' own closing only sends a message, and the socket could come back with it. */
export function closing(connection: Connection, ending: Ending): Error & Ending {
  connection.webSocket.close(ending.code, ending.reason);
  return Object.assign(new Error(ending.reason), ending);
}
