// RFC 8785 (JSON Canonicalization Scheme): one text for one value, so that a hash of it means the value.
import canonicalize from 'canonicalize';
import { assert } from './assert.ts';

/** Text in NFC, keys and values; the same object where nothing changes in it is not promised. */
function composed(value: unknown): unknown {
  if (typeof value === 'string') return value.normalize('NFC');
  if (typeof value === 'number') assert(Number.isFinite(value), 'only a finite number has a canonical text');
  if (Array.isArray(value)) return value.map(composed);
  if (value === null || typeof value !== 'object') return value;
  const entries = Object.entries(value).map(([key, inner]) => [key.normalize('NFC'), composed(inner)] as const);
  const made = Object.fromEntries(entries);
  assert(Object.keys(made).length === entries.length, 'two keys are one once composed');
  return made;
}

/** The canonical text of plain data (no functions, dates or cycles). Throws on what JSON cannot say. */
export function canonicalText(value: unknown): string {
  const text = canonicalize(composed(value));
  assert(text !== undefined, 'this value has no JSON');
  return text;
}

/** The bytes that are hashed and signed: the canonical text in UTF-8. */
export const canonicalBytes = (value: unknown): Uint8Array => new TextEncoder().encode(canonicalText(value));
