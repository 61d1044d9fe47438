// A witness as pilots can follow it: key presses and automatic changes in order, with the three axes and what is armed after each.
import { labelInto, trail } from './explore.ts';
import type { Graph } from './graph.ts';
import type { Line } from './layout.ts';

export type PathStep = {
  /** Who acts: a hand on a control, the guidance, or what happens outside. `start`: the state before anything. */
  readonly who: 'start' | 'crew' | 'auto' | 'environment';
  /** Id of the rule, '' at the start and where no rule acted. */
  readonly rule: string;
  readonly does: string;
  readonly line: Line;
};

/** The shortest path to a state of the machine alone, from an initial state. */
export function pathTo(graph: Graph, index: number): readonly PathStep[] {
  return trail(graph.found, index).map((at): PathStep => {
    const rule = labelInto(graph.system, graph.found, at);
    const line = graph.lines[at]!;
    if (rule < 0) return { who: 'start', rule: '', does: 'before', line };
    const { who, id, event } = graph.machine.rules[rule]!;
    return { who, rule: id, does: event, line };
  });
}

/** One more edge behind a path: what a single rule makes of its end. */
export function andThen(graph: Graph, path: readonly PathStep[], edge: number): readonly PathStep[] {
  const { who, id, event } = graph.machine.rules[graph.rule[edge]!]!;
  return [...path, { who, rule: id, does: event, line: graph.lines[graph.to[edge]!]! }];
}

/** `T01 levers to take-off > T02 V1 passed`: the presses and changes of a path in one line. */
export function pathWords(path: readonly PathStep[]): string {
  return path
    .filter((step) => step.who !== 'start')
    .map((step) => `${step.rule} ${step.does}`.trim())
    .join(' > ');
}
