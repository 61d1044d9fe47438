// The demo world as tests use it, read through the same code as a user's files.
import { readdirSync, readFileSync } from 'node:fs';
import { readSheetText } from '../../lib/aircraft/sheet-text.ts';
import { joinLibraries, readLibraryFile } from '../../lib/file/library-file.ts';
import { readFleetFile, readPeopleFile } from '../../lib/file/people-file.ts';
import { readProcedureFile } from '../../lib/file/procedure-file.ts';
import type { Procedure } from '../../lib/procedure/procedure.ts';

const SEED = new URL('../../seed/', import.meta.url);

export const seedText = (path: string): string => readFileSync(new URL(path, SEED), 'utf8');

const names = (folder: string): readonly string[] =>
  readdirSync(new URL(`${folder}/`, SEED))
    .filter((name) => name.endsWith('.yaml'))
    .sort();

export const procedureNames = (): readonly string[] => names('procedures').map((name) => name.replace('.yaml', ''));

/** By file name without ending, such as `go-around`. */
export function seedProcedure(name: string): Procedure {
  return right(readProcedureFile(seedText(`procedures/${name}.yaml`), name), name);
}

export const seedSheet = () => right(readSheetText(seedText('aircraft/tn-182-a.yaml')), 'sheet');
export const seedPeople = () => right(readPeopleFile(seedText('people.yaml'), 'people'), 'people');
export const seedFleet = () => right(readFleetFile(seedText('fleet.yaml'), 'fleet'), 'fleet');

export function seedLibrary() {
  const kinds = ['aerodromes', 'callouts', 'checklists', 'sources', 'terms'];
  return joinLibraries(kinds.map((name) => right(readLibraryFile(seedText(`library/${name}.yaml`), name), name)));
}

function right<T>(
  read: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: unknown },
  name: string,
): T {
  if (!read.ok) throw new Error(`${name}: ${JSON.stringify(read.error)}`);
  return read.value;
}
