// The expected mode line as it is typed into a cell, and back. Words stand as they are annunciated.
import type { ExpectedArmed, ExpectedMode } from '../../../../lib/procedure/procedure.ts';

/** `ROUTE or HEADING`, `same`, or nothing. */
export const writeMode = (mode: ExpectedMode): string => (typeof mode === 'string' ? mode : mode.join(' or '));

export function readMode(typed: string): ExpectedMode {
  const words = typed
    .split(/\s+or\s+|\s*[/,]\s*/)
    .map((word) => word.trim())
    .filter(Boolean)
    .map((word) => (word.toLowerCase() === 'same' ? 'same' : word.toUpperCase()));
  return words.length > 1 ? words : (words[0] ?? '');
}

/** `ALT, ROUTE`; `nothing`; `same`; `+ROUTE -ALT`; or nothing at all: not stated. */
export function writeArmed(armed: ExpectedArmed): string {
  if (armed === null) return '';
  if (armed === 'same') return 'same';
  if (Array.isArray(armed)) return armed.length === 0 ? 'nothing' : armed.join(', ');
  const change = armed as { add?: readonly string[]; drop?: readonly string[] };
  return [...(change.add ?? []).map((word) => `+${word}`), ...(change.drop ?? []).map((word) => `-${word}`)].join(' ');
}

export function readArmed(typed: string): ExpectedArmed {
  const text = typed.trim();
  if (text === '') return null;
  if (/^same$/i.test(text)) return 'same';
  if (/^(nothing|none)$/i.test(text)) return [];
  const words = text.split(/[\s,]+/).filter(Boolean);
  if (!words.some((word) => /^[+-]/.test(word))) return words.map((word) => word.toUpperCase());
  const of = (sign: string) => words.filter((word) => word.startsWith(sign)).map((word) => word.slice(1).toUpperCase());
  return { add: of('+'), drop: of('-') };
}
