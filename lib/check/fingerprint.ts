// What a check read, made into a short text that is the same on every machine. An answer is bound to it: an edit of
// anything else leaves the answer standing, a change of any of these re-opens it.
import type { Step } from '../procedure/procedure.ts';
import type { Place } from './finding.ts';

const PRIME = 0x01000193;

/** Two FNV-1a runs over UTF-16 units with different seeds: 64 bits, no promise against an adversary, none needed. */
export function fingerprint(parts: readonly unknown[]): string {
  const text = JSON.stringify(parts).normalize('NFC');
  let low = 0x811c9dc5;
  let high = 0x9747b28c;
  for (let index = 0; index < text.length; index += 1) {
    const unit = text.charCodeAt(index);
    low = Math.imul(low ^ unit, PRIME) >>> 0;
    high = Math.imul(high ^ (unit + index), PRIME) >>> 0;
  }
  return high.toString(16).padStart(8, '0') + low.toString(16).padStart(8, '0');
}

/** The fields of a step by name, keys of nested values in order, so that the spelling of an object doesn't matter. */
export function fieldsRead(step: Step, fields: readonly (keyof Step)[]): unknown {
  return [...fields].sort().map((field) => [field, ordered(step[field])]);
}

function ordered(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(ordered);
  if (value === null || typeof value !== 'object') return value;
  return Object.entries(value)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, inner]) => [key, ordered(inner)]);
}

export const placeKey = (at: Place): string => `${at.step}\u0000${at.field}`;
