// Passwords: argon2id, and the limit on guesses. An unknown name costs the same work and gets the same answer.

import { hash, verify } from '@node-rs/argon2';
import { err, ok, type Result } from '../base/result.ts';
import { now } from './clock.ts';
import { type Tx, transaction } from './db.ts';
import { type Problem, problem } from './errors.ts';
import { said } from './said.ts';
import { type Viewer, within } from './within.ts';

/** Memory in KiB and passes, as the OWASP cheat sheet has them for argon2id (its second row). */
const COST = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;
/** More failures than this for one name in the window, and further attempts wait. */
export const FAILURES_ALLOWED = 5;
export const FAILURE_WINDOW_MS = 15 * 60_000;

export const LEAST_PASSWORD = 10;

export const hashPassword = (password: string): Promise<string> => hash(password.normalize('NFC'), COST);

let decoy: Promise<string> | undefined;

/** Compares with `stored`, or with a decoy of the same cost when there is none. */
export async function passwordMatches(stored: string | null, password: string): Promise<boolean> {
  decoy ??= hashPassword(crypto.randomUUID());
  const matches = await verify(stored ?? (await decoy), password.normalize('NFC'));
  return stored !== null && matches;
}

/** Names are compared without regard to case or surrounding space. */
export const typedName = (name: string): string => said(name).toLowerCase().slice(0, 200);

export type Attempt = 'right' | 'wrong' | 'too many';

/**
 * Tries a password for a typed name. Its failures are stored in a transaction of their own, so that no refusal of the act
 * they belong to can undo them; the count and the new failure share one lock, so that a volley of attempts gets no more.
 */
export async function attempt(typed: string, stored: string | null, password: string): Promise<Attempt> {
  const matches = await passwordMatches(stored, password);
  return transaction({ signing_in: typed }, async (tx) => {
    await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${typed}, 1))`;
    const at = now();
    const since = new Date(at.getTime() - FAILURE_WINDOW_MS);
    if ((await countSince(tx, typed, since)) >= FAILURES_ALLOWED) return 'too many';
    if (matches) {
      await tx.signInFailure.deleteMany({ where: { typed } });
      return 'right';
    }
    await tx.signInFailure.deleteMany({ where: { typed, failedAt: { lt: since } } });
    await tx.signInFailure.create({ data: { typed, failedAt: at }, select: { id: true } });
    return 'wrong';
  });
}

const countSince = (tx: Tx, typed: string, since: Date): Promise<number> =>
  tx.signInFailure.count({ where: { typed, failedAt: { gt: since } } });

/** Asks the viewer for their own password again. Counts with the failures of sign-in. */
export async function confirmPassword(viewer: Viewer, password: string): Promise<Result<null, Problem>> {
  const known = await within(viewer, (tx, standing) =>
    tx.person.findUniqueOrThrow({ where: { id: standing.personId }, include: { password: true } }),
  );
  if (!known.ok) return known;
  const tried = await attempt(known.value.signInName, known.value.password?.hash ?? null, password);
  if (tried === 'right') return ok(null);
  return err(problem(tried === 'wrong' ? 'wrong-password' : 'too-many-attempts'));
}
