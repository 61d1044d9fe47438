// Walks a procedure in reading order and says what may be the case before and after each step, in the main line and in the
// branches. It believes what the steps say and the cues show; it explores no mode logic and flies nothing.
import type { Sheet } from '../aircraft/sheet.ts';
import type { Gate, Parsed } from '../gate/syntax.ts';
import { alternatives, conjuncts, impossibleDetent, narrowed } from './cue.ts';
import { afterStep, type Craft, enterPhase, startOf } from './effect.ts';
import { detentNames, type FlapMove, flapMove, flapSelections } from './flaps.ts';
import { findStep, stepsNamedIn } from './locate.ts';
import { onlyWhen } from './only.ts';
import { parsedCue } from './parsed-cue.ts';
import type { Branch, Procedure, Step } from './procedure.ts';
import { type AircraftState, either } from './state.ts';

export type StepState = {
  readonly step: Step;
  /** Null: the main line. */
  readonly branch: Branch | null;
  readonly index: number;
  readonly gate: Parsed;
  /** Each way in which the cue can hold, as parts that all hold. */
  readonly ways: readonly (readonly Gate[])[];
  /** When the cue holds; when the step is done; and afterwards, where it may also have been left out. */
  readonly before: AircraftState;
  readonly done: AircraftState;
  readonly after: AircraftState;
  /** The detents that may be selected here; null: the step selects none; empty: it doesn't say which. */
  readonly selection: readonly string[] | null;
  /** What the lever may do here, from each detent it may be at. */
  readonly moves: readonly FlapMove[];
  /** A detent that the cue waits for although nothing before puts the flap there. */
  readonly neverThere: string | null;
};

type Line = { readonly branch: Branch | null; readonly steps: readonly Step[] };

/** States in reading order, main line first, then branch by branch. Without a sheet detents go by their figures. */
export function walk(procedure: Procedure, sheet: Sheet | null): readonly StepState[] {
  const craft: Craft = { procedure, sheet, detents: detentNames(procedure, sheet) };
  const main: Line = { branch: null, steps: procedure.steps };
  const start = startOf(craft);
  const first = along(craft, main, start, new Map());
  if (procedure.branches.length === 0) return first;

  const branches = (line: readonly StepState[]): readonly StepState[] =>
    procedure.branches.flatMap((branch) =>
      along(craft, { branch, steps: branch.steps }, leaving(procedure, branch, line, start).state, new Map()),
    );
  const joins = joinStates(procedure, branches(first), first, start);
  const again = joins.size === 0 ? first : along(craft, main, start, joins);
  return [...again, ...branches(again)];
}

function along(
  craft: Craft,
  line: Line,
  start: AircraftState,
  joins: ReadonlyMap<string, AircraftState>,
): readonly StepState[] {
  let state = start;
  return line.steps.map((step, index): StepState => {
    const joined = joins.get(step.id);
    const reached = joined === undefined ? state : either(state, joined);
    const gate = parsedCue(step.cue);
    const parts = conjuncts(gate.gate);
    const { doing, leftOut } = onlyWhen(step.only, reached, craft);
    const before = enterPhase(narrowed(doing, parts), parts);
    const done = afterStep(before, step, craft);
    const selection = flapSelections(step, craft.procedure, craft.detents);
    const moves = before.selected
      .flatMap((from) => (selection ?? []).map((to) => flapMove(from, to, craft.detents)))
      .filter((move) => move !== null);
    const after = leftOut === null ? done : either(done, leftOut);
    state = after;
    const neverThere = impossibleDetent(doing, parts);
    return {
      step,
      branch: line.branch,
      index,
      gate,
      ways: alternatives(gate.gate),
      before,
      done,
      after,
      selection,
      moves,
      neverThere,
    };
  });
}

/** Where a branch begins: after the steps that send the reader there, or anywhere in the main line. */
function leaving(
  procedure: Procedure,
  branch: Branch,
  main: readonly StepState[],
  start: AircraftState,
): { readonly state: AircraftState; readonly exact: boolean } {
  const names = [branch.id, branch.label, branch.title].filter(Boolean);
  const sending = procedure.steps.filter((step) => step.branch.some((way) => names.includes(way.to)));
  const named = stepsNamedIn(procedure, branch.when);
  const waits = conjuncts(parsedCue(branch.steps[0]?.cue ?? '').gate).find((part) => part.kind === 'after');
  const waited = waits?.kind === 'after' ? findStep(procedure, waits.step) : null;
  const from = new Set([...sending, ...named, ...(waited === null ? [] : [waited])].map((step) => step.id));
  const exact = main.filter((at) => from.has(at.step.id));
  const states = (exact.length > 0 ? exact : main).map((at) => at.after);
  const state = states.reduce((all, next) => either(all, next), states[0] ?? start);
  return { state: narrowed(state, conjuncts(parsedCue(branch.when).gate)), exact: exact.length > 0 };
}

/** What a branch brings back to the main line, where it is known from where it left. */
function joinStates(
  procedure: Procedure,
  walked: readonly StepState[],
  main: readonly StepState[],
  start: AircraftState,
): ReadonlyMap<string, AircraftState> {
  const joins = new Map<string, AircraftState>();
  for (const branch of procedure.branches) {
    const end = walked.findLast((at) => at.branch?.id === branch.id)?.after;
    if (end === undefined || !leaving(procedure, branch, main, start).exact) continue;
    for (const step of stepsNamedIn(procedure, branch.joins)) {
      const there = joins.get(step.id);
      joins.set(step.id, there === undefined ? end : either(there, end));
    }
  }
  return joins;
}
