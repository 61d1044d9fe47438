// A finding is one answer shape for every engine: what, where, how bad, in pilot language, and a witness that anyone can replay.
import type { Conditions } from '../flight/trace.ts';
import type { Span } from '../gate/syntax.ts';

export type Severity = 'STOP' | 'ANSWER' | 'ADVICE';
export const SEVERITIES: readonly Severity[] = ['STOP', 'ANSWER', 'ADVICE'];

/** Where a finding points: a step and a field of it, or a field of the procedure itself (step ''). */
export type Place = { readonly step: string; readonly field: string };

/** One press, turn or automatic change, and the mode line after it. */
export type PathMove = {
  readonly does: string;
  readonly thrust: string;
  readonly lateral: string;
  readonly vertical: string;
  readonly armed: readonly string[];
};

/** No finding without one. `text`: the words in a field; `envelope`: a point of it; `path`: how it comes about, and on which
 *  guidance standards; `flight`: what happened when, flown under which conditions. */
export type Witness =
  | { readonly kind: 'text'; readonly field: string; readonly span: Span; readonly quote: string }
  | { readonly kind: 'absent'; readonly field: string }
  | { readonly kind: 'order'; readonly first: string; readonly second: string; readonly says: string }
  | { readonly kind: 'envelope'; readonly at: Readonly<Record<string, number>>; readonly says: string }
  | {
      readonly kind: 'path';
      readonly says: string;
      readonly standards: readonly string[];
      readonly steps: readonly PathMove[];
    }
  | {
      readonly kind: 'flight';
      readonly says: string;
      /** Flown again so, by this engine with the same sheet and policy, the same comes at the same moments. */
      readonly conditions: Conditions;
      readonly engine: string;
      readonly moments: readonly Moment[];
    };

/** s from the first moment flown; ft AAL; kt; ft/min. */
export type Moment = {
  readonly time: number;
  readonly says: string;
  readonly height: number;
  readonly speed: number;
  readonly verticalSpeed: number;
};

export type Finding = {
  /** Plain-word id of the check, e.g. `flap-above-limit`. */
  readonly check: string;
  readonly number: number;
  readonly severity: Severity;
  readonly at: Place;
  /** One sentence in pilot language: what is the matter and what it leads to. */
  readonly message: string;
  readonly witness: Witness;
  /** Same cause, same key: grouped on the screen. */
  readonly cause: string;
  readonly fix: Fix | null;
  /** Fingerprint of all that the check read; an answer is bound to it. */
  readonly read: string;
};

/** A certain correction, shown as the change it makes, never applied by itself. */
export type Fix = { readonly says: string; readonly at: Place; readonly value: string };

/** A check that could not be asked. It never passes in silence. */
export type NotChecked = {
  readonly check: string;
  readonly number: number;
  readonly because: string;
  /** Where, when it is one place; null: the check was not asked at all. */
  readonly at: Place | null;
};

/** A check that threw: a fault of the check, not of the procedure. It blocks submission, since nobody knows what it would say. */
export type Crash = { readonly check: string; readonly number: number; readonly error: string };
