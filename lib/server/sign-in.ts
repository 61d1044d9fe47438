// Signing in and out. A session is a row; the token names it and says nothing else.
import { randomBytes } from 'node:crypto';
import { err, ok, type Result } from '../base/result.ts';
import { now } from './clock.ts';
import { transaction } from './db.ts';
import { type Problem, problem } from './errors.ts';
import { attempt, typedName } from './passwords.ts';
import { endSession } from './revocation.ts';
import type { Viewer } from './within.ts';

export const SESSION_MS = 12 * 60 * 60_000;

async function findPerson(typed: string) {
  return transaction({ signing_in: typed }, async (tx) => {
    const person = await tx.person.findUnique({ where: { signInName: typed }, include: { password: true } });
    return person && { id: person.id, hash: person.password?.hash ?? null };
  });
}

async function findMembership(personId: string) {
  return transaction({ person: personId }, (tx) =>
    tx.membership.findFirst({ where: { personId, endedAt: null }, orderBy: { since: 'asc' } }),
  );
}

/** Opens a session in the operator of the person's membership. Unknown name and wrong password give the same problem. */
export async function signIn(name: string, password: string): Promise<Result<Viewer, Problem>> {
  const typed = typedName(name);
  const person = await findPerson(typed);
  const membership = await findMembership(person?.id ?? '');
  const tried = await attempt(typed, membership ? (person?.hash ?? null) : null, password);
  if (tried === 'too many') return err(problem('too-many-attempts'));
  if (tried === 'wrong' || !person || !membership) return err(problem('sign-in-failed'));
  const { operatorId, personId } = membership;
  const id = randomBytes(24).toString('base64url');
  await transaction({ operator: operatorId }, async (tx) => {
    const at = now();
    const expiresAt = new Date(at.getTime() + SESSION_MS);
    await tx.session.create({ data: { operatorId, id, personId, startedAt: at, expiresAt } });
  });
  return ok({ operatorId, sessionId: id, personId });
}

export async function signOut(viewer: Viewer): Promise<void> {
  await transaction({ operator: viewer.operatorId }, async (tx) => {
    await endSession(tx, viewer.operatorId, viewer.sessionId, 'signed out');
  });
}
