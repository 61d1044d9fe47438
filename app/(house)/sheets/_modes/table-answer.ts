// What the explorer says of a table that somebody edits, as plain data that a worker can send: is it odd, and how do the words of
// each axis hang together.
import type { ModeSet } from '../../../../lib/aircraft/mode-set.ts';
import { compile } from '../../../../lib/mode/compile.ts';
import { graphOf } from '../../../../lib/mode/graph.ts';
import { axisDrawing, checkTable, type TableProblem } from '../../../../lib/mode/self-check.ts';
import { AXES, type Axis } from '../mode-grid.ts';

/** Enough for any table of a sheet so far; beyond it the answer is of the part explored, and says so. */
export const MOST_STATES = 50_000;

/** A rule that takes an axis from any of these words to another. `standards`: where it does, if not everywhere. */
export type Stroke = {
  readonly rule: string;
  readonly from: readonly string[];
  readonly to: string;
  readonly standards: readonly string[];
};
export type TableFinding = TableProblem & { readonly standards: readonly string[] };
export type TableAnswer = {
  readonly standards: readonly {
    readonly standard: string;
    readonly states: number;
    readonly edges: number;
    /** Why only a part was explored; null: all of it. */
    readonly reason: string | null;
  }[];
  /** Why the table of some standard can't be explored at all. */
  readonly refused: readonly { readonly at: string; readonly because: string }[];
  readonly findings: readonly TableFinding[];
  readonly strokes: Readonly<Record<Axis, readonly Stroke[]>>;
};

export function tableAnswer(modes: ModeSet): TableAnswer {
  const names = Object.keys(modes.standards);
  const machines = names.map((standard) => compile(modes, standard));
  const refused = new Map<string, { at: string; because: string }>();
  for (const machine of machines) {
    for (const one of machine.ok ? [] : machine.error) refused.set(`${one.at} ${one.because}`, one);
  }
  const graphs = machines.flatMap((machine) => (machine.ok ? [graphOf(machine.value, MOST_STATES)] : []));
  const findings = new Map<string, TableFinding>();
  for (const graph of graphs) {
    for (const problem of checkTable(graph)) {
      const key = `${problem.kind} ${problem.at} ${problem.message}`;
      const standards = [...(findings.get(key)?.standards ?? []), graph.machine.standard];
      findings.set(key, { ...problem, ...findings.get(key), standards });
    }
  }
  const strokes = Object.fromEntries(
    AXES.map((axis) => {
      const drawn = graphs.map((graph) => ({ standard: graph.machine.standard, edges: axisDrawing(graph, axis) }));
      return [axis, strokesOf(modes, axis, drawn)] as const;
    }),
  ) as Record<Axis, readonly Stroke[]>;
  return {
    standards: graphs.map(({ machine, found, complete, reason }) => ({
      standard: machine.standard,
      states: found.states.length,
      edges: found.edges,
      reason: complete ? null : reason,
    })),
    refused: [...refused.values()],
    findings: [...findings.values()],
    strokes,
  };
}

type Drawn = { readonly standard: string; readonly edges: ReturnType<typeof axisDrawing> };

/** In the order of the rules, then of the words that they lead to. */
function strokesOf(modes: ModeSet, axis: Axis, drawn: readonly Drawn[]): readonly Stroke[] {
  const met = new Map<string, Map<string, Set<string>>>();
  for (const { standard, edges } of drawn) {
    for (const { from, to, rules } of edges) {
      for (const rule of rules) {
        const key = `${rule} ${to}`;
        const words = met.get(key) ?? new Map<string, Set<string>>();
        met.set(key, words.set(from, (words.get(from) ?? new Set<string>()).add(standard)));
      }
    }
  }
  return modes.rules.flatMap(({ id }) =>
    modes[axis].flatMap((to): readonly Stroke[] => {
      const words = met.get(`${id} ${to}`);
      if (words === undefined) return [];
      const everywhere = [...words.values()].every((standards) => standards.size === drawn.length);
      const standards = everywhere ? [] : [...new Set([...words.values()].flatMap((some) => [...some]))].sort();
      return [{ rule: id, from: modes[axis].filter((word) => words.has(word)), to, standards }];
    }),
  );
}
