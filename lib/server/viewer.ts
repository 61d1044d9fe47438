// From a request to a viewer. The token carries a session id only; the rows say the rest, every time.

import { decode } from 'next-auth/jwt';
import { transaction } from './db.ts';
import { secureCookies, sessionSecret } from './env.ts';
import { standingOf, type Viewer } from './within.ts';

export const sessionCookie = (): string => `${secureCookies() ? '__Secure-' : ''}next-auth.session-token`;

/** The token's words for a session: operator and session id, neither of which can be chosen without the secret. */
export const sessionName = (viewer: Viewer): string => `${viewer.operatorId}/${viewer.sessionId}`;

async function viewerOfName(name: unknown): Promise<Viewer | null> {
  if (typeof name !== 'string') return null;
  const [operatorId = '', sessionId = ''] = name.split('/');
  const standing = await transaction({ operator: operatorId }, (tx) => standingOf(tx, operatorId, sessionId));
  return standing && { operatorId, sessionId, personId: standing.personId };
}

export async function viewerOfToken(token: string | undefined): Promise<Viewer | null> {
  if (!token) return null;
  const claims = await decode({ token, secret: sessionSecret() }).catch(() => null);
  return viewerOfName(claims?.session);
}

/** The viewer of a socket: from the `Cookie` header of its upgrade request. */
export async function viewerOfCookie(header: string | undefined): Promise<Viewer | null> {
  const name = `${sessionCookie()}=`;
  const cookie = (header ?? '').split(';').map((part) => part.trim());
  const found = cookie.find((part) => part.startsWith(name));
  return viewerOfToken(found?.slice(name.length));
}

/** The viewer of the Next request being answered, or null when nobody is signed in. */
export async function viewer(): Promise<Viewer | null> {
  const { cookies } = await import('next/headers');
  return viewerOfToken((await cookies()).get(sessionCookie())?.value);
}

/** Whether the session still stands; for sockets, after a gap in what they heard. */
export async function stillSignedIn(viewer: Viewer): Promise<boolean> {
  return (await viewerOfName(sessionName(viewer))) !== null;
}
