// The record, read: a list, the answers to an auditor's first questions, a check of the chain, the whole as a file.
import type { Answered, Viewer } from './within.ts';

export type RecordLine = {
  readonly seq: number;
  readonly at: string;
  readonly by: string;
  readonly act: string;
  readonly subject: string;
  /** The entry's own data, as recorded. */
  readonly body: Readonly<Record<string, unknown>>;
  readonly hash: string;
};

export type RecordFilter = {
  readonly act?: string;
  readonly personId?: string;
  /** Id of a procedure, draft, candidate, tail or person. */
  readonly subject?: string;
  readonly from?: string;
  readonly until?: string;
  /** Entries before this one: the next page. */
  readonly before?: number;
};

export type RecordPage = {
  readonly lines: readonly RecordLine[];
  readonly more: boolean;
  readonly acts: readonly string[];
  readonly people: readonly { readonly id: string; readonly name: string }[];
};

/** Audit questions 1 to 3 and 6: what was in force for the tail then, who signed it, on which sources, who had read it. */
export type InForceAnswer = {
  readonly registration: string;
  readonly at: string;
  readonly standard: string;
  readonly issues: readonly {
    readonly procedureId: string;
    readonly title: string;
    readonly issueNumber: number;
    readonly from: string;
    readonly until: string | null;
    readonly sha256: string;
    readonly signedBy: string;
    readonly signedAs: string;
    readonly signedAt: string;
    readonly recommendedBy: string;
    readonly editedBy: readonly string[];
    readonly waivers: readonly {
      readonly check: string;
      readonly by: string;
      readonly reason: string;
      readonly expiresAt: string;
    }[];
    readonly sheetRevision: string;
    /** The newest revision at that time, when it was newer. */
    readonly newerRevision: string | null;
    readonly policyVersion: number;
    readonly checkSet: string;
    readonly acknowledgedBy: readonly { readonly name: string; readonly at: string }[];
    readonly notAcknowledgedBy: readonly string[];
  }[];
};

export type Verified =
  | { readonly ok: true; readonly entries: number; readonly head: string }
  | { readonly ok: false; readonly entries: number; readonly brokenAt: number; readonly because: string };

export function readRecord(_viewer: Viewer, _filter: RecordFilter): Answered<RecordPage> {
  throw new Error('not ready');
}

export function inForceAt(_viewer: Viewer, _registration: string, _at: string): Answered<InForceAnswer> {
  throw new Error('not ready');
}

export function verifyRecord(_viewer: Viewer): Answered<Verified> {
  throw new Error('not ready');
}

/** One line an entry (JSON), which anyone can verify with lib/approval alone. */
export function exportRecord(_viewer: Viewer): Answered<{ name: string; text: string }> {
  throw new Error('not ready');
}
