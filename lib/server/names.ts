import type { Tx } from './db.ts';

/** Names by id. An erased name reads as such; the record keeps the id. */
export async function namesOf(tx: Tx, ids: Iterable<string | null>): Promise<(id: string | null) => string> {
  const wanted = [...new Set(ids)].filter((id): id is string => id !== null && id !== '');
  const people = await tx.person.findMany({ where: { id: { in: wanted } }, select: { id: true, name: true } });
  const names = new Map(people.map((person) => [person.id, person.name]));
  return (id) => (id === null ? 'the house' : (names.get(id) ?? 'name erased'));
}
