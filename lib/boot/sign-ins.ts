/**
 * The demo sign-ins that still work: asked of the database at every start, because each person may change the password.
 */
import fs from 'node:fs';
import path from 'node:path';
import { verify } from '@node-rs/argon2';
import { parse } from 'yaml';
import { z } from 'zod';
import { root } from './project.mjs';
import { withClient } from './roles.ts';

export type SignIn = { readonly name: string; readonly signIn: string; readonly title: string };
export type DemoSignIns = { readonly password: string; readonly people: readonly SignIn[] };

const PeopleFile = z.object({
  people: z.array(z.object({ name: z.string(), 'sign-in': z.string(), title: z.string() })),
});

const seedFile = (name: string): string => fs.readFileSync(path.join(root, 'seed', name), 'utf8');

/** The people of seed/people.yaml whose password is still the one that everybody can read in seed/demo-password.txt. */
export async function demoSignIns(ownerUrl: string): Promise<DemoSignIns> {
  const { people } = PeopleFile.parse(parse(seedFile('people.yaml')));
  const password = seedFile('demo-password.txt').trim();
  const hashes = await withClient(ownerUrl, async (client) => {
    const { rows } = await client.query<{ name: string; hash: string }>(
      `SELECT p."signInName" AS name, c.hash FROM person p JOIN password_credential c ON c."personId" = p.id
       WHERE p."signInName" = ANY ($1)`,
      [people.map((person) => person['sign-in'])],
    );
    return new Map(rows.map((row) => [row.name, row.hash]));
  });
  const known = await Promise.all(
    people.map(async (person) => {
      const hash = hashes.get(person['sign-in']);
      return hash !== undefined && (await verify(hash, password.normalize('NFC')));
    }),
  );
  const open = people.filter((_, at) => known[at]);
  return { password, people: open.map(({ name, title, 'sign-in': signIn }) => ({ name, title, signIn })) };
}

/** The sign-ins as lines for the screen. */
export function signInLines({ password, people }: DemoSignIns): string[] {
  const widest = Math.max(...people.map((person) => person.signIn.length));
  return people.map(({ signIn, name, title }) => `  ${signIn.padEnd(widest)}  ${password}  ${name}, ${title}`);
}
