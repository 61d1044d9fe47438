// The demo world, put in through the server's own functions and at earlier times by the server's own clock: what stands in
// the tables afterwards was written, reviewed and signed by three people like any operator's procedures. Run again, it
// goes on where it stopped.
import { readdirSync, readFileSync } from 'node:fs';
import { setClock } from '../lib/server/clock.ts';
import { closeDatabase } from '../lib/server/db.ts';
import { putInBasis } from './basis.ts';
import { openChanges } from './changes.ts';
import { dayAgo } from './days.ts';
import { signProcedures } from './signed.ts';

const folder = new URL('./', import.meta.url);
const text = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
const yamlIn = (name: string): string[] =>
  readdirSync(new URL(name, folder))
    .filter((file) => file.endsWith('.yaml'))
    .sort()
    .map((file) => `${name}${file}`);

setClock(dayAgo(90));
const people = await putInBasis({ text, yamlIn });
await signProcedures(
  people,
  yamlIn('procedures/').map((name) => ({ name, text: text(name) })),
);
await openChanges(people);
setClock(() => new Date());
await closeDatabase();
