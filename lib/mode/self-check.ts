// What looks wrong in a mode table that can be explored: each with a sentence, its place and, where there is one, a path. It
// may be right all the same, so it keeps nobody from saving a draft.
import type { ModeSet } from '../aircraft/mode-set.ts';
import type { Graph } from './graph.ts';
import { AXES, type Layout, read } from './layout.ts';
import { type PathStep, pathTo } from './path.ts';
import { type Guard, holds } from './rule-code.ts';

export type TableProblem = {
  readonly kind: 'two-for-one-event' | 'no-way-out' | 'never-reached' | 'never-true' | 'no-effect';
  /** Id of a rule, or `vertical.LEVEL` for a mode. */
  readonly at: string;
  readonly message: string;
  readonly witness: readonly PathStep[];
};

/** The questions asked of the table of one standard. An incomplete exploration is asked only what it can answer. */
export function checkTable(graph: Graph): readonly TableProblem[] {
  return [
    ...twoForOne(graph),
    ...guards(graph),
    ...(graph.complete ? [...noWayOut(graph), ...neverReached(graph), ...neverFired(graph)] : []),
    ...noEffect(graph),
  ];
}

/** Two rules of one event that both act in a state and disagree. Cases of one rule are one rule. */
function twoForOne(graph: Graph): readonly TableProblem[] {
  const { machine, first, rule, to } = graph;
  const told = new Set<string>();
  const found: TableProblem[] = [];
  for (let i = 0; i < graph.lines.length; i += 1) {
    for (let e = first[i]!; e < first[i + 1]!; e += 1) {
      for (let other = e + 1; other < first[i + 1]!; other += 1) {
        const [a, b] = [machine.rules[rule[e]!]!, machine.rules[rule[other]!]!];
        if (a === b || a.event !== b.event || to[e] === to[other] || told.has(`${a.id} ${b.id}`)) continue;
        told.add(`${a.id} ${b.id}`);
        const message = `"${a.event}" is answered by ${a.id} and by ${b.id} in one state, and they do different things`;
        found.push({ kind: 'two-for-one-event', at: a.id, message, witness: pathTo(graph, i) });
      }
    }
  }
  return found;
}

const axisWords = ['thrust', 'lateral', 'vertical', 'phase'] as const;
type AskedAxis = (typeof axisWords)[number];

/** A mode that, once active, no edge ever leaves. */
function noWayOut(graph: Graph): readonly TableProblem[] {
  const { modes } = graph.machine;
  return axisWords.flatMap((axis) => {
    if (modes[axis].length === 1) return [];
    const left = new Set<string>();
    const entered = new Map<string, number>();
    for (const [i, line] of graph.lines.entries()) {
      if (!entered.has(line[axis])) entered.set(line[axis], i);
      for (let e = graph.first[i]!; e < graph.first[i + 1]!; e += 1) {
        if (graph.lines[graph.to[e]!]![axis] !== line[axis]) left.add(line[axis]);
      }
    }
    return [...entered]
      .filter(([word]) => !left.has(word))
      .map(([word, state]): TableProblem => {
        const message = `${word} can't be left: no rule leads from it to another ${axis} word`;
        return { kind: 'no-way-out', at: `${axis}.${word}`, message, witness: pathTo(graph, state) };
      });
  });
}

function neverReached(graph: Graph): readonly TableProblem[] {
  const { modes } = graph.machine;
  const missing = (axis: AskedAxis | 'rel' | 'armed', words: readonly string[], met: ReadonlySet<string>) =>
    words
      .filter((word) => !met.has(word))
      .map((word): TableProblem => {
        const message = `${word} can't be reached from the initial states`;
        return { kind: 'never-reached', at: `${axis}.${word}`, message, witness: [] };
      });
  const armed = new Set(graph.lines.flatMap((line) => line.armed));
  return [
    ...([...axisWords, 'rel'] as const).flatMap((axis) =>
      missing(axis, modes[axis], new Set(graph.lines.map((line) => line[axis]))),
    ),
    ...missing('armed', [...modes.armedVertical, ...modes.armedLateral], armed),
  ];
}

