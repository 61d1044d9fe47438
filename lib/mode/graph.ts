// All reachable states of a machine with all edges, as flat lists: what properties, paths and compositions are read from.
import type { Machine } from './compile.ts';
import { outcomesOf } from './compile.ts';
import { type Exploration, explore, MOST_STATES, type System, systemWith } from './explore.ts';
import { type Line, lineOf } from './layout.ts';

export type Graph = {
  readonly machine: Machine;
  readonly system: System;
  readonly found: Exploration;
  /** Edges of state i: from `first[i]` up to, not including, `first[i + 1]`; each leads `to` a state's index by a `rule`. */
  readonly first: Int32Array;
  readonly to: Int32Array;
  readonly rule: Uint16Array;
  /** The states in words, in the order found. */
  readonly lines: readonly Line[];
  readonly complete: boolean;
  readonly reason: string | null;
};

/** The machine as a system to explore. The label of a move is the index of its rule. */
export function systemOf(machine: Machine): System {
  const made: number[] = [];
  const expand = (state: number, to: Int32Array, by: Int32Array | null): number => {
    let count = 0;
    for (let rule = 0; rule < machine.rules.length; rule += 1) {
      for (const next of outcomesOf(machine, rule, state, made)) {
        to[count] = next;
        if (by !== null) by[count] = rule;
        count += 1;
      }
    }
    return count;
  };
  const { modes } = machine;
  const widest = modes.rules.reduce((sum, rule) => sum + widthOf('any' in rule ? rule.any : [rule]), 0);
  return systemWith({ initial: machine.initial, bits: machine.layout.bits, expand, widest });
}

const widthOf = (parts: readonly { readonly then: { vertical_each?: string[]; rel_each?: string[] } }[]): number =>
  parts.reduce((sum, { then }) => sum + (then.vertical_each?.length ?? 1) * (then.rel_each?.length ?? 1), 0);

export function graphOf(machine: Machine, mostStates = MOST_STATES): Graph {
  const system = systemOf(machine);
  const found = explore(system, mostStates);
  const index = new Map<number, number>();
  for (const [i, state] of found.states.entries()) index.set(state, i);
  const first = new Int32Array(found.states.length + 1);
  const to = new Int32Array(found.edges);
  const rule = new Uint16Array(found.edges);
  const next = new Int32Array(system.widest);
  const by = new Int32Array(system.widest);
  let edges = 0;
  for (const [i, state] of found.states.entries()) {
    const count = system.expand(state, next, by);
    for (let k = 0; k < count; k += 1) {
      const there = index.get(next[k]!);
      // Beyond the limit: the graph says that it is not complete.
      if (there === undefined) continue;
      to[edges] = there;
      rule[edges] = by[k]!;
      edges += 1;
    }
    first[i + 1] = edges;
  }
  return {
    machine,
    system,
    found,
    first,
    to: to.subarray(0, edges),
    rule: rule.subarray(0, edges),
    lines: Array.from(found.states, (state) => lineOf(machine.layout, state)),
    complete: found.complete,
    reason: found.reason,
  };
}
