// The frame of the checks. A rule is a value; rules never import rules; a rule may read facts and nothing else.

import type { Sheet } from '../aircraft/sheet.ts';
import type { Parsed } from '../gate/syntax.ts';
import type { Fleet, Library } from '../library/library.ts';
import type { Flights } from '../mode/flights.ts';
import type { Policy } from '../policy/policy.ts';
import type { Phase, Procedure, Step } from '../procedure/procedure.ts';
import type { StepState } from '../procedure/walk.ts';
import type { Corpus } from './corpus.ts';
import type { Need } from './facts.ts';
import type { Fix, Place, Severity, Witness } from './finding.ts';
import type { Flown } from './flown.ts';
import type { Governance } from './governance.ts';

export type Stage = 'writing' | 'submission' | 'publication' | 'in force';
export type Kind = 'T' | 'N' | 'X' | 'S' | 'T/N' | 'N/S' | 'X/S' | 'T/X';

export type Report<Message extends string> = (found: {
  readonly at: Place;
  readonly message: Message;
  readonly data?: Readonly<Record<string, string | number>>;
  readonly witness: Witness;
  readonly cause?: string;
  readonly fix?: Fix;
  /** Where the catalogue names two: the lower one of this case. Left out: the rule's own. */
  readonly severity?: Severity;
  /** Values that the check read beyond the step itself (sheet cells, policy values): an answer is bound to them too. */
  readonly read?: readonly (string | number)[];
}) => void;

export type RuleContext = {
  readonly procedure: Procedure;
  /** In reading order, those of branches after the main line. */
  readonly steps: readonly Step[];
  /** The same steps with what may be the case before and after each. Without a sheet, detents go by their figures. */
  readonly states: readonly StepState[];
  /** The procedure explored with the sheet's mode table, as written: no slip, no surprise. For rules that need the sheet. */
  readonly flights: Flights;
  /** The procedure flown over its envelope. For rules that need sheet and policy. */
  readonly flown: Flown;
  /** Each given only to a rule that needs it. */
  readonly sheet: Sheet;
  readonly policy: Policy;
  readonly library: Library;
  /** What the operator's other procedures tell, asked by kind and key. */
  readonly others: Corpus;
  readonly fleet: Fleet;
  readonly governance: Governance;
  /** Parses gate notation, once for each text. */
  readonly gate: (text: string) => Parsed;
  /** Says that something of this rule could not be asked at a place, and why. */
  readonly unasked: (because: string, at: Place) => void;
};

export type Rule<Message extends string = string> = {
  readonly id: string;
  readonly number: number;
  readonly severity: Severity;
  readonly kind: Kind;
  readonly stage: Stage;
  readonly phases: readonly Phase[] | 'all';
  readonly title: string;
  readonly says: string;
  readonly why: string;
  /** By report or paragraph number; `seen` false: from memory. */
  readonly source: { readonly text: string; readonly seen: boolean };
  readonly needs: readonly Need[];
  /** Raised when the rule begins to say something else: answers given to the earlier version are asked again. */
  readonly version?: number;
  /** The fields of a step that the rule reads; an answer is bound to these and survives a change of any other. */
  readonly reads: readonly (keyof Step)[];
  /** `{name}` is filled from `data`. */
  readonly messages: Readonly<Record<Message, string>>;
  /** YAML: a list of steps, or the parts of a procedure; what is left out is clean (procedure/build.ts). `sheet`,
   *  `library`, `fleet`, `governance`: what is other there; `others`: the operator's other procedures. */
  readonly examples: { readonly bad: string; readonly good: string };
  readonly run: (context: RuleContext, report: Report<Message>) => void;
};

/** Gives the compiler the message names; the value goes through as it is. */
export function defineRule<Message extends string>(rule: Rule<Message>): Rule<Message> {
  return rule;
}
