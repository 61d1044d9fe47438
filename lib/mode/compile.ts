// The mode table of a sheet as a state machine on packed integers, and its exploration. This folder knows no aircraft: words,
// guards and effects come from the table. It refuses first what it can't analyse, with the reason; a limit gives a partial
// answer that says so. Speeds, heights and times are not modelled: what is found here is possible, not how often or when.
import type { ModeSet, ModeTransition } from '../aircraft/mode-set.ts';
import { err, ok, type Result } from '../base/result.ts';
import { bitsOf, type Layout, layoutOf, write } from './layout.ts';
import { refusals } from './refuse.ts';
import { caseOf, type Excludes, holds, type RuleCase, sameText } from './rule-code.ts';

export type MachineRule = {
  readonly id: string;
  readonly who: ModeTransition['who'];
  readonly event: string;
  readonly effect: string;
  readonly cases: readonly RuleCase[];
};

export type Machine = {
  readonly modes: ModeSet;
  readonly standard: string;
  readonly layout: Layout;
  /** Packed, in the order of the sheet, each once. */
  readonly initial: readonly number[];
  readonly rules: readonly MachineRule[];
};

/** A sentence for each thing that keeps the table from being analysed, with its place in it. */
export type Refusal = { readonly at: string; readonly because: string };

/**
 * The machine of one guidance standard. Refused tables come back with every reason, not with the first. `excludes` proves which
 * predicates can't be so together; what it does not prove is taken as possible.
 */
export function compile(
  modes: ModeSet,
  standard: string,
  excludes: Excludes = sameText,
): Result<Machine, readonly Refusal[]> {
  const reasons = refusals(modes, standard);
  if (reasons.length > 0) return err(reasons);
  const layout = layoutOf(modes);
  const rules = modes.rules.map((rule): MachineRule => {
    const parts = 'any' in rule ? rule.any : [rule];
    const cases = parts.map((part) => caseOf(modes, layout, standard, part, excludes));
    return { id: rule.id, who: rule.who, event: rule.event, effect: rule.effect, cases };
  });
  const initial = modes.initial.map((line) => {
    let state = 0;
    for (const axis of ['thrust', 'lateral', 'vertical', 'rel', 'phase'] as const) {
      state = write(layout[axis], state, modes[axis].indexOf(line[axis]));
    }
    state = write(layout.armedVertical, state, bitsOf(layout.armedVertical, line.armed_vertical));
    return write(layout.armedLateral, state, bitsOf(layout.armedLateral, line.armed_lateral));
  });
  return ok({ modes, standard, layout, initial: [...new Set(initial)], rules });
}

/** Every state that the rule makes of this one, each once; empty where its guard does not hold. */
export function outcomesOf(machine: Machine, rule: number, state: number, into: number[] = []): readonly number[] {
  into.length = 0;
  for (const each of machine.rules[rule]!.cases) {
    if (holds(each.guard, machine.layout, state)) each.outcomes(state, into);
  }
  return into;
}
