import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { readSheet, type Sheet } from '../../lib/aircraft/sheet.ts';

const read = (path: string): unknown => parse(readFileSync(new URL(path, import.meta.url), 'utf8'));

function sure(data: unknown): Sheet {
  const sheet = readSheet(data);
  if (!sheet.ok) throw new Error(sheet.error.map((problem) => `${problem.at}: ${problem.message}`).join('\n'));
  return sheet.value;
}

/** The sheet of the demo, revision A, as plain data that a test may spoil. */
export const tn182Data = (): Record<string, unknown> =>
  read('../../seed/aircraft/tn-182-a.yaml') as Record<string, unknown>;
export const tn182 = (): Sheet => sure(tn182Data());

/** Revision B of scenario 1: VFE of F6 lowered from 235 kt to 220 kt, nothing else. */
export function tn182b(): Sheet {
  const a = tn182();
  const detents = a.detents.map((one) =>
    one.name === 'F6' && one.vfe ? { ...one, vfe: { ...one.vfe, value: 220 } } : one,
  );
  return { ...a, revision: 'B', detents };
}

export const otherSheetData = (): Record<string, unknown> => read('./other-sheet.yaml') as Record<string, unknown>;
/** A type of another shape: four detents of other names, tables instead of formulas, a small mode set. */
export const otherSheet = (): Sheet => sure(otherSheetData());
