/** Names and quoted words as they stand in a gate. */
import { SPEED } from './tokens.ts';
import { RESERVED } from './words.ts';

/** `"go around"`: any text, so written that it is read back the same. */
export const quoted = (text: string): string => `"${text.replace(/["\\]/gu, '\\$&')}"`;

const PLAIN = /^[\p{L}_][\p{L}\p{N}_]*(?:-[\p{L}\p{N}_]+)*$/u;

/**
 * The name of a step, a mode or a detent, in quotes only where it would be read as something else. `beside` says that other
 * words of the notation may stand in the same place, so that they too are quoted.
 */
export function nameText(name: string, beside: boolean): string {
  if (!PLAIN.test(name)) return quoted(name);
  if (beside && RESERVED.has(name.toLowerCase())) return quoted(name);
  if (/-\p{N}/u.test(name)) {
    const head = name.slice(0, name.search(/-\p{N}/u)).split('-')[0] ?? '';
    if (SPEED.test(head) || RESERVED.has(head)) return quoted(name);
  }
  return name;
}

/** A detent behind a speed, where a hyphen before figures would subtract and small letters are refused. */
export function detentText(detent: string): string {
  return /^\p{Lu}/u.test(detent) && !/-\p{N}/u.test(detent) ? nameText(detent, true) : quoted(detent);
}
