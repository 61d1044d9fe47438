// What must be there before anybody writes: the operator and its people, fleet, sheet, policy, library.
import { parse } from 'yaml';
import { readFleetFile, readPeopleFile } from '../lib/file/people-file.ts';
import { addFleet, addTail, fleets, importSheetRevision, releaseTail, sheetRevisions } from '../lib/server/aircraft.ts';
import { foundOperator } from '../lib/server/found.ts';
import { importLibraryFile } from '../lib/server/library.ts';
import { addPolicyVersion, policies } from '../lib/server/policies.ts';
import { signIn } from '../lib/server/sign-in.ts';
import type { Viewer } from '../lib/server/within.ts';
import { must } from './must.ts';

export type Files = { readonly text: (name: string) => string; readonly yamlIn: (folder: string) => string[] };

/** Signs a person in by the sign-in name; each call is a new session at the clock's time. */
export type People = (signInName: string) => Promise<Viewer>;

const OPERATOR = 'op_skarrowmere';
const POLICY = 'library/policy.yaml';

export async function putInBasis({ text, yamlIn }: Files): Promise<People> {
  const people = readPeopleFile(text('people.yaml'), 'people.yaml');
  const fleet = readFleetFile(text('fleet.yaml'), 'fleet.yaml');
  if (!people.ok || !fleet.ok) throw new Error('people.yaml or fleet.yaml could not be read');
  const password = text('demo-password.txt').trim();
  const at = (day: string) => new Date(`${day}T00:00:00Z`);
  await foundOperator({
    id: OPERATOR,
    name: fleet.value.operator,
    people: people.value.map((person) => ({
      id: person.id,
      name: person.name,
      signInName: person.signIn,
      title: person.title,
      password,
      roles: person.roles.map(({ role, from, until }) => ({ role, from: at(from), until: until ? at(until) : null })),
    })),
  });
  const signedIn: People = async (name) => must(await signIn(name, password));
  const administrator = await signedIn('quill');
  if (must(await policies(administrator)).length === 0) {
    const content: unknown = parse(text(POLICY));
    must(await addPolicyVersion(administrator, { content, reason: 'First policy of the operator' }));
  }
  if (must(await sheetRevisions(administrator)).length === 0) {
    for (const name of yamlIn('aircraft/')) {
      must(await importSheetRevision(administrator, { text: text(name), name }));
    }
  }
  for (const name of yamlIn('library/').filter((file) => file !== POLICY)) {
    must(await importLibraryFile(administrator, { text: text(name), name }));
  }
  await putInFleet(administrator, fleet.value);
  return signedIn;
}

type Fleet = Extract<ReturnType<typeof readFleetFile>, { ok: true }>['value'];

async function putInFleet(administrator: Viewer, fleet: Fleet): Promise<void> {
  const there = must(await fleets(administrator)).find((line) => line.name === fleet.name);
  const { name, type } = fleet;
  const fleetId = there?.fleetId ?? must(await addFleet(administrator, { name, type })).fleetId;
  for (const tail of fleet.tails) {
    const known = there?.tails.find((line) => line.registration === tail.registration)?.options.length ?? 0;
    for (const [index, option] of tail.options.entries()) {
      if (index < known) continue;
      const held = { registration: tail.registration, standard: option.value, from: `${option.from}T00:00:00Z` };
      must(index === 0 ? await addTail(administrator, { fleetId, ...held }) : await releaseTail(administrator, held));
    }
  }
}
