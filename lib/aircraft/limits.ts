import type { Detent, Sheet } from './sheet.ts';

/** Names of the detents from clean to full, as the sheet lists them. */
export const detentNames = (sheet: Sheet): readonly string[] => sheet.detents.map((detent) => detent.name);

export function detentNamed(sheet: Sheet, name: string): Detent | null {
  return sheet.detents.find((detent) => detent.name === name) ?? null;
}

/** Place in the order from clean (0) to full; -1 when the sheet has no such detent. */
export const detentIndex = (sheet: Sheet, name: string): number =>
  sheet.detents.findIndex((detent) => detent.name === name);

/** Names of the detents from `from` to `to`, both included, in the order of the movement; null when one is unknown. */
export function detentsBetween(sheet: Sheet, from: string, to: string): readonly string[] | null {
  const start = detentIndex(sheet, from);
  const end = detentIndex(sheet, to);
  if (start < 0 || end < 0) return null;
  const names = detentNames(sheet).slice(Math.min(start, end), Math.max(start, end) + 1);
  return start <= end ? names : names.reverse();
}

/** Limit of a detent, kt: VFE, and VMO where the detent has none. null when unknown. */
export function detentLimit(sheet: Sheet, name: string): number | null {
  const detent = detentNamed(sheet, name);
  return detent && (detent.vfe?.value ?? sheet.limits.vmo.value);
}

/** Time of a movement, s, over all stops passed; null when a detent is unknown. */
export function transitSeconds(sheet: Sheet, from: string, to: string): number | null {
  const start = detentIndex(sheet, from);
  const end = detentIndex(sheet, to);
  if (start < 0 || end < 0) return null;
  const passed = sheet.detents.slice(Math.min(start, end), Math.max(start, end));
  return passed.reduce((sum, detent) => sum + (detent.transitToNext?.value ?? 0), 0);
}

/** A movement as the indication shows it: from each moment, s after the lever, this detent is indicated. */
export type Indicated = { readonly from: number; readonly detent: string };

/** The detents indicated during one movement. The one left stays indicated until the next is reached. */
export function indicatedDuring(sheet: Sheet, from: string, to: string): readonly Indicated[] | null {
  const passed = detentsBetween(sheet, from, to);
  if (passed === null) return null;
  let at = 0;
  return passed.map((detent, i) => {
    if (i > 0) at += transitSeconds(sheet, passed[i - 1]!, detent) ?? 0;
    return { from: at, detent };
  });
}

/** Whether the sheet allows this movement in one go: one stop always, two only where it is declared for the phase. */
export function movementAllowed(sheet: Sheet, from: string, to: string, phase: string): boolean {
  const stops = Math.abs(detentIndex(sheet, from) - detentIndex(sheet, to));
  if (detentIndex(sheet, from) < 0 || detentIndex(sheet, to) < 0) return false;
  if (stops <= 1) return true;
  return sheet.retractions.some((one) => one.from === from && one.to === to && one.phases.includes(phase));
}
