// Putting a person into an operator, inside a transaction: the person, the password, the membership, the dated roles.

import { setFor, type Tx } from './db.ts';
import { Refused } from './errors.ts';
import { newId } from './ids.ts';
import { typedName } from './passwords.ts';
import type { Role } from './roles.ts';
import { said } from './said.ts';

export type DatedRole = { readonly role: Role; readonly from: Date; readonly until: Date | null };

export type NewMember = {
  readonly id: string;
  readonly name: string;
  readonly signInName: string;
  readonly title: string;
  readonly passwordHash: string;
  readonly roles: readonly DatedRole[];
};

export async function addMember(
  tx: Tx,
  where: { readonly operatorId: string; readonly at: Date },
  member: NewMember,
): Promise<void> {
  const { operatorId, at } = where;
  const signInName = typedName(member.signInName);
  // A new row can be seen by its sign-in name alone until the membership is there.
  await setFor(tx, { signing_in: signInName });
  if (signInName === '' || (await tx.person.findUnique({ where: { signInName } }))) throw new Refused('name-taken');
  await tx.person.create({ data: { id: member.id, signInName, name: said(member.name), createdAt: at } });
  await tx.passwordCredential.create({ data: { personId: member.id, hash: member.passwordHash, changedAt: at } });
  await tx.membership.create({ data: { operatorId, personId: member.id, title: said(member.title), since: at } });
  await setFor(tx, { signing_in: '' });
  await grantRoles(tx, operatorId, member.id, member.roles);
}

export async function grantRoles(
  tx: Tx,
  operatorId: string,
  personId: string,
  roles: readonly DatedRole[],
): Promise<void> {
  await tx.roleGrant.createMany({
    data: roles.map(({ role, from, until }) => ({
      operatorId,
      id: newId('rg'),
      personId,
      role,
      heldFrom: from,
      heldUntil: until,
    })),
  });
}
