import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));

/** Every source file below the folders, as paths from the root with forward slashes. */
export function sourceFiles(...folders: readonly string[]): string[] {
  return folders.flatMap((folder) => {
    const found: string[] = [];
    const visit = (dir: string) => {
      for (const entry of fs.readdirSync(path.join(root, dir), { withFileTypes: true })) {
        if (entry.name === 'generated' || entry.name === 'node_modules') continue;
        const file = `${dir}/${entry.name}`;
        if (entry.isDirectory()) visit(file);
        else if (/\.(ts|tsx|mts|mjs)$/.test(entry.name) && !entry.name.endsWith('.d.ts')) found.push(file);
      }
    };
    visit(folder);
    return found.sort();
  });
}

export const sourceOf = (file: string): string => fs.readFileSync(path.join(root, file), 'utf8');

/** What a source text imports or re-exports, statically or not. Comments are taken out first. */
export function importsOf(source: string): string[] {
  const code = source.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');
  const found = code.matchAll(/(?:\bfrom\s*|\bimport\s*\(\s*|^\s*import\s+)['"]([^'"]+)['"]/gm);
  return [...found].map((match) => match[1]!);
}

/** `lib/check/rules/x.ts` is in folder `check`; `app/desk/page.tsx` in `app`; a package is null. */
export function folderOf(importer: string, specifier: string): string | null {
  if (!specifier.startsWith('.')) return null;
  const target = path.posix.normalize(path.posix.join(path.posix.dirname(importer), specifier));
  const [top, second] = target.split('/');
  return top === 'lib' ? (second ?? null) : (top ?? null);
}
