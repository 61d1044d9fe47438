// What must not come about, or must be known when it does. A property is asked of every reachable state, or of every edge;
// all of them in one pass, each with the number of cases and a shortest witness.
import type { Graph } from './graph.ts';
import type { Line } from './layout.ts';
import { andThen, type PathStep, pathTo } from './path.ts';
import { ALTITUDE } from './rule-code.ts';

export type Property = {
  readonly id: string;
  /** In pilot language: what is the case. */
  readonly says: string;
  readonly state?: (line: Line, graph: Graph) => boolean;
  readonly edge?: (from: Line, rule: string, to: Line, graph: Graph) => boolean;
};

export type Verdict = {
  readonly id: string;
  readonly says: string;
  /** States or edges in which it is so. 0 in an incomplete exploration means "none found". */
  readonly cases: number;
  /** From the shortest path to the first of them; empty when there is none. */
  readonly witness: readonly PathStep[];
};

const climbs = (line: Line, graph: Graph): boolean => graph.machine.modes.climbing.includes(line.vertical);
const descends = (line: Line, graph: Graph): boolean => graph.machine.modes.descending.includes(line.vertical);
const stops = (line: Line): boolean => line.armed.includes(ALTITUDE);
/** Before the first phase ends no aircraft flies: its states are counted and never shown as a witness. */
const flying = (line: Line, graph: Graph): boolean =>
  !graph.machine.modes.initial.some((at) => at.phase === line.phase);

/** Properties that hold of any table with a selected altitude; none names a mode of a type. */
export const GENERAL: readonly Property[] = [
  {
    id: 'climbing-unarmed-toward',
    says: 'climbing toward the selected altitude with nothing armed to stop there',
    state: (line, graph) => flying(line, graph) && climbs(line, graph) && line.rel === 'above' && !stops(line),
  },
  {
    id: 'climbing-away',
    says: 'climbing, and the selected altitude lies below',
    state: (line, graph) => flying(line, graph) && climbs(line, graph) && line.rel === 'below',
  },
  {
    id: 'descending-away',
    says: 'descending, and the selected altitude lies above',
    state: (line, graph) => flying(line, graph) && descends(line, graph) && line.rel === 'above',
  },
];

/** A state that has all of these words and none of those. */
export function having(
  id: string,
  says: string,
  words: Partial<Omit<Line, 'armed'>>,
  not: Partial<Omit<Line, 'armed'>> = {},
): Property {
  const asked = Object.entries(words) as [keyof typeof words, string][];
  const refused = Object.entries(not) as [keyof typeof not, string][];
  const state = (line: Line): boolean =>
    asked.every(([axis, word]) => line[axis] === word) && refused.every(([axis, word]) => line[axis] !== word);
  return { id, says, state };
}

/** A rule that ends with the selected altitude not armed. */
export function unarms(id: string, says: string, rule: string): Property {
  return { id, says, edge: (_, by, to) => by === rule && !stops(to) };
}

/** States from which nothing leads anywhere else. */
export const NO_WAY_OUT: Property = { id: 'no-way-out', says: 'no rule leads out of this state' };

export function judge(graph: Graph, properties: readonly Property[]): readonly Verdict[] {
  const cases = properties.map(() => 0);
  const witness: (readonly [state: number, edge: number] | null)[] = properties.map(() => null);
  const { lines, first, to, rule, machine } = graph;
  const note = (p: number, state: number, edge: number): void => {
    cases[p] = cases[p]! + 1;
    witness[p] ??= [state, edge];
  };
  for (const [i, line] of lines.entries()) {
    for (const [p, property] of properties.entries()) {
      if (property.state?.(line, graph)) note(p, i, -1);
      if (property === NO_WAY_OUT && stays(graph, i)) note(p, i, -1);
      if (property.edge === undefined) continue;
      for (let e = first[i]!; e < first[i + 1]!; e += 1) {
        if (property.edge(line, machine.rules[rule[e]!]!.id, lines[to[e]!]!, graph)) note(p, i, e);
      }
    }
  }
  return properties.map(({ id, says }, p) => {
    const at = witness[p]!;
    const path = at === null ? [] : pathTo(graph, at[0]);
    return { id, says, cases: cases[p]!, witness: at === null || at[1] < 0 ? path : andThen(graph, path, at[1]) };
  });
}

function stays(graph: Graph, state: number): boolean {
  for (let e = graph.first[state]!; e < graph.first[state + 1]!; e += 1) if (graph.to[e] !== state) return false;
  return true;
}

/** Edges that change a mode, and how many of them change two or three axes at once. */
export function modeChanges(graph: Graph): { readonly all: number; readonly several: number } {
  let all = 0;
  let several = 0;
  for (const [i, line] of graph.lines.entries()) {
    for (let e = graph.first[i]!; e < graph.first[i + 1]!; e += 1) {
      const next = graph.lines[graph.to[e]!]!;
      const axes = (['thrust', 'lateral', 'vertical'] as const).filter((axis) => next[axis] !== line[axis]).length;
      if (axes > 0) all += 1;
      if (axes > 1) several += 1;
    }
  }
  return { all, several };
}
