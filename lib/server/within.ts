// The one door to the tables for a signed-in person: one transaction, in which the rows decide who they are now.
import { err, ok, type Result } from '../base/result.ts';
import { now } from './clock.ts';
import { type Tx, transaction } from './db.ts';
import { type Problem, problem, Refused } from './errors.ts';
import type { Standing } from './permit.ts';
import type { Role } from './roles.ts';

/** Who asks. Names a session and nothing more: what the person may do is read anew in every transaction. */
export type Viewer = {
  readonly operatorId: string;
  readonly sessionId: string;
  readonly personId: string;
};

/** The person's standing at this moment, or null when the session is over. Also used to open a viewer. */
export async function standingOf(tx: Tx, operatorId: string, sessionId: string): Promise<Standing | null> {
  const at = now();
  const session = await tx.session.findUnique({
    where: { operatorId_id: { operatorId, id: sessionId } },
    include: { membership: { include: { roles: true } } },
  });
  if (!session || session.revokedAt || session.expiresAt <= at) return null;
  const { membership } = session;
  if (membership.endedAt && membership.endedAt <= at) return null;
  const roles = membership.roles
    .filter((grant) => grant.heldFrom <= at && (!grant.heldUntil || grant.heldUntil > at))
    .map((grant) => grant.role as Role);
  return { operatorId, personId: session.personId, roles, at };
}

/** The index that a unique violation names; driver adapters give it here and not in `meta.target`. */
function violated(error: unknown): string | null {
  const { code, meta } = error as { code?: string; meta?: Record<string, unknown> };
  if (code !== 'P2002') return null;
  return JSON.stringify(meta ?? {});
}

/** Runs `deed` as the viewer. A refusal undoes everything and is returned; what nobody foresaw is thrown on. */
export async function within<T>(
  viewer: Viewer,
  deed: (tx: Tx, standing: Standing) => Promise<T>,
): Promise<Result<T, Problem>> {
  try {
    return ok(
      await transaction({ operator: viewer.operatorId }, async (tx) => {
        const standing = await standingOf(tx, viewer.operatorId, viewer.sessionId);
        if (!standing || standing.personId !== viewer.personId) throw new Refused('signed-out');
        return deed(tx, standing);
      }),
    );
  } catch (error) {
    if (error instanceof Refused) return err(error.problem);
    // A name with a character that no text can hold, as an address may bring it, names nothing.
    if (String((error as Error).message).includes('`22021`')) return err(problem('unknown'));
    const index = violated(error);
    if (index?.includes('draft_one_open')) return err(problem('draft-open'));
    if (index?.includes('candidate_one_under_review')) return err(problem('already-under-review'));
    if (index) return err(problem('exists-already'));
    throw error;
  }
}

/** What every server function gives: its value, or the problem that undid it. */
export type Answered<T> = Promise<Result<T, Problem>>;
