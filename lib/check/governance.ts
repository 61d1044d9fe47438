// What the record says about a candidate, as plain values: the checks on the change itself (107 to 118) read nothing else.
// A part that is null is not known here, and the check that needs it says so.

/** Days are whole days, UTC, as `2026-11-25`; people are opaque ids. */
export type Governance = {
  /** The day on which the question is asked. */
  readonly today: string;
};
