// What procedures are checked against: the type data sheets, the policy, the library. What is not given is that of the
// demo operator of the checkout, and every output says which it was.
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Sheet } from '../aircraft/sheet.ts';
import { readSheetText } from '../aircraft/sheet-text.ts';
import { err, ok, type Result } from '../base/result.ts';
import { joinLibraries, readLibraryFile } from '../file/library-file.ts';
import { readFleetFile } from '../file/people-file.ts';
import type { FileProblem } from '../file/problem.ts';
import { readProcedureFile } from '../file/procedure-file.ts';
import type { Fleet, Library } from '../library/library.ts';
import type { Policy } from '../policy/policy.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { CheckCommand } from './arguments.ts';
import { filesOf, readText, type Unreadable } from './input.ts';
import { readPolicyText } from './policy-text.ts';

export type Grounds = {
  readonly sheets: readonly { readonly file: string; readonly sheet: Sheet }[];
  readonly policy: { readonly file: string; readonly policy: Policy };
  readonly library: GivenLibrary | null;
};

/** What a folder of the operator holds, by the format that each file names. `fleet` null: no file of tails is in it. */
type GivenLibrary = {
  readonly folder: string;
  readonly library: Library;
  readonly procedures: readonly Procedure[];
  readonly fleet: Fleet | null;
};

const SEED = fileURLToPath(new URL('../../seed', import.meta.url));
/** The file of a library folder that is not a part of the library but the operator's policy. */
const POLICY_FILE = /^policy\.(ya?ml|json)$/i;

/** Reads them all, and tells all that can't be read, not only the first. */
export async function readGrounds(
  command: Pick<CheckCommand, 'sheets' | 'policy' | 'library'>,
): Promise<Result<Grounds, readonly Unreadable[]>> {
  const problems: Unreadable[] = [];
  const take = async <T>(file: string, reader: (text: string) => Result<T, readonly FileProblem[]>): Promise<T[]> => {
    const text = await readText(file);
    const read = text.ok ? reader(text.value) : text;
    if (read.ok) return [read.value];
    problems.push({ file, problems: read.error });
    return [];
  };
  const inFolder = async (folder: string): Promise<readonly string[]> => {
    const files = await filesOf(folder);
    if (files.ok) return files.value;
    problems.push(files.error);
    return [];
  };

  const sheetFiles = command.sheets.length > 0 ? command.sheets : await inFolder(shown(path.join(SEED, 'aircraft')));
  const sheets: { file: string; sheet: Sheet }[] = [];
  for (const file of sheetFiles) for (const sheet of await take(file, sheetOf)) sheets.push({ file, sheet });

  const ofLibrary = command.library === null ? [] : await inFolder(command.library);
  const isPolicy = (file: string): boolean => POLICY_FILE.test(path.basename(file));
  const parts: Library[] = [];
  const procedures: Procedure[] = [];
  const fleets: Fleet[] = [];
  for (const file of ofLibrary.filter((each) => !isPolicy(each))) {
    for (const part of await take(file, (text) => partOf(text, file))) {
      if (part.kind === 'procedure') procedures.push(part.value);
      else if (part.kind === 'fleet') fleets.push(part.value);
      else parts.push(part.value);
    }
  }

  const policyFile = command.policy ?? ofLibrary.find(isPolicy) ?? shown(path.join(SEED, 'library', 'policy.yaml'));
  const [policy] = await take(policyFile, readPolicyText);

  if (problems.length > 0 || policy === undefined) return err(problems);
  const { library: folder } = command;
  return ok({
    sheets,
    policy: { file: policyFile, policy },
    library: folder === null ? null : { folder, library: joinLibraries(parts), procedures, fleet: joined(fleets) },
  });
}

type Part =
  | { readonly kind: 'procedure'; readonly value: Procedure }
  | { readonly kind: 'fleet'; readonly value: Fleet }
  | { readonly kind: 'library'; readonly value: Library };

const FORMAT = /^[\s{]*"?format"?:\s*"?(cuewright-[a-z]+)\/1/m;

/** A file of a library folder is what its format line says; without one it is read as a part of the library. */
function partOf(text: string, file: string): Result<Part, readonly FileProblem[]> {
  const as = <K extends Part['kind'], T>(kind: K, read: Result<T, readonly FileProblem[]>) =>
    read.ok ? ok({ kind, value: read.value }) : read;
  const format = FORMAT.exec(text)?.[1];
  if (format === 'cuewright-procedure') return as('procedure', readProcedureFile(text, file));
  if (format === 'cuewright-fleet') return as('fleet', readFleetFile(text, file));
  return as('library', readLibraryFile(text, file));
}

/** Tails of several files are one fleet: the checks ask for the tails of a type. */
const joined = ([first, ...more]: readonly Fleet[]): Fleet | null =>
  first === undefined ? null : { ...first, tails: [first, ...more].flatMap((fleet) => fleet.tails) };

function sheetOf(text: string): Result<Sheet, readonly FileProblem[]> {
  const read = readSheetText(text);
  if (read.ok) return read;
  return err(
    read.error.map(({ at, line, message }) => ({
      line: line ?? 1,
      column: 1,
      path: at,
      message: `${message}.`,
      expected: [],
    })),
  );
}

/** From where the person stands, unless that leads upwards. */
function shown(file: string): string {
  const near = path.relative('', file);
  return near === '' || near.startsWith('..') || path.isAbsolute(near) ? file : near;
}
