import type { IncomingMessage } from 'node:http';
import type { Denied } from '../document/wire.ts';
import { permitDraft } from '../server/journal.ts';
import { stillSignedIn, viewerOfCookie } from '../server/viewer.ts';
import type { Viewer } from '../server/within.ts';

/** What a socket knows of who is behind it. What they may do is asked again with every change. */
export type Seat = { readonly viewer: Viewer | null };

/** Browsers always say where a page came from: a page of another site may not use the cookie of this one. */
export function sameOrigin(request: IncomingMessage): boolean {
  const { origin, host } = request.headers;
  if (!origin || !host) return false;
  try {
    return new URL(origin).host === host;
  } catch {
    return false;
  }
}

/** Nobody is turned away at the upgrade: the browser would only see a broken socket and try for ever. */
export async function seatOf(request: IncomingMessage): Promise<Seat> {
  return { viewer: await viewerOfCookie(request.headers.cookie) };
}

/** Thrown to Hocuspocus, which gives the reason to the browser. It has no message: that would be logged as a failure. */
class Turned extends Error {
  readonly reason: Denied;
  constructor(reason: Denied) {
    super();
    this.reason = reason;
  }
}

/** Whether the draft opens for writing. Throws where it doesn't open at all. */
export async function admit(viewer: Viewer | null, draftId: string): Promise<'write' | 'read'> {
  if (!viewer) throw new Turned('signed-out');
  const permitted = await permitDraft(viewer, draftId);
  if (permitted) return permitted;
  throw new Turned((await stillSignedIn(viewer)) ? 'no-access' : 'signed-out');
}
