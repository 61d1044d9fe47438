// Submitting: the text is read from the journal, checked with authority, frozen by its hash, and the draft closes.
import type { Answered, Viewer } from './within.ts';

export type Submitted = {
  readonly candidateId: string;
  readonly number: number;
  readonly sha256: string;
  /** Where later edits go. */
  readonly nextDraftId: string;
};

/** Refused with `stop-open`, `answer-missing`, `check-crashed`, `draft-malformed`: the details list each one. */
export function submitDraft(_viewer: Viewer, _draftId: string, _note: string): Answered<Submitted> {
  throw new Error('not ready');
}

/** The drafter takes a candidate back before it was decided. */
export function withdrawCandidate(_viewer: Viewer, _candidateId: string, _reason: string): Answered<null> {
  throw new Error('not ready');
}
