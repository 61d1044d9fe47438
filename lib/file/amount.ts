// Figures of the library as text with their unit and reference: `5 430 ft`, `1 500 ft AAL`, `2 750 m`.
import { z } from 'zod';

export type AmountUnit = 'ft' | 'ft AAL' | 'ft MSL' | 'm';

const pattern = (unit: AmountUnit): RegExp => new RegExp(`^-?\\d{1,3}(?: ?\\d{3})* ${unit}$`);

/** Whole figures only: nothing on a card of an aerodrome is finer. */
export const amount = (unit: AmountUnit) =>
  z.string().regex(pattern(unit)).describe(`A whole figure with its unit, such as 1 500 ${unit}.`);

export function amountOf(text: string): number {
  return Number(text.replace(/[^\d-]/g, ''));
}