const empty = (guard: Guard): boolean =>
  guard.excluded ||
  AXES.some((axis) => guard.allowed[axis] === 0) ||
  (guard.hasVertical & guard.lacksVertical) !== 0 ||
  (guard.hasLateral & guard.lacksLateral) !== 0;

/** A guard that no state at all can satisfy, reachable or not. */
function guards(graph: Graph): readonly TableProblem[] {
  return graph.machine.rules.flatMap(({ id, cases }) =>
    cases.flatMap(({ guard }, part): TableProblem[] => {
      if (!empty(guard)) return [];
      const which = cases.length === 1 ? '' : `, case ${part + 1}`;
      return [{ kind: 'never-true', at: id, message: `the guard of ${id}${which} contradicts itself`, witness: [] }];
    }),
  );
}

/** A guard that holds in no reachable state. */
function neverFired(graph: Graph): readonly TableProblem[] {
  return graph.machine.rules.flatMap(({ id, cases, event }): TableProblem[] => {
    if (cases.every(({ guard }) => empty(guard))) return [];
    const met = cases.some(({ guard }) =>
      graph.found.states.some((state) => holds(guard, graph.machine.layout, state)),
    );
    if (met) return [];
    const message = `the guard of ${id} (${event}) is true in no state that can be reached`;
    return [{ kind: 'never-true', at: id, message, witness: [] }];
  });
}

/** An event that changes nothing in any state in which it is accepted, and says nothing else either. */
function noEffect(graph: Graph): readonly TableProblem[] {
  const acts = new Set<string>();
  const accepted = new Map<string, number>();
  const { rules } = graph.machine;
  for (let i = 0; i < graph.lines.length; i += 1) {
    for (let e = graph.first[i]!; e < graph.first[i + 1]!; e += 1) {
      const { event } = rules[graph.rule[e]!]!;
      if (!accepted.has(event)) accepted.set(event, i);
      if (graph.to[e] !== i) acts.add(event);
    }
  }
  return [...accepted]
    .filter(([event]) => !acts.has(event))
    .map(([event, state]): TableProblem => {
      const at = rules.find((rule) => rule.event === event)!.id;
      const message = `"${event}" has no effect anywhere`;
      return { kind: 'no-effect', at, message, witness: pathTo(graph, state) };
    });
}

/** The words of one axis and which rules lead from one to another: what a drawing of the axis shows. */
export type AxisEdge = { readonly from: string; readonly to: string; readonly rules: readonly string[] };
export function axisDrawing(
  graph: Graph,
  axis: keyof Pick<ModeSet, 'thrust' | 'lateral' | 'vertical'>,
): readonly AxisEdge[] {
  const layout: Layout = graph.machine.layout;
  const edges = new Map<string, { from: number; to: number; rules: Set<number> }>();
  for (const [i, state] of graph.found.states.entries()) {
    const from = read(layout[axis], state);
    for (let e = graph.first[i]!; e < graph.first[i + 1]!; e += 1) {
      const to = read(layout[axis], graph.found.states[graph.to[e]!]!);
      if (to === from) continue;
      const edge = edges.get(`${from} ${to}`) ?? { from, to, rules: new Set<number>() };
      edge.rules.add(graph.rule[e]!);
      edges.set(`${from} ${to}`, edge);
    }
  }
  const { words } = layout[axis];
  return [...edges.values()]
    .sort((a, b) => a.from - b.from || a.to - b.to)
    .map(({ from, to, rules }) => ({
      from: words[from]!,
      to: words[to]!,
      rules: [...rules].sort((a, b) => a - b).map((rule) => graph.machine.rules[rule]!.id),
    }));
}
