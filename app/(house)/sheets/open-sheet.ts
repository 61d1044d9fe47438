// Opens a stored revision. A sheet that today's reader refuses is an error of ours, not of the person who looks.
import { readSheet, type Sheet } from '../../../lib/aircraft/sheet.ts';
import { type RevisionLine, readSheetRevision } from '../../../lib/server/aircraft.ts';
import type { Viewer } from '../../../lib/server/within.ts';
import { shown } from '../../_ui/arrive.ts';

export async function openSheet(viewer: Viewer, id: string): Promise<{ line: RevisionLine; sheet: Sheet }> {
  const { content, ...line } = shown(await readSheetRevision(viewer, id));
  const read = readSheet(content);
  if (read.ok) return { line, sheet: read.value };
  throw new Error(`sheet ${id}: ${read.error.map((one) => `${one.at}: ${one.message}`).join('; ')}`);
}
