import type { Sheet } from '../aircraft/sheet.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { Grounds } from './grounds.ts';

type Chosen = { readonly file: string; readonly sheet: Sheet } | null;

/** The sheet of the procedure's type. A sheet of another type answers nothing about it, so then there is none. */
export function chooseSheet(
  procedure: Procedure,
  sheets: Grounds['sheets'],
): { readonly chosen: Chosen; readonly remarks: readonly string[] } {
  const { type } = procedure.effectivity;
  const known = sheets.map(({ sheet, file }) => `${sheet.type} (${file})`).join(', ');
  if (type === '') {
    const [only] = sheets;
    return only !== undefined && sheets.length === 1
      ? { chosen: only, remarks: [`The procedure names no aircraft type; the sheet of ${known} was taken.`] }
      : { chosen: null, remarks: [`The procedure names no aircraft type; there are sheets of ${known}.`] };
  }
  const fitting = sheets.filter(({ sheet }) => sheet.type === type);
  const [first] = fitting;
  if (first === undefined)
    return { chosen: null, remarks: [`The procedure is for ${type}; there is a sheet of ${known}.`] };
  if (fitting.length === 1) return { chosen: first, remarks: [] };
  const names = fitting.map(({ file, sheet }) => `revision ${sheet.revision} (${file})`).join(', ');
  return { chosen: null, remarks: [`There is more than one sheet of ${type}: ${names}. Name one with --sheet.`] };
}
