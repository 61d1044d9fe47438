// Signing: what the signature freezes is shown, the password is asked again, and the issue is made in one transaction.
import type { CandidateLine } from './desk.ts';
import type { OpenCandidate } from './reviews.ts';
import type { Answered, Viewer } from './within.ts';

export type OpenForSigning = OpenCandidate & {
  /** The number that the issue would get now. */
  readonly issueNumber: number;
  /** Labels that unlabelled steps would get. */
  readonly newLabels: readonly { readonly step: string; readonly label: string }[];
  /** Tails that the effectivity names now. */
  readonly tails: readonly string[];
  readonly supersedes: { readonly number: number; readonly inForceSince: string } | null;
  /** The earliest time that may be chosen as ISO, after an issue that is still to come in force; null: from now on. */
  readonly earliest: string | null;
  /** The sentence that is signed. */
  readonly statement: string;
};

export type Signed = { readonly procedureId: string; readonly issueNumber: number; readonly inForceFrom: string };

export function signingQueue(_viewer: Viewer): Answered<readonly CandidateLine[]> {
  throw new Error('not ready');
}

export function openForSigning(_viewer: Viewer, _candidateId: string): Answered<OpenForSigning> {
  throw new Error('not ready');
}

/** `sha256`: the hash that was on the screen. `effectiveFrom`: ISO time, or null for at once. */
export function signCandidate(
  _viewer: Viewer,
  _candidateId: string,
  _input: { sha256: string; password: string; effectiveFrom: string | null },
): Answered<Signed> {
  throw new Error('not ready');
}

export function refuseCandidate(_viewer: Viewer, _candidateId: string, _reason: string): Answered<null> {
  throw new Error('not ready');
}
