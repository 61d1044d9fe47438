// The reader: what is in force for one tail, and nothing from drafts or candidates.
import type { Procedure } from '../procedure/procedure.ts';
import type { Answered, Viewer } from './within.ts';

export type TailLine = {
  readonly registration: string;
  readonly fleet: string;
  readonly type: string;
  /** Guidance standard held now; '' when none was entered. */
  readonly standard: string;
};

export type InForceLine = {
  readonly procedureId: string;
  readonly title: string;
  readonly class: string;
  readonly phases: readonly string[];
  readonly issueNumber: number;
  readonly inForceSince: string;
  readonly acknowledged: boolean;
  /** An issue that is signed and still to come. */
  readonly next: { readonly number: number; readonly inForceFrom: string } | null;
};

export type InForceList = { readonly tail: TailLine; readonly asOf: string; readonly lines: readonly InForceLine[] };

export type ReadIssue = {
  readonly procedureId: string;
  readonly issueNumber: number;
  /** With every label in place. */
  readonly procedure: Procedure;
  readonly sha256: string;
  readonly tail: TailLine | null;
  readonly asOf: string;
  readonly inForce: boolean;
  readonly inForceFrom: string;
  readonly inForceUntil: string | null;
  readonly signedBy: string;
  readonly signedAt: string;
  readonly acknowledgedAt: string | null;
  /** Steps that differ from the issue that the viewer acknowledged before; null when there was none. */
  readonly changedSince: { readonly issueNumber: number; readonly steps: readonly string[] } | null;
  /** For the bands. `content` goes to `readSheet`. */
  readonly sheet: { readonly revision: string; readonly content: unknown } | null;
  readonly may: { readonly acknowledge: boolean };
};

export function tails(_viewer: Viewer): Answered<readonly TailLine[]> {
  throw new Error('not ready');
}

/** At `at` (ISO), or now. */
export function inForce(_viewer: Viewer, _registration: string, _at?: string): Answered<InForceList> {
  throw new Error('not ready');
}

/** The issue of that procedure in force now for that tail. */
export function readIssue(_viewer: Viewer, _registration: string, _procedureId: string): Answered<ReadIssue> {
  throw new Error('not ready');
}

/** Any signed issue, with `inForce` false when it is not. */
export function oldIssue(_viewer: Viewer, _procedureId: string, _issueNumber: number): Answered<ReadIssue> {
  throw new Error('not ready');
}

/** All issues of a procedure, newest first. */
export function issuesOf(
  _viewer: Viewer,
  _procedureId: string,
): Answered<readonly { number: number; from: string; until: string | null; signedBy: string; signedAt: string }[]> {
  throw new Error('not ready');
}

/** Once for a person and issue; the second time gives the first time's receipt. */
export function acknowledge(
  _viewer: Viewer,
  _input: { registration: string; procedureId: string; issueNumber: number; device: string },
): Answered<{ acknowledgedAt: string }> {
  throw new Error('not ready');
}
