// What an operator keeps beside its procedures: cards of aerodromes, words, lists. Values only; nothing here checks anything.

/** Who speaks and acts. A library knows no procedure, so the words stand here again; the file reader keeps the two alike. */
export type Role = 'PF' | 'PM' | 'captain' | 'first officer' | 'each' | 'cabin crew' | 'ground crew';

/** Lengths in m, heights AAL and altitudes MSL in ft, as charted; null where the card has no such value. */
export type Aerodrome = {
  readonly code: string;
  readonly name: string;
  readonly elevation: number;
  readonly runway: { readonly designator: string; readonly length: number };
  readonly remark: string;
  readonly noiseClass: 'close-in' | 'distant' | 'none';
  /** All engines, ft AAL. */
  readonly climbThrustHeight: number;
  readonly accelerationHeight: number;
  readonly goAroundAccelerationHeight: number;
  readonly engineOutAccelerationHeight: number;
  /** ft MSL. */
  readonly transitionAltitude: number;
  readonly minima: { readonly kind: 'DA' | 'MDA'; readonly altitude: number; readonly height: number };
  readonly finalApproachFix: number;
  readonly stepDowns: readonly number[];
  readonly missedApproachAltitude: number;
  readonly missedApproachGradient: string;
  readonly obstacle: string;
  readonly routeLimits: readonly string[];
  /** Lowest altitude outside the charted segments, ft MSL; null where the card has none. */
  readonly sectorMinimum: number | null;
};

export type Callout = {
  readonly id: string;
  readonly words: string;
  readonly by: Role | 'either' | 'the other';
  readonly trigger: string;
  /** '' where silence is the answer; then `silent` says why. */
  readonly reply: string;
  readonly replyBy: Role | 'either' | 'the other' | '';
  readonly replyAct: string;
  readonly silent: string;
  readonly purpose: string;
};

export type TermEntry = {
  readonly term: string;
  readonly meaning: string;
  readonly allowed: readonly string[];
  readonly forbidden: readonly string[];
};

export type Checklist = {
  readonly id: string;
  readonly title: string;
  readonly calledBy: Role;
  readonly readBy: Role;
  readonly trigger: string;
  readonly method: 'do-then-verify' | 'read-and-do';
  readonly items: readonly {
    readonly challenge: string;
    readonly response: string;
    readonly by: Role;
    /** Labels of the steps that did it before the list was called. */
    readonly steps: readonly string[];
  }[];
  readonly complete: string;
};

/** `seen` false: from memory, to be verified before a paragraph number is printed. */
export type Source = {
  readonly id: string;
  readonly publisher: 'manufacturer data' | 'regulation' | 'safety event' | 'company policy';
  readonly title: string;
  readonly revision: string;
  readonly date: string;
  readonly seen: boolean;
  readonly status: 'current' | 'superseded';
};

export type Library = {
  readonly aerodromes: readonly Aerodrome[];
  readonly callouts: readonly Callout[];
  readonly terms: readonly TermEntry[];
  readonly checklists: readonly Checklist[];
  readonly sources: readonly Source[];
};

export type PersonRole =
  | 'technical pilot'
  | 'training captain'
  | 'standards captain'
  | 'approver'
  | 'line pilot'
  | 'auditor'
  | 'administrator';

/** Dates are whole days, UTC, as `2026-01-05`; `until` null: open. */
export type Person = {
  readonly id: string;
  readonly name: string;
  readonly signIn: string;
  readonly title: string;
  readonly roles: readonly { readonly role: PersonRole; readonly from: string; readonly until: string | null }[];
};

export type Tail = {
  readonly registration: string;
  readonly type: string;
  readonly options: readonly {
    readonly option: 'standard';
    readonly value: 'A' | 'B';
    readonly from: string;
    readonly until: string | null;
  }[];
};
export type Fleet = {
  readonly operator: string;
  readonly name: string;
  readonly type: string;
  readonly sheetRevision: string;
  readonly tails: readonly Tail[];
};
