// All that a rule may be given beside the procedure. Facts that are missing are null, and a rule that needs them is then
// "not checked, because …"; nothing here is fetched, everything is handed in.
import type { Sheet } from '../aircraft/sheet.ts';
import type { Fleet, Library } from '../library/library.ts';
import type { Policy } from '../policy/policy.ts';
import type { Governance } from './governance.ts';
import type { Told } from './told.ts';

export type Facts = {
  readonly sheet: Sheet | null;
  readonly policy: Policy | null;
  /** Aerodrome cards, callouts, terms, checklists, sources. */
  readonly library: Library | null;
  /** What the operator's other procedures tell (`toldBy`): as in force, else as last drafted. The one asked about is not
   *  among them. */
  readonly others: readonly Told[] | null;
  readonly fleet: Fleet | null;
  readonly governance: Governance | null;
};
export type Need = keyof Facts;

export const NO_FACTS: Facts = {
  sheet: null,
  policy: null,
  library: null,
  others: null,
  fleet: null,
  governance: null,
};

/** Why a check that needs the fact was not asked. */
export const MISSING: Readonly<Record<Need, string>> = {
  sheet: 'no type data sheet was given',
  policy: "the operator's policy was not given",
  library: "the operator's library was not given",
  others: "the operator's other procedures were not given",
  fleet: 'the list of tails was not given',
  governance: 'the record of the change was not given',
};
