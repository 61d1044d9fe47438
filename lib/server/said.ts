// What a person typed, made fit to be stored: composed, without the edges, without the one character that no text column
// takes. Nothing else is changed.

const NUL = '\u0000';

export const said = (text: string): string => text.replaceAll(NUL, '').normalize('NFC').trim();

/** Whether that character stands anywhere in plain data. */
export function holdsNul(value: unknown): boolean {
  if (typeof value === 'string') return value.includes(NUL);
  if (value === null || typeof value !== 'object') return false;
  return Object.entries(value).some(([key, inner]) => key.includes(NUL) || holdsNul(inner));
}
