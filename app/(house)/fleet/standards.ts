// Which standards a tail of a type may have: those that the mode table of its latest sheet tells apart.
import { readSheet } from '../../../lib/aircraft/sheet.ts';
import { readSheetRevision, sheetRevisions } from '../../../lib/server/aircraft.ts';
import type { Viewer } from '../../../lib/server/within.ts';
import { shown } from '../../_ui/arrive.ts';

export type Standard = { readonly name: string; readonly says: string };

export async function standardsOf(viewer: Viewer, types: readonly string[]): Promise<ReadonlyMap<string, Standard[]>> {
  const revisions = shown(await sheetRevisions(viewer));
  const found = new Map<string, Standard[]>();
  for (const type of new Set(types)) {
    const latest = revisions.find((revision) => revision.type === type);
    if (!latest) continue;
    const sheet = readSheet(shown(await readSheetRevision(viewer, latest.id)).content);
    if (!sheet.ok) continue;
    found.set(
      type,
      Object.entries(sheet.value.modes.standards).map(([name, says]) => ({ name, says })),
    );
  }
  return found;
}
