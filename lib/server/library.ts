// Aerodrome cards, callouts, terms, checklists and sources: the latest version of each.
import { canonicalText } from '../base/canonical.ts';
import { readLibraryFile } from '../file/library-file.ts';
import type { Library } from '../library/library.ts';
import { Refused } from './errors.ts';
import { fileProblemLines } from './file-problems.ts';
import { namesOf } from './names.ts';
import { permit } from './permit.ts';
import { enter } from './record-entry.ts';
import { sha256Hex } from './sha256.ts';
import { type Answered, type Viewer, within } from './within.ts';

export const KINDS = ['aerodrome', 'callout', 'term', 'checklist', 'source'] as const;
export type Kind = (typeof KINDS)[number];

export type LibraryLine = {
  readonly kind: Kind;
  readonly key: string;
  readonly version: number;
  readonly content: unknown;
  readonly madeBy: string;
  readonly madeAt: string;
};

export function library(viewer: Viewer, kind?: Kind): Answered<readonly LibraryLine[]> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read in force');
    const rows = await tx.libraryEntry.findMany({
      where: { operatorId: standing.operatorId, kind },
      orderBy: [{ kind: 'asc' }, { key: 'asc' }, { version: 'desc' }],
      distinct: ['kind', 'key'],
    });
    const nameOf = await namesOf(
      tx,
      rows.map((row) => row.madeById),
    );
    return rows.map((row) => ({
      kind: row.kind as Kind,
      key: row.key,
      version: row.version,
      content: JSON.parse(row.content) as unknown,
      madeBy: nameOf(row.madeById),
      madeAt: row.madeAt.toISOString(),
    }));
  });
}

/** Entries of the file that differ from what is stored get a new version; the rest stay. */
export function importLibraryFile(
  viewer: Viewer,
  input: { text: string; name: string },
): Answered<{ changed: number }> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'manage library');
    const { operatorId, personId, at } = standing;
    const read = readLibraryFile(input.text, input.name);
    if (!read.ok) throw new Refused('file-unreadable', fileProblemLines(read.error));
    let changed = 0;
    for (const { kind, key, value } of entriesOf(read.value)) {
      const content = canonicalText(value);
      const sha256 = sha256Hex(new TextEncoder().encode(content));
      const last = await tx.libraryEntry.findFirst({ where: { operatorId, kind, key }, orderBy: { version: 'desc' } });
      if (last?.sha256 === sha256) continue;
      const version = (last?.version ?? 0) + 1;
      const data = { operatorId, kind, key, version, content, sha256, madeById: personId, madeAt: at };
      await tx.libraryEntry.create({ data, select: { version: true } });
      await enter(tx, standing, 'library entry made', `${kind} ${key}`, { version, sha256 });
      changed += 1;
    }
    return { changed };
  });
}

type Entry = { readonly kind: Kind; readonly key: string; readonly value: unknown };

function entriesOf(file: Library): Entry[] {
  const entry = (kind: Kind, key: string, value: unknown): Entry => ({ kind, key, value });
  return [
    ...file.aerodromes.map((card) => entry('aerodrome', card.code, card)),
    ...file.callouts.map((callout) => entry('callout', callout.id, callout)),
    ...file.terms.map((term) => entry('term', term.term, term)),
    ...file.checklists.map((list) => entry('checklist', list.id, list)),
    ...file.sources.map((source) => entry('source', source.id, source)),
  ];
}
