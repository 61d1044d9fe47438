// A procedure explored on every guidance standard that it is for: what checks and the screen are given.
import type { ModeSet } from '../aircraft/mode-set.ts';
import { err, ok, type Result } from '../base/result.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { compile, type Refusal } from './compile.ts';
import { type Composed, compose } from './compose.ts';
import { type Exploration, explore, MOST_STATES } from './explore.ts';
import { type Graph, graphOf } from './graph.ts';
import { scriptOf } from './script.ts';
import { AS_WRITTEN, type Setting, settingWords } from './setting.ts';
import { type StoryStep, storyOf } from './story.ts';
import { misfits } from './truth.ts';

export type Flight = {
  readonly standard: string;
  readonly composed: Composed;
  readonly found: Exploration;
  /** For each place the machine states in which the procedure may be there, each with the index of the state first found. */
  readonly at: readonly ReadonlyMap<number, number>[];
};
export type Flights = {
  readonly flights: readonly Flight[];
  /** Standards that could not be explored, and why. */
  readonly refused: readonly { readonly standard: string; readonly because: string }[];
  /** What was allowed, in words. */
  readonly setting: string;
  readonly complete: boolean;
};

// The machine of a table depends on the table alone: kept as long as somebody holds the sheet.
const graphs = new WeakMap<ModeSet, Map<string, Graph | readonly Refusal[]>>();

/** The explored machine of a standard, or why there is none. */
export function machineOf(modes: ModeSet, standard: string): Graph | readonly Refusal[] {
  const known = graphs.get(modes) ?? new Map<string, Graph | readonly Refusal[]>();
  graphs.set(modes, known);
  const before = known.get(standard);
  if (before !== undefined) return before;
  const machine = compile(modes, standard);
  const made = machine.ok ? graphOf(machine.value) : machine.error;
  known.set(standard, made);
  return made;
}

const sentence = (refusals: readonly Refusal[]): string =>
  refusals.map(({ at, because }) => (at === '' ? because : `${at}: ${because}`)).join('; ');

/** The standards of the sheet that the procedure is for; all where it names none. */
export function standardsOf(modes: ModeSet, procedure: Procedure): readonly string[] {
  const { standards } = procedure.effectivity;
  return Object.keys(modes.standards).filter((name) => standards.length === 0 || standards.includes(name));
}

export function fly(
  modes: ModeSet,
  procedure: Procedure,
  setting: Setting = AS_WRITTEN,
  mostStates = MOST_STATES,
): Flights {
  const flights: Flight[] = [];
  const refused: { standard: string; because: string }[] = [];
  for (const standard of standardsOf(modes, procedure)) {
    const graph = machineOf(modes, standard);
    const flown = 'lines' in graph ? flownOn(graph, procedure, setting, mostStates) : err(graph);
    if (flown.ok) flights.push(flown.value);
    else refused.push({ standard, because: sentence(flown.error) });
  }
  const complete = refused.length === 0 && flights.every(({ found }) => found.complete);
  return { flights, refused, setting: settingWords(setting), complete };
}

/** A place is trusted once some flight meets its expected modes; a place that then never meets them is trusted no more. */
const MOST_ROUNDS = 6;

/** As written, flights that do not show what a step tells the crew to expect leave the text there. */
function flownOn(
  graph: Graph,
  procedure: Procedure,
  setting: Setting,
  mostStates: number,
): Result<Flight, readonly Refusal[]> {
  let trusted: ReadonlySet<number> = new Set();
  const script = graph.complete ? scriptOf(graph, procedure) : undefined;
  const asWritten = setting.believe && setting.atOnce === 0 && setting.environment.length === 0;
  for (let round = 1; ; round += 1) {
    const composed = compose(graph, procedure, setting, trusted, script);
    if (!composed.ok) return composed;
    const found = explore(composed.value.system, mostStates);
    const at = statesAt(composed.value, found);
    const flight: Flight = { standard: graph.machine.standard, composed: composed.value, found, at };
    const met = new Set([...composed.value.script.places.keys()].filter((place) => meets(flight, place)));
    const next = round === 1 ? met : new Set([...trusted].filter((place) => met.has(place)));
    if (!asWritten || round === MOST_ROUNDS || same(next, trusted)) return ok(flight);
    trusted = next;
  }
}

const same = (a: ReadonlySet<number>, b: ReadonlySet<number>): boolean =>
  a.size === b.size && [...a].every((one) => b.has(one));

/** Whether some flight that comes to the place shows what its step expects; true where nothing comes there. */
function meets({ composed, at }: Flight, place: number): boolean {
  const { graph, script, outcomes } = composed;
  const { step, cue, only } = script.places[place]!;
  if (step === null) return false;
  const here = [...at[place]!.keys()].filter((state) => cue?.[state] !== 'false' && only?.[state] !== 'false');
  const fits = (state: number, end: number): boolean =>
    misfits(step.expect, graph.lines[state]!, graph.lines[end]!).length === 0;
  return here.length === 0 || here.some((state) => outcomes.after(place, state).some((end) => fits(state, end)));
}

function statesAt(composed: Composed, found: Exploration): readonly ReadonlyMap<number, number>[] {
  const at = composed.script.places.map(() => new Map<number, number>());
  for (const [index, key] of found.states.entries()) {
    const { place, state } = composed.parts(key);
    if (!at[place]!.has(state)) at[place]!.set(state, index);
  }
  return at;
}

/** The shortest path to a composed state of a flight. */
export function story(procedure: Procedure, flight: Flight, index: number): readonly StoryStep[] {
  return storyOf(procedure, flight.composed, flight.found, index);
}
