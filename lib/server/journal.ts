// What the live document needs: may this person write or read, what was written so far, and one more update.
import type { Answered, Viewer } from './within.ts';

export type Journal = {
  /** State up to and with `upTo`, if one was kept; then the updates after it, oldest first. */
  readonly snapshot: { readonly upTo: number; readonly state: Uint8Array } | null;
  readonly updates: readonly { readonly seq: number; readonly update: Uint8Array }[];
};

/** null: not for this person, or no such draft. A submitted draft can be read only. */
export function permitDraft(_viewer: Viewer, _draftId: string): Promise<'write' | 'read' | null> {
  throw new Error('not ready');
}

export function readJournal(_viewer: Viewer, _draftId: string): Answered<Journal> {
  throw new Error('not ready');
}

/** Committed when it resolves; gives the update's place in the journal. Refused once the draft is submitted. */
export function appendUpdate(_viewer: Viewer, _draftId: string, _update: Uint8Array): Answered<number> {
  throw new Error('not ready');
}

/** Keeps `state` as the sum of the updates up to `upTo`. An older snapshot never replaces a newer one. */
export function keepSnapshot(_viewer: Viewer, _draftId: string, _upTo: number, _state: Uint8Array): Answered<null> {
  throw new Error('not ready');
}
