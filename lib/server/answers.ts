// Answers to ANSWER findings and waivers of STOP findings, bound to the fingerprint of what the check read.
import type { Answered, Viewer } from './within.ts';

export type Settled = {
  readonly id: string;
  readonly kind: 'answer' | 'waiver';
  readonly check: string;
  /** Fingerprint of what the check read: the finding it settles carries the same. */
  readonly read: string;
  readonly step: string;
  readonly field: string;
  readonly message: string;
  readonly reason: string;
  /** ISO time; a waiver has one. */
  readonly expiresAt: string | null;
  readonly by: string;
  readonly at: string;
};

/** Names one finding of the draft as it stands: the server runs the checks itself and looks for it. */
export type FindingKey = { readonly check: string; readonly read: string };

export function answerFinding(
  _viewer: Viewer,
  _draftId: string,
  _finding: FindingKey,
  _reason: string,
): Answered<Settled> {
  throw new Error('not ready');
}

/** `expiresOn` as YYYY-MM-DD: until the end of that day, UTC. */
export function waiveStop(
  _viewer: Viewer,
  _draftId: string,
  _finding: FindingKey,
  _input: { reason: string; expiresOn: string },
): Answered<Settled> {
  throw new Error('not ready');
}
