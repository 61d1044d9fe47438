import { afterAll, beforeAll, expect, test } from 'vitest';
import { createProcedure } from '../../lib/server/drafts.ts';
import { addPerson, changePassword, deactivate, people, revokeSessions, setRoles } from '../../lib/server/people.ts';
import { signIn } from '../../lib/server/sign-in.ts';
import { welcome } from '../../lib/server/welcome.ts';
import { CHANGE, codeOf, type House, must, openHouse, PASSWORD } from './house.ts';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

const create = (viewer: Parameters<typeof createProcedure>[0]) =>
  codeOf(createProcedure(viewer, { title: 'A trial', change: CHANGE }));

test('a person is added, writes, loses the role and the session at once, and comes back without it', async () => {
  const { administrator } = house.people;
  const input = { name: 'New Pilot', signInName: 'new', title: 'Pilot', password: PASSWORD };
  expect(await codeOf(addPerson(administrator, { ...input, password: 'short', roles: [] }))).toBe('password-too-short');
  const { personId } = await must(addPerson(administrator, { ...input, roles: ['technical pilot'] }));
  expect(await codeOf(addPerson(administrator, { ...input, signInName: ' NEW ', roles: [] }))).toBe('name-taken');
  // The name is taken by a member of another operator, whom nobody here can see.
  expect(await codeOf(addPerson(administrator, { ...input, signInName: 'other everything', roles: [] }))).toBe(
    'name-taken',
  );
  const viewer = await must(signIn('new', PASSWORD));
  expect(await create(viewer)).toBe('done');
  await must(setRoles(administrator, personId, ['line pilot']));
  expect(await create(viewer)).toBe('signed-out');
  const again = await must(signIn('new', PASSWORD));
  expect(await create(again)).toBe('not-permitted');
  expect((await must(welcome(again))).may.write).toBe(false);
  const line = (await must(people(administrator))).find((person) => person.personId === personId);
  expect(line).toMatchObject({ active: true, openSessions: 1, roles: [{ role: 'line pilot' }] });
  expect(await must(revokeSessions(administrator, personId))).toEqual({ ended: 1 });
  expect(await codeOf(welcome(again))).toBe('signed-out');
});

test('a person who left cannot sign in, and the answer does not say why', async () => {
  const { administrator, second } = house.people;
  await must(deactivate(administrator, 'pe_second'));
  expect(await codeOf(welcome(second))).toBe('signed-out');
  expect(await signIn('second', PASSWORD)).toEqual(await signIn('never there', PASSWORD));
  expect(await codeOf(deactivate(administrator, 'pe_second'))).toBe('unknown');
});

test('someone can always administer', async () => {
  const { administrator, everything } = house.people;
  await must(setRoles(administrator, everything.personId, ['line pilot']));
  expect(await codeOf(setRoles(administrator, administrator.personId, ['auditor']))).toBe('last-administrator');
  expect(await codeOf(deactivate(administrator, administrator.personId))).toBe('last-administrator');
  expect(await codeOf(people(administrator))).toBe('done');
});

test('a changed password ends the other sessions and keeps this one', async () => {
  const { line } = house.people;
  const other = await must(signIn('line', PASSWORD));
  expect(await codeOf(changePassword(line, { old: 'not this', new: 'a longer new one' }))).toBe('wrong-password');
  await must(changePassword(line, { old: PASSWORD, new: 'a longer new one' }));
  expect(await codeOf(welcome(other))).toBe('signed-out');
  expect(await codeOf(welcome(line))).toBe('done');
  expect(await codeOf(signIn('line', PASSWORD))).toBe('sign-in-failed');
  expect(await codeOf(signIn('line', 'a longer new one'))).toBe('done');
});
