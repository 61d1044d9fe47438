// Review: one page of what a candidate changes, and the two ways on from it.
import type { Finding, NotChecked } from '../check/finding.ts';
import type { Change } from '../diff/change.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { Settled } from './answers.ts';
import type { CandidateLine, CandidateState } from './desk.ts';
import type { ChangeReason } from './drafts.ts';
import type { Answered, Viewer } from './within.ts';

export type CandidateFinding = Finding & {
  /** The answer or waiver that stands against it. */
  readonly settled: Settled | null;
};

export type OpenCandidate = {
  readonly candidateId: string;
  readonly procedureId: string;
  readonly title: string;
  readonly number: number;
  readonly state: CandidateState;
  readonly sha256: string;
  readonly procedure: Procedure;
  /** Against the issue in force; every step is new when there is none. */
  readonly base: { readonly number: number; readonly procedure: Procedure } | null;
  readonly changes: readonly Change[];
  readonly findings: readonly CandidateFinding[];
  /** Findings of the issue in force that this candidate no longer has. */
  readonly healed: readonly { readonly check: string; readonly message: string }[];
  readonly notChecked: readonly NotChecked[];
  readonly change: ChangeReason & { readonly ownedBy: string };
  readonly note: string;
  readonly submittedBy: string;
  readonly submittedAt: string;
  readonly editors: readonly string[];
  readonly sheet: { readonly revision: string; readonly content: unknown } | null;
  readonly policyVersion: number;
  readonly checkSet: string;
  readonly reviews: readonly {
    readonly by: string;
    readonly at: string;
    readonly verdict: 'recommended' | 'sent back' | 'withdrawn';
    readonly reason: string;
    readonly riskNote: string;
    readonly statement: string;
  }[];
  readonly labels: Readonly<Record<string, string>>;
  readonly may: { readonly review: boolean; readonly sign: boolean; readonly withdraw: boolean };
  /** Why the viewer may not review, in a sentence; '' when they may or when it isn't their part. */
  readonly whyNot: string;
};

export function reviewQueue(_viewer: Viewer): Answered<readonly CandidateLine[]> {
  throw new Error('not ready');
}

export function openCandidate(_viewer: Viewer, _candidateId: string): Answered<OpenCandidate> {
  throw new Error('not ready');
}

export function sendBack(_viewer: Viewer, _candidateId: string, _reason: string): Answered<null> {
  throw new Error('not ready');
}

/** `statement`: what the captain states, in words; `riskNote`: the risk in one sentence. */
export function recommend(
  _viewer: Viewer,
  _candidateId: string,
  _input: { reason: string; riskNote: string; statement: string },
): Answered<null> {
  throw new Error('not ready');
}
