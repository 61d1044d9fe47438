// The operator's thresholds, durations and words: versions, never edited in place.
import type { Policy } from '../policy/policy.ts';
import type { Answered, Viewer } from './within.ts';

export type PolicyLine = {
  readonly version: number;
  readonly madeBy: string;
  readonly madeAt: string;
  readonly reason: string;
  readonly policy: Policy;
};

export function policies(_viewer: Viewer): Answered<readonly PolicyLine[]> {
  throw new Error('not ready');
}

/** `content` goes through `readPolicy`; what it cannot read comes back as details. */
export function addPolicyVersion(
  _viewer: Viewer,
  _input: { content: unknown; reason: string },
): Answered<{ version: number }> {
  throw new Error('not ready');
}
