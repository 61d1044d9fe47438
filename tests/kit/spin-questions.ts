// Small machines with a fault planted in half of them, and the same question for the explorer and for SPIN.
import type { ModeSet } from '../../lib/aircraft/mode-set.ts';
import { compile } from '../../lib/mode/compile.ts';
import { graphOf } from '../../lib/mode/graph.ts';
import { promela } from '../../lib/mode/promela.ts';
import { judge } from '../../lib/mode/properties.ts';
import { dice, randomTable, ruling } from './mode-tables.ts';
import { askSpin } from './spin.ts';

/** What must not come about: a thrust word with a vertical word. */
type Fault = { readonly thrust: string; readonly vertical: string };

/** A table, and the forbidden pair. In every other table one rule is turned so that it leads straight there. */
export function planted(seed: number): { readonly modes: ModeSet; readonly fault: Fault } {
  const modes = randomTable(seed);
  const roll = dice(seed + 7_000);
  const fault = { thrust: roll.pick(modes.thrust), vertical: roll.pick(modes.vertical) };
  if (seed % 2 === 0) return { modes, fault };
  const which = roll.below(modes.rules.length);
  const rules = modes.rules.map((rule, index) =>
    index !== which || 'any' in rule ? rule : { ...rule, ...ruling(rule.when, { ...fault }) },
  );
  return { modes: { ...modes, rules }, fault };
}

export type Compared = {
  readonly seed: number;
  readonly ours: readonly [states: number, cases: number];
  readonly spins: readonly [states: number, cases: number];
};

/** SPIN counts the state before the start is chosen as one more. */
export function compared(seed: number): Compared {
  const { modes, fault } = planted(seed);
  const machine = compile(modes, 'ONE');
  if (!machine.ok) throw new Error(JSON.stringify(machine.error));
  const graph = graphOf(machine.value);
  const forbidden = (line: { thrust: string; vertical: string }) =>
    line.thrust === fault.thrust && line.vertical === fault.vertical;
  const [verdict] = judge(graph, [{ id: 'planted', says: '', state: forbidden }]);
  const never = `th == ${modes.thrust.indexOf(fault.thrust)} && ve == ${modes.vertical.indexOf(fault.vertical)}`;
  const spin = askSpin(promela(modes, 'ONE', never));
  return { seed, ours: [graph.lines.length, verdict!.cases], spins: [spin.states - 1, spin.errors] };
}
