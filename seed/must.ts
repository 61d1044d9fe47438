import type { Result } from '../lib/base/result.ts';
import type { Problem } from '../lib/server/errors.ts';

/** The seed has nobody to ask: what is refused ends it, with every detail. */
export function must<T>(result: Result<T, Problem>): T {
  if (result.ok) return result.value;
  const { code, sentence, details } = result.error;
  throw new Error([`${code}: ${sentence}`, ...details].join('\n  '));
}
