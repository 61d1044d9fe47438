// Founding an operator: the one act that nobody can be signed in for. For the seed and the command line, never a screen.
import { now } from './clock.ts';
import { transaction } from './db.ts';
import { addMember, type DatedRole } from './members.ts';
import { hashPassword } from './passwords.ts';
import { enter } from './record-entry.ts';

export type Founder = {
  readonly id: string;
  readonly name: string;
  readonly signInName: string;
  readonly title: string;
  readonly password: string;
  readonly roles: readonly DatedRole[];
};

/** Gives the operator's id, or null when an operator of that id is there already. All of it or nothing. */
export async function foundOperator(operator: { id: string; name: string; people: readonly Founder[] }) {
  const people = await Promise.all(
    operator.people.map(async ({ password, ...person }) => ({ ...person, passwordHash: await hashPassword(password) })),
  );
  const { id, name } = operator;
  return transaction({ operator: id }, async (tx) => {
    const at = now();
    if (await tx.operator.findUnique({ where: { id } })) return null;
    await tx.operator.create({ data: { id, name, createdAt: at } });
    await enter(tx, { operatorId: id, personId: null, at }, 'operator founded', id, {});
    for (const person of people) {
      await addMember(tx, { operatorId: id, at }, person);
      const roles = person.roles.map(({ role }) => role);
      await enter(tx, { operatorId: id, personId: null, at }, 'person added', person.id, { roles });
    }
    return id;
  });
}
