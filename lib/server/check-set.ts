import { canonicalBytes } from '../base/canonical.ts';
import { rules } from '../check/rules/index.ts';
import { sha256Hex } from './sha256.ts';

/** Names the checks that were asked: their numbers and what they say. Another set of rules or words, another name. */
export function checkSet(): string {
  const told = rules.map(({ id, number, severity, messages }) => ({ id, number, severity, messages }));
  return `${rules.length} checks, ${sha256Hex(canonicalBytes(told)).slice(0, 12)}`;
}
