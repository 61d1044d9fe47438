// What the record says about a text and its change, as plain values: the checks on the change itself (107 to 118) read
// nothing else of it. A part that is null is not known here, and the check that needs it says so. Nothing is fetched.
import type { Procedure } from '../procedure/procedure.ts';
import type { Answer } from './answer.ts';

/** Why something changed. `step` and `field` '': all that is not marked otherwise. */
export type Mark = {
  readonly step: string;
  readonly field: string;
  readonly reason: string;
  readonly source: string;
  readonly risk: string;
};

/** What the text is compared with, and what was said about the difference. `base` null: no issue was signed before. */
export type ChangeFacts = {
  readonly base: { readonly issue: number; readonly procedure: Procedure } | null;
  readonly marks: readonly Mark[];
};

/** A place where the text is other than the manufacturer's data that it cites. `limit`: a limit is what differs. */
export type Difference = {
  readonly step: string;
  readonly what: 'order' | 'value' | 'omitted';
  readonly source: string;
  readonly theirs: string;
  readonly limit: boolean;
};
/** A row of the difference register; `family` '' names the step alone. */
export type DifferenceRow = {
  readonly step: string;
  readonly family: string;
  readonly reason: string;
  readonly risk: string;
  readonly acceptedBy: string;
};
export type Differences = { readonly found: readonly Difference[]; readonly register: readonly DifferenceRow[] };

/** A source that the text cites. `newer` null: what is cited is the newest. `temporary`: a temporary revision. */
export type SourceFact = {
  readonly id: string;
  readonly title: string;
  readonly cited: string;
  readonly newer: { readonly revision: string; readonly temporary: boolean } | null;
  /** Steps that cite it ('': the procedure), and what became of the cited value in the newer revision. */
  readonly uses: readonly {
    readonly step: string;
    readonly value: string;
    readonly now: 'changed' | 'same' | 'not compared';
    readonly newValue: string;
  }[];
};

export type WaiverFact = {
  readonly check: string;
  readonly by: string;
  readonly standardsCaptain: boolean;
  readonly reason: string;
  readonly until: string | null;
  readonly shownToSigner: boolean;
};
/** An issue as it is being signed, or was. People are opaque ids; hashes are hexadecimal. */
export type Signing = {
  readonly drafters: readonly string[];
  readonly recommendedBy: string | null;
  readonly signedBy: string;
  readonly waivers: readonly WaiverFact[];
  readonly signedHash: string;
  readonly publishedHash: string;
  readonly recorded: {
    readonly sheet: string | null;
    readonly checkSet: string | null;
    readonly policy: string | null;
  };
  /** The number given in the act of signing; null when it was given before or never. */
  readonly issue: number | null;
};

export type Share = { readonly have: number; readonly of: number };
/** Days of what must come before an issue is flown. `wanted` false: not needed here; null: nobody has said. */
export type GoingLive = {
  readonly effective: string;
  readonly signed: string;
  readonly authority: { readonly wanted: boolean; readonly given: string | null } | null;
  readonly training: { readonly wanted: boolean; readonly done: Share } | null;
  readonly acknowledged: Share;
  /** Crews were briefed one by one in the meantime, and that is recorded. */
  readonly briefed: boolean;
};

export type TemporaryRevision = {
  readonly name: string;
  readonly step: string;
  readonly parentIssue: number | null;
  readonly expires: string | null;
  /** The latest issue under which it was looked at again. */
  readonly validatedFor: number | null;
  /** What the text asked about says of it; null: nothing. */
  readonly fate: { readonly how: 'absorbed' | 'kept' | 'cancelled'; readonly says: string } | null;
};
/** `issue`: the issue in force, on which they lie. */
export type Revisions = { readonly issue: number; readonly list: readonly TemporaryRevision[] };

export type Held = { readonly issue: number; readonly hash: string };
export type Device = {
  readonly name: string;
  readonly tail: string;
  readonly shows: Held;
  readonly asCurrent: boolean;
  readonly synchronised: string;
  /** In the air a text is not exchanged. */
  readonly airborne: boolean;
};
export type Devices = { readonly current: Held; readonly list: readonly Device[] };

/** An answer or waiver with what its check reads now; `readNow` null: it says nothing there any more. */
export type StandingAnswer = Pick<Answer, 'kind' | 'check' | 'at' | 'reason' | 'on' | 'until' | 'read'> & {
  readonly readNow: string | null;
};

export type Feedback = { readonly step: string; readonly on: string; readonly answered: boolean };

/** Days are whole days, UTC, as `2026-11-25`; people are opaque ids. */
export type Governance = {
  /** The day on which the question is asked. */
  readonly today: string;
  readonly change: ChangeFacts | null;
  readonly differences: Differences | null;
  readonly sources: readonly SourceFact[] | null;
  readonly signing: Signing | null;
  readonly goingLive: GoingLive | null;
  readonly revisions: Revisions | null;
  readonly devices: Devices | null;
  readonly answers: readonly StandingAnswer[] | null;
  readonly feedback: readonly Feedback[] | null;
};

/** What is known of a change on a day; what is not given is not known. */
export function governanceOn(today: string, known: Partial<Omit<Governance, 'today'>> = {}): Governance {
  return {
    today,
    change: null,
    differences: null,
    sources: null,
    signing: null,
    goingLive: null,
    revisions: null,
    devices: null,
    answers: null,
    feedback: null,
    ...known,
  };
}

/** Why a check of one of the parts was not asked. */
export const NOT_KNOWN = {
  change: 'the issue before and the reasons for the change were not given',
  differences: 'the comparison with the manufacturer and the difference register were not given',
  sources: 'the table of sources was not given',
  signing: 'the sign-offs of this text were not given',
  goingLive: 'the dates of going live and the acknowledgements were not given',
  revisions: 'the table of temporary revisions was not given',
  devices: 'the state of the devices was not given',
  answers: 'the answers and waivers were not given',
  feedback: 'the feedback of the line was not given',
} as const satisfies Readonly<Record<Exclude<keyof Governance, 'today'>, string>>;

/** Where a finding points that is about the text as a whole. */
export const WHOLE = { step: '', field: 'title' } as const;

/** Whole days from one day to another; negative when it lies before. */
export const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);
