// The first screen of everyone who writes, reviews or signs: what waits for me, and where every procedure stands.
import type { Answered, Viewer } from './within.ts';

export type DraftLine = {
  readonly draftId: string;
  readonly procedureId: string;
  readonly title: string;
  readonly number: number;
  readonly reason: string;
  /** ISO day or null. */
  readonly dueOn: string | null;
  readonly editors: readonly string[];
  /** Last journal entry made by a person, ISO time; null when nobody has written yet. */
  readonly lastEdit: string | null;
  readonly mine: boolean;
};

export type CandidateState = 'waiting' | 'recommended' | 'signed' | 'sent back' | 'refused' | 'withdrawn';

export type CandidateLine = {
  readonly candidateId: string;
  readonly procedureId: string;
  readonly title: string;
  readonly number: number;
  readonly state: CandidateState;
  readonly submittedBy: string;
  readonly submittedAt: string;
  /** Why it was sent back, refused or withdrawn; '' otherwise. */
  readonly reason: string;
  /** Whether the viewer may take the next decision on it. */
  readonly may: { readonly review: boolean; readonly sign: boolean };
};

export type ProcedureLine = {
  readonly procedureId: string;
  readonly title: string;
  readonly class: string;
  readonly phases: readonly string[];
  readonly openDraftId: string | null;
  readonly underReview: string | null;
  /** The issue in force now, whatever the tail; null when none was signed or none has begun. */
  readonly issue: { readonly number: number; readonly inForceSince: string } | null;
  readonly next: { readonly number: number; readonly inForceFrom: string } | null;
};

export type Desk = {
  readonly drafts: readonly DraftLine[];
  /** Waiting for a review, then waiting for a signature. */
  readonly review: readonly CandidateLine[];
  readonly signing: readonly CandidateLine[];
  /** Decided in the last 30 days on text that the viewer submitted. */
  readonly decided: readonly CandidateLine[];
  readonly procedures: readonly ProcedureLine[];
  readonly may: {
    readonly write: boolean;
    readonly readDrafts: boolean;
    readonly review: boolean;
    readonly sign: boolean;
  };
};

export function desk(_viewer: Viewer): Answered<Desk> {
  throw new Error('not ready');
}
