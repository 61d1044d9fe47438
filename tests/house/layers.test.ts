import { describe, expect, test } from 'vitest';
import { ARROWS, PURE_FOLDERS } from './arrows.ts';
import { folderOf, importsOf, sourceFiles, sourceOf } from './imports.ts';

/** Sentences about every import in `source` that the house does not allow. */
function wrongImports(file: string, source: string): string[] {
  const own = folderOf(file, './x')!;
  const row = ARROWS[own];
  return importsOf(source).flatMap((specifier) => {
    const target = folderOf(file, specifier);
    if (specifier.includes('prisma/generated') || specifier === '@prisma/client') {
      return own === 'server' ? [] : [`${file} imports ${specifier}: server is alone with Prisma`];
    }
    if (target === null || target === own) {
      return own === 'check' &&
        /lib\/check\/rules\//.test(file) &&
        !file.endsWith('index.ts') &&
        specifier.startsWith('./')
        ? [`${file} imports ${specifier}: rules never import rules`]
        : [];
    }
    if (own === 'app') {
      const client = /^\s*['"]use client['"]/m.test(source) || file.includes('worker');
      // A type is gone before the browser sees it: a client file may name the shape of what a server function answers.
      if (client && target === 'server' && !importsOf(withoutTypes(source)).includes(specifier)) return [];
      const allowed = client ? PURE_FOLDERS.includes(target) : target === 'server' || PURE_FOLDERS.includes(target);
      return allowed
        ? []
        : [`${file} imports ${specifier}: app may use server and the pure folders, a client file the pure ones alone`];
    }
    if (!row) return [`${file}: folder ${own} has no row in the import table`];
    return row.may.includes(target) ? [] : [`${file} imports ${specifier}: ${row.says}`];
  });
}

const withoutTypes = (source: string) => source.replace(/^(import|export) type [^;]*;/gm, '');

describe('who may import whom', () => {
  const files = sourceFiles('lib', 'app');
  test('the walk saw the house', () => {
    expect(files.length).toBeGreaterThan(150);
    for (const folder of ['base', 'gate', 'check', 'server'])
      expect(files.some((file) => file.startsWith(`lib/${folder}/`))).toBe(true);
  });
  test('every import follows an arrow of the table', () => {
    expect(files.flatMap((file) => wrongImports(file, sourceOf(file)))).toEqual([]);
  });
  test('the table holds no circle', () => {
    const reach = (from: string, seen: Set<string>): Set<string> => {
      for (const next of ARROWS[from]?.may ?? []) if (!seen.has(next)) reach(next, seen.add(next));
      return seen;
    };
    for (const folder of Object.keys(ARROWS))
      expect(reach(folder, new Set()).has(folder), `${folder} reaches itself`).toBe(false);
  });
  test('a planted violation is caught, with the reason', () => {
    expect(wrongImports('lib/gate/x.ts', "import { a } from '../aircraft/sheet.ts';")[0]).toContain(
      'knows no aircraft',
    );
    expect(wrongImports('lib/check/rules/a.ts', "import { b } from './b.ts';")[0]).toContain(
      'rules never import rules',
    );
    expect(
      wrongImports('app/desk/x.tsx', "'use client';\nimport { b } from '../../lib/server/drafts.ts';"),
    ).toHaveLength(1);
    expect(
      wrongImports('app/desk/x.tsx', "'use client';\nimport type { B } from '../../lib/server/drafts.ts';"),
    ).toEqual([]);
    expect(wrongImports('lib/flight/x.ts', "const a = await import('../server/db.ts');")).toHaveLength(1);
    expect(
      wrongImports('lib/diff/x.ts', "import { PrismaClient } from '../../prisma/generated/client.ts';"),
    ).toHaveLength(1);
  });
});

describe('pure folders have no clock, no chance and no input or output', () => {
  const impure =
    /\bDate\.now\(|\bnew Date\(\)|\bMath\.random\(|\bperformance\.now\(|from 'node:|\bprocess\.env|\bfetch\(/;
  const files = sourceFiles(
    ...PURE_FOLDERS.map((folder) => `lib/${folder}`).filter((folder) => existing().has(folder)),
  );
  test('the walk saw them', () => expect(files.length).toBeGreaterThan(100));
  test('none of them reaches out', () => {
    const found = files.filter((file) =>
      impure.test(
        sourceOf(file)
          .replace(/\/\*[\s\S]*?\*\//g, '')
          .replace(/\/\/.*$/gm, ''),
      ),
    );
    expect(found, 'the time and the chance come in as arguments').toEqual([]);
  });
  test('a planted clock is caught', () => expect(impure.test('const t = Date.now();')).toBe(true));
});

function existing(): Set<string> {
  return new Set(sourceFiles('lib').map((file) => file.split('/').slice(0, 2).join('/')));
}
