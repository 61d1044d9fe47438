// A procedure as places in a line: what may be done where, what follows, and which branch leaves from where.

import type { Gate } from '../gate/syntax.ts';
import { stepsNamedIn } from '../procedure/locate.ts';
import { parsedCue } from '../procedure/parsed-cue.ts';
import type { Branch, Procedure, Step } from '../procedure/procedure.ts';
import { rulesOf } from './controls.ts';
import type { Graph } from './graph.ts';
import { asksTheLine, speaksOfModes, type Truth, truthOf } from './truth.ts';

/** What a gate is in each state of the machine; null: it says nothing of the mode line. */
export type TruthTable = readonly Truth[] | null;

export type Way = { readonly to: number | null; readonly when: TruthTable };
export type Place = {
  /** null: the end of a line. */
  readonly step: Step | null;
  readonly branch: Branch | null;
  readonly rules: readonly number[] | null;
  /** Follows at once on what was done before: nothing happens by itself in between. */
  readonly prompt: boolean;
  readonly cue: TruthTable;
  /** The words of `only` as far as they speak of the mode line; `free`: they say something else, so it may be left out. */
  readonly only: TruthTable;
  readonly free: boolean;
  /** Places that may come next, and ways that the step itself sends the reader. `to` null: out of the procedure. */
  readonly next: readonly number[];
  /** Where it goes on when the step is passed over: because its cue waits, so that what follows on it falls away too; or because
   *  it is not for this flight, like those behind it under the same words. */
  readonly waited: readonly number[];
  readonly left: readonly number[];
  readonly ways: readonly Way[];
};

export type Script = {
  readonly places: readonly Place[];
  readonly main: { readonly from: number; readonly end: number };
  /** Branches that may be left to from anywhere in the main line. */
  readonly leaves: readonly { readonly branch: Branch; readonly to: number; readonly when: TruthTable }[];
  /** Steps to be done whenever their cue holds, from a place of the main line on. */
  readonly standing: readonly { readonly place: number; readonly from: number }[];
};

const STANDING = /\bat any time\b/i;

/** `heard "checked"` right behind the step in which that is said. */
function answers(gate: Gate | null, before: Step | undefined): boolean {
  if (gate?.kind === 'then') return true;
  if (gate?.kind !== 'heard' || before === undefined) return false;
  const words = gate.words.toLowerCase();
  return [before.say, before.reply].some((said) => said.toLowerCase().includes(words));
}

// What a text is in each state depends on the table and the text alone; while somebody types, all cues but one are known.
const tables = new WeakMap<Graph, Map<string, TruthTable>>();
/** More texts than a library has; when it is full it is emptied, which costs one slow exploration. */
const MOST_TABLES = 2_000;

function tableIn(graph: Graph, text: string, gate: Gate | null): TruthTable {
  const kept = tables.get(graph) ?? new Map<string, TruthTable>();
  tables.set(graph, kept);
  const known = kept.get(text);
  if (known !== undefined) return known;
  const { modes } = graph.machine;
  const table = asksTheLine(gate, modes) ? graph.lines.map((line) => truthOf(gate, line, modes)) : null;
  if (kept.size >= MOST_TABLES) kept.clear();
  kept.set(text, table);
  return table;
}

/** The step behind this one and behind all that directly follow and belong to it. */
function afterChain(steps: readonly Step[], index: number, belongs: (step: Step) => boolean): number {
  let at = index + 1;
  while (at < steps.length && belongs(steps[at]!)) at += 1;
  return at;
}

export function scriptOf(graph: Graph, procedure: Procedure): Script {
  const { modes } = graph.machine;
  const tableOf = (text: string, gate: Gate | null): TruthTable => tableIn(graph, text, gate);
  const table = (text: string): TruthTable => (text.trim() === '' ? null : tableOf(text, parsedCue(text).gate));

  const lines = [
    { branch: null, steps: procedure.steps },
    ...procedure.branches.map((branch) => ({ branch, steps: branch.steps })),
  ];
  const starts: number[] = [];
  let count = 0;
  for (const line of lines) {
    starts.push(count);
    count += line.steps.length + 1;
  }
  const placeOfStep = new Map<string, number>();
  for (const [l, line] of lines.entries()) {
    for (const [i, step] of line.steps.entries()) placeOfStep.set(step.id, starts[l]! + i);
  }
  const mainEnd = procedure.steps.length;
  const target = (name: string): number | null => {
    const branch = procedure.branches.findIndex((one) => [one.id, one.label, one.title].includes(name) && name !== '');
    if (branch >= 0) return starts[branch + 1]!;
    const [step] = stepsNamedIn(procedure, name);
    const leaves = /\bprocedure\b/i.test(name);
    return step === undefined || leaves ? null : placeOfStep.get(step.id)!;
  };
  const sent = new Set(lines.flatMap((line) => line.steps.flatMap((step) => step.branch.map((way) => target(way.to)))));

  const places = lines.flatMap(({ branch, steps }, l): Place[] => {
    const start = starts[l]!;
    const inside = steps.map((step, i): Place => {
      const { gate } = parsedCue(step.cue);
      const only = parsedCue(step.only);
      const readable = step.only.trim() !== '' && only.problems.length === 0 && speaksOfModes(only.gate);
      return {
        step,
        branch,
        rules: rulesOf(modes, step),
        prompt: answers(gate, steps[i - 1]),
        cue: step.cue.trim() === '' ? null : tableOf(step.cue, gate),
        only: readable ? tableOf(step.only, only.gate) : null,
        free: step.only.trim() !== '' && !readable && !sent.has(start + i) && steps[i - 1]?.only !== step.only,
        next: [start + i + 1],
        waited: [start + afterChain(steps, i, (one) => parsedCue(one.cue).gate?.kind === 'then')],
        left: [start + afterChain(steps, i, (one) => one.only === step.only)],
        ways: step.branch.map((way) => ({ to: target(way.to), when: table(way.when) })),
      };
    });
    const joins = branch === null ? [] : stepsNamedIn(procedure, branch.joins).map((step) => placeOfStep.get(step.id)!);
    const away = branch !== null && /\bprocedure\b/i.test(branch.joins);
    const end: Place = {
      step: null,
      branch,
      rules: null,
      prompt: false,
      cue: null,
      only: null,
      free: true,
      next: away ? [] : joins,
      waited: [],
      left: away ? [] : joins,
      ways: [],
    };
    return [...inside, end];
  });

  const leaves = procedure.branches.flatMap((branch, b) => {
    const to = starts[b + 1]!;
    const exact = sent.has(to) || stepsNamedIn(procedure, branch.when).length > 0;
    return exact && sent.has(to) ? [] : [{ branch, to, when: table(branch.when) }];
  });
  const standing = procedure.steps.flatMap((step, place) => {
    if (!STANDING.test(step.only)) return [];
    const [named] = stepsNamedIn(procedure, step.only);
    return [{ place, from: named === undefined ? 0 : placeOfStep.get(named.id)! }];
  });
  return { places, main: { from: 0, end: mainEnd }, leaves, standing };
}
