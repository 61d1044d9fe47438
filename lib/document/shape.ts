// Stored values, checked one by one. Yjs checks no shape: whatever a client wrote is in the draft, so every reader comes
// through here. What doesn't fit becomes "not stated", and a sentence says which field of which step it was.
import type { ExpectedArmed, ExpectedMode, Range } from '../procedure/procedure.ts';
import { FIELD_CHARACTERS, LIST_ENTRIES } from './limits.ts';

/** Collects the problems of one holder; `where` names it in a pilot's words. */
export type Complain = (key: string, sentence: string) => void;

const isString = (value: unknown): value is string => typeof value === 'string';
const isStrings = (value: unknown): value is string[] => Array.isArray(value) && value.every(isString);

export function string(value: unknown, key: string, complain: Complain): string {
  if (value === undefined) return '';
  if (!isString(value)) complain(key, 'is not text');
  else if (value.length > FIELD_CHARACTERS.most) complain(key, `is too long. ${FIELD_CHARACTERS.says}`);
  return isString(value) ? value : '';
}

/** One of a list, or '' for not stated. */
export function oneOf<T extends string>(known: readonly T[], value: unknown, key: string, complain: Complain): T | '' {
  if (value === undefined || value === '') return '';
  const found = known.find((one) => one === value);
  if (found === undefined) complain(key, `has a value that is not one of: ${known.join(', ')}`);
  return found ?? '';
}

export function strings(value: unknown, key: string, complain: Complain): readonly string[] {
  if (value === undefined) return [];
  if (!isStrings(value)) {
    complain(key, 'is not a list of words');
    return [];
  }
  if (value.length > LIST_ENTRIES.most) complain(key, `is too long. ${LIST_ENTRIES.says}`);
  for (const one of value) string(one, key, complain);
  return value;
}

export function someOf<T extends string>(
  known: readonly T[],
  value: unknown,
  key: string,
  complain: Complain,
): readonly T[] {
  const found = strings(value, key, complain);
  for (const one of found) oneOf(known, one, key, complain);
  return found.filter((one): one is T => (known as readonly string[]).includes(one));
}

export function mode(value: unknown, key: string, complain: Complain): ExpectedMode {
  return isString(value) || value === undefined ? string(value, key, complain) : strings(value, key, complain);
}

export function armed(value: unknown, key: string, complain: Complain): ExpectedArmed {
  if (value === null || value === undefined || value === 'same') return value ?? null;
  if (Array.isArray(value)) return strings(value, key, complain);
  const { add, drop, ...rest } = (typeof value === 'object' ? value : { odd: value }) as Record<string, unknown>;
  if (Object.keys(rest).length > 0) {
    complain(key, 'is neither a list of armed words nor what is added and dropped');
    return null;
  }
  return {
    ...(add !== undefined && { add: strings(add, key, complain) }),
    ...(drop !== undefined && { drop: strings(drop, key, complain) }),
  };
}

export function armedList(value: unknown, key: string, complain: Complain): readonly string[] | null {
  return value === null || value === undefined ? null : strings(value, key, complain);
}

export function range(value: unknown, key: string, complain: Complain): Range | null {
  if (value === null || value === undefined) return null;
  const { from, to } = value as Partial<Range>;
  if (Number.isFinite(from) && Number.isFinite(to) && from! <= to!) return { from: from!, to: to! };
  complain(key, 'is not a range from a lower to a higher number');
  return null;
}

export function branches(value: unknown, key: string, complain: Complain): readonly { when: string; to: string }[] {
  if (value === undefined) return [];
  const sound =
    Array.isArray(value) &&
    value.every((one) => isString(one?.when) && isString(one?.to) && Object.keys(one).length === 2);
  if (!sound) {
    complain(key, 'is not a list of conditions and where each leads');
    return [];
  }
  if (value.length > LIST_ENTRIES.most) complain(key, `is too long. ${LIST_ENTRIES.says}`);
  for (const { when, to } of value) string(when + to, key, complain);
  return value;
}
