// What procedures are checked against: the type data sheets, the policy, the library. What is not given is that of the
// demo operator of the checkout, and every output says which it was.
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Sheet } from '../aircraft/sheet.ts';
import { readSheetText } from '../aircraft/sheet-text.ts';
import { err, ok, type Result } from '../base/result.ts';
import { joinLibraries, readLibraryFile } from '../file/library-file.ts';
import type { FileProblem } from '../file/problem.ts';
import type { Library } from '../library/library.ts';
import type { Policy } from '../policy/policy.ts';
import type { CheckCommand } from './arguments.ts';
import { filesOf, readText, type Unreadable } from './input.ts';
import { readPolicyText } from './policy-text.ts';

export type Grounds = {
  readonly sheets: readonly { readonly file: string; readonly sheet: Sheet }[];
  readonly policy: { readonly file: string; readonly policy: Policy };
  readonly library: { readonly folder: string; readonly library: Library } | null;
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
  for (const file of ofLibrary.filter((each) => !isPolicy(each)))
    parts.push(...(await take(file, (text) => readLibraryFile(text, file))));

  const policyFile = command.policy ?? ofLibrary.find(isPolicy) ?? shown(path.join(SEED, 'library', 'policy.yaml'));
  const [policy] = await take(policyFile, readPolicyText);

  if (problems.length > 0 || policy === undefined) return err(problems);
  const { library: folder } = command;
  return ok({
    sheets,
    policy: { file: policyFile, policy },
    library: folder === null ? null : { folder, library: joinLibraries(parts) },
  });
}

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
