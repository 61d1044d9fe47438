// Drafts: opened, started, brought in from a file. The text itself is the journal's (journal.ts).
import type { Policy } from '../policy/policy.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { Settled } from './answers.ts';
import type { Answered, Viewer } from './within.ts';

/** Why a procedure changes. `dueOn` as YYYY-MM-DD. */
export type ChangeReason = {
  readonly reason: string;
  readonly source: string;
  readonly riskNote: string;
  readonly dueOn: string | null;
};

export type OpenDraft = {
  readonly draftId: string;
  readonly procedureId: string;
  readonly title: string;
  readonly number: number;
  readonly state: 'open' | 'submitted';
  /** The draft that took over when this one was submitted. */
  readonly nextDraftId: string | null;
  /** The candidate that was frozen from this draft. */
  readonly candidateId: string | null;
  readonly change: ChangeReason & { readonly ownedBy: string };
  readonly editors: readonly string[];
  /** The text as the journal has it now; the live document goes on from here. */
  readonly procedure: Procedure;
  /** Of what could not be read from the stored draft, in words. */
  readonly readProblems: readonly string[];
  /** Labels given so far in this procedure, by step id. */
  readonly labels: Readonly<Record<string, string>>;
  /** What the checks read. `sheet` is the stored content: give it to `readSheet`. */
  readonly sheet: { readonly revision: string; readonly content: unknown } | null;
  readonly policy: { readonly version: number; readonly policy: Policy } | null;
  /** Answers and waivers of this procedure, to be matched with the findings by check and `read`. */
  readonly settled: readonly Settled[];
  /** The issue in force, to compare with. */
  readonly base: { readonly number: number; readonly procedure: Procedure } | null;
  /** The latest candidate that came back, with why. */
  readonly sentBack: { readonly by: string; readonly at: string; readonly reason: string } | null;
  readonly may: {
    readonly write: boolean;
    readonly answer: boolean;
    readonly waive: boolean;
    readonly submit: boolean;
  };
};

export type DraftStarted = { readonly draftId: string; readonly procedureId: string };

/** One sitting of one person: journal entries less than half an hour apart. */
export type Sitting = { readonly by: string; readonly from: string; readonly until: string; readonly updates: number };

export function openDraft(_viewer: Viewer, _draftId: string): Answered<OpenDraft> {
  throw new Error('not ready');
}

/** An empty procedure with its first draft. */
export function createProcedure(
  _viewer: Viewer,
  _input: { title: string; change: ChangeReason },
): Answered<DraftStarted> {
  throw new Error('not ready');
}

/** A draft from the issue in force (else from the latest text there is). One draft of a procedure is open at a time. */
export function startDraft(_viewer: Viewer, _procedureId: string, _change: ChangeReason): Answered<DraftStarted> {
  throw new Error('not ready');
}

/** A new procedure from a file in the documented format, or a first draft of the procedure whose id the file carries. */
export function importProcedureFile(
  _viewer: Viewer,
  _input: { text: string; name: string; change: ChangeReason },
): Answered<DraftStarted> {
  throw new Error('not ready');
}

/** The draft as a file in the documented format. */
export function exportDraft(_viewer: Viewer, _draftId: string): Answered<{ name: string; text: string }> {
  throw new Error('not ready');
}

export function draftHistory(_viewer: Viewer, _draftId: string): Answered<readonly Sitting[]> {
  throw new Error('not ready');
}
