// People of the operator: who they are, the roles they hold, and the end of both. For the administrator.
import type { Role } from './roles.ts';
import type { Answered, Viewer } from './within.ts';

export type PersonLine = {
  readonly personId: string;
  readonly name: string;
  readonly signInName: string;
  readonly active: boolean;
  readonly roles: readonly { readonly role: Role; readonly since: string }[];
  readonly openSessions: number;
};

export function people(_viewer: Viewer): Answered<readonly PersonLine[]> {
  throw new Error('not ready');
}

export function addPerson(
  _viewer: Viewer,
  _input: { name: string; signInName: string; password: string; roles: readonly Role[] },
): Answered<{ personId: string }> {
  throw new Error('not ready');
}

/** The roles held from now on; open sessions of the person end. */
export function setRoles(_viewer: Viewer, _personId: string, _roles: readonly Role[]): Answered<null> {
  throw new Error('not ready');
}

export function deactivate(_viewer: Viewer, _personId: string): Answered<null> {
  throw new Error('not ready');
}

export function revokeSessions(_viewer: Viewer, _personId: string): Answered<{ ended: number }> {
  throw new Error('not ready');
}

/** One's own password; the old one is asked. Other open sessions end. */
export function changePassword(_viewer: Viewer, _input: { old: string; new: string }): Answered<null> {
  throw new Error('not ready');
}
