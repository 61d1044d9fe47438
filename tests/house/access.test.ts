import { describe, expect, test } from 'vitest';
import { sourceFiles, sourceOf } from './imports.ts';

/**
 * Functions of lib/server that ask nobody who they are, each file with its reason. Everything else takes the viewer first,
 * or works on a transaction that somebody opened as a viewer.
 */
const WITHOUT_VIEWER: Readonly<Record<string, string>> = {
  'action.ts action': 'finds the viewer itself',
  'auth-options.ts authOptions': "next-auth's options",
  'blank.ts blankProcedure': 'a value',
  'check-set.ts checkSet': 'a name of the rules',
  'clock.ts now': 'the time',
  'clock.ts setClock': 'the time, for seed and tests',
  'db.ts database': 'the pool; only `transaction` and tests use it',
  'db.ts closeDatabase': 'the pool',
  'db.ts transaction': 'under `within`, sign-in and founding; row-level security shows it nothing without settings',
  'drafts.ts changeOf': 'a value',
  'env.ts databaseUrl': 'the environment',
  'env.ts sessionSecret': 'the environment',
  'env.ts secureCookies': 'the environment',
  'env.ts demoPasswords': 'the environment',
  'errors.ts problem': 'a value',
  'errors.ts unexpected': 'a value and a line in the log',
  'facts.ts day': 'a value',
  'facts.ts settled': 'a value',
  'file-problems.ts fileProblemLines': 'values',
  'found.ts foundOperator': 'nobody can be signed in before; the seed and the command line alone call it',
  'ids.ts newId': 'a value',
  'issues.ts during': 'a value',
  'labels.ts withLabels': 'a value',
  'passwords.ts hashPassword': 'a value',
  'passwords.ts passwordMatches': 'a value',
  'passwords.ts typedName': 'a value',
  'passwords.ts attempt': 'before sign-in there is no viewer; it sees the failures of one typed name',
  'permit.ts objection': 'the rule itself',
  'permit.ts may': 'the rule itself',
  'permit.ts permit': 'the rule itself',
  'publication.ts refuseStops': 'a value',
  'revocation.ts listen': 'hears ids of sessions and drafts that ended',
  'said.ts said': 'a value',
  'said.ts holdsNul': 'a value',
  'sha256.ts sha256Hex': 'a value',
  'sign-in.ts signIn': 'makes the viewer',
  'tails.ts isFor': 'a value',
  'text.ts frozen': 'a value',
  'text.ts headOf': 'a value',
  'text.ts readHead': 'a value',
  'viewer.ts sessionCookie': 'a name',
  'viewer.ts viewerOfToken': 'makes the viewer',
  'viewer.ts viewerOfCookie': 'makes the viewer',
  'viewer.ts viewer': 'makes the viewer',
};

const EXPORT =
  /export (?:async )?(?:function (\w+)(?:<[^(]*>)?\(|const (\w+)[^=\n]*= (?:async )?(?:<[^(]*>)?\()\s*(\w*)(?::\s*([\w.]+))?/g;

type Exported = { readonly name: string; readonly parameter: string; readonly type: string };
function exportedFunctions(source: string): Exported[] {
  const typed = [...source.matchAll(EXPORT)].map((match) => ({
    name: (match[1] ?? match[2])!,
    parameter: match[3] ?? '',
    type: match[4] ?? '',
  }));
  // A constant whose type says that it is a function, such as `now: Clock`.
  const named = [...source.matchAll(/export const (\w+): \w+ = \(\) =>/g)].map((match) => match[1]!);
  return [
    ...typed,
    ...named
      .filter((name) => !typed.some((each) => each.name === name))
      .map((name) => ({ name, parameter: '', type: '' })),
  ];
}

const asks = ({ parameter, type }: Exported): boolean =>
  (parameter === 'viewer' && type === 'Viewer') || (parameter === 'tx' && type === 'Tx');

const files = sourceFiles('lib/server');
const all = files.flatMap((file) =>
  exportedFunctions(sourceOf(file)).map((each) => ({
    ...each,
    key: `${file.slice('lib/server/'.length)} ${each.name}`,
  })),
);

describe('who asks', () => {
  test('every exported function of lib/server takes the viewer, or is listed with its reason', () => {
    expect(files.length).toBeGreaterThan(35);
    expect(all.length).toBeGreaterThan(90);
    expect(all.filter((each) => !asks(each) && !WITHOUT_VIEWER[each.key]).map((each) => each.key)).toEqual([]);
  });

  test('the list holds nothing that is gone, and nothing that takes the viewer after all', () => {
    const without = new Set(all.filter((each) => !asks(each)).map((each) => each.key));
    expect(Object.keys(WITHOUT_VIEWER).filter((key) => !without.has(key))).toEqual([]);
  });

  test('a planted function without a viewer is found', () => {
    const planted = [
      'export function openAll(id: string) {}',
      'export async function openAll() {}',
      'export const openAll = (id: string) => id;',
      'export function openAll<T>(\n  deed: () => T,\n) {}',
      'export function openAll(viewer: string) {}',
    ];
    for (const source of planted)
      expect(
        exportedFunctions(source).filter((each) => !asks(each)),
        source,
      ).toHaveLength(1);
    expect(exportedFunctions('export function open(viewer: Viewer, id: string) {}').every(asks)).toBe(true);
  });

  test('actions and pages never reach past the functions to the tables', () => {
    const wrong = sourceFiles('app').filter((file) =>
      /server\/(db|within|record-entry|members|found|hands|locks|start)\.ts/.test(
        sourceOf(file).replace(/import type [^;]*;/g, ''),
      ),
    );
    expect(wrong).toEqual([]);
  });
});
