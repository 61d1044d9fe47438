// People of the operator: who they are, the roles they hold, and the end of both. For the administrator.
import { err } from '../base/result.ts';
import type { Tx } from './db.ts';
import { problem, Refused } from './errors.ts';
import { newId } from './ids.ts';
import { addMember, grantRoles } from './members.ts';
import { confirmPassword, hashPassword, LEAST_PASSWORD } from './passwords.ts';
import { permit, type Standing } from './permit.ts';
import { enter } from './record-entry.ts';
import { endSessions } from './revocation.ts';
import type { Role } from './roles.ts';
import { type Answered, type Viewer, within } from './within.ts';

export type PersonLine = {
  readonly personId: string;
  readonly name: string;
  readonly signInName: string;
  readonly title: string;
  readonly active: boolean;
  readonly roles: readonly { readonly role: Role; readonly since: string }[];
  readonly openSessions: number;
};

export function people(viewer: Viewer): Answered<readonly PersonLine[]> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'manage people');
    const { operatorId, at } = standing;
    const members = await tx.membership.findMany({
      where: { operatorId },
      include: {
        person: true,
        roles: { where: held(at), orderBy: { heldFrom: 'asc' } },
        sessions: { where: { revokedAt: null, expiresAt: { gt: at } }, select: { id: true } },
      },
    });
    const lines = members.map((member) => ({
      personId: member.personId,
      name: member.person.name,
      signInName: member.person.signInName,
      title: member.title,
      active: member.endedAt === null || member.endedAt > at,
      roles: member.roles.map((grant) => ({ role: grant.role as Role, since: grant.heldFrom.toISOString() })),
      openSessions: member.sessions.length,
    }));
    return lines.sort((a, b) => (a.name < b.name ? -1 : 1));
  });
}

export async function addPerson(
  viewer: Viewer,
  input: { name: string; signInName: string; title: string; password: string; roles: readonly Role[] },
): Answered<{ personId: string }> {
  if (input.password.length < LEAST_PASSWORD) return err(problem('password-too-short'));
  const passwordHash = await hashPassword(input.password);
  return within(viewer, async (tx, standing) => {
    permit(standing, 'manage people');
    const roles = input.roles.map((role) => ({ role, from: standing.at, until: null }));
    const personId = newId('pe');
    await addMember(tx, standing, { ...input, id: personId, passwordHash, roles });
    await enter(tx, standing, 'person added', personId, { roles: input.roles });
    return { personId };
  });
}

/** The roles held from now on; open sessions of the person end. */
export function setRoles(viewer: Viewer, personId: string, roles: readonly Role[]): Answered<null> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'manage people');
    const { operatorId, at } = standing;
    await findMember(tx, standing, personId);
    const grants = await tx.roleGrant.findMany({ where: { operatorId, personId, ...held(at) } });
    const ended = grants.filter((grant) => !roles.includes(grant.role as Role));
    const added = roles.filter((role) => !grants.some((grant) => grant.role === role));
    await endGrants(tx, standing, ended);
    await grantRoles(
      tx,
      operatorId,
      personId,
      added.map((role) => ({ role, from: at, until: null })),
    );
    await refuseWithoutAdministrator(tx, standing);
    if (ended.length + added.length > 0) {
      await endSessions(tx, { operatorId, personId }, 'roles changed');
      await enter(tx, standing, 'roles set', personId, { roles: [...roles] });
    }
    return null;
  });
}

export function deactivate(viewer: Viewer, personId: string): Answered<null> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'manage people');
    const { operatorId, at } = standing;
    await findMember(tx, standing, personId);
    await tx.membership.update({
      where: { operatorId_personId: { operatorId, personId } },
      data: { endedAt: at },
      select: { personId: true },
    });
    await endGrants(tx, standing, await tx.roleGrant.findMany({ where: { operatorId, personId, ...held(at) } }));
    await refuseWithoutAdministrator(tx, standing);
    await endSessions(tx, { operatorId, personId }, 'deactivated');
    await enter(tx, standing, 'person deactivated', personId, {});
    return null;
  });
}

export function revokeSessions(viewer: Viewer, personId: string): Answered<{ ended: number }> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'manage people');
    await findMember(tx, standing, personId);
    const ended = await endSessions(tx, { operatorId: standing.operatorId, personId }, 'ended by an administrator');
    await enter(tx, standing, 'sessions ended', personId, { ended });
    return { ended };
  });
}

/** One's own password; the old one is asked. Other open sessions end. */
export async function changePassword(viewer: Viewer, input: { old: string; new: string }): Answered<null> {
  if (input.new.length < LEAST_PASSWORD) return err(problem('password-too-short'));
  const confirmed = await confirmPassword(viewer, input.old);
  if (!confirmed.ok) return confirmed;
  const hash = await hashPassword(input.new);
  return within(viewer, async (tx, { operatorId, personId, at }) => {
    await tx.passwordCredential.update({
      where: { personId },
      data: { hash, changedAt: at },
      select: { personId: true },
    });
    await endSessions(tx, { operatorId, personId }, 'password changed', viewer.sessionId);
    await enter(tx, { operatorId, personId, at }, 'password changed', personId, {});
    return null;
  });
}

const held = (at: Date) => ({ heldFrom: { lte: at }, OR: [{ heldUntil: null }, { heldUntil: { gt: at } }] });

async function findMember(tx: Tx, { operatorId, at }: Standing, personId: string): Promise<void> {
  const member = await tx.membership.findUnique({ where: { operatorId_personId: { operatorId, personId } } });
  if (!member || (member.endedAt && member.endedAt <= at)) throw new Refused('unknown');
}

async function endGrants(tx: Tx, standing: Standing, grants: readonly { id: string }[]): Promise<void> {
  await tx.roleGrant.updateMany({
    where: { operatorId: standing.operatorId, id: { in: grants.map((grant) => grant.id) } },
    data: { heldUntil: standing.at },
  });
}

async function refuseWithoutAdministrator(tx: Tx, { operatorId, at }: Standing): Promise<void> {
  const left = await tx.roleGrant.count({
    where: { operatorId, role: 'administrator', ...held(at), membership: { endedAt: null } },
  });
  if (left === 0) throw new Refused('last-administrator');
}
