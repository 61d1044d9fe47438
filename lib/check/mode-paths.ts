// What the rules on modes share: the states in which a step is done, and the path to them as a witness.
import type { Flight, Flights } from '../mode/flights.ts';
import { story } from '../mode/flights.ts';
import { type Line, lineWords } from '../mode/layout.ts';
import { deedWords, ruleBetween } from '../mode/story.ts';
import type { Procedure, Step } from '../procedure/procedure.ts';
import type { PathMove, Place, Witness } from './finding.ts';

/** A state in which a step is done. `index`: the composed state first found there. */
export type Doing = {
  readonly flight: Flight;
  readonly step: Step;
  readonly place: number;
  readonly index: number;
  readonly state: number;
  readonly line: Line;
  /** States that the step may lead to, and the lines that stand there then. */
  readonly ends: readonly number[];
  readonly after: readonly Line[];
};

// Every rule asks for the same: made once for each flight.
const known = new WeakMap<Flight, ReadonlyMap<Step, readonly Doing[]>>();

/** Every step of a flight with the states in which it is done: where its cue and its condition do not say otherwise. */
export function doings(flight: Flight): ReadonlyMap<Step, readonly Doing[]> {
  const before = known.get(flight);
  if (before !== undefined) return before;
  const { script, graph, outcomes } = flight.composed;
  const all = new Map<Step, readonly Doing[]>();
  for (const [place, { step, cue, only }] of script.places.entries()) {
    if (step === null) continue;
    const standing = script.standing.find((one) => one.place === place);
    const states = new Map(flight.at[place]);
    for (let p = standing?.from ?? 1; standing !== undefined && p <= script.main.end; p += 1) {
      for (const [state, index] of flight.at[p]!) if (!states.has(state)) states.set(state, index);
    }
    const here = [...states]
      .filter(([state]) => cue?.[state] !== 'false' && only?.[state] !== 'false')
      .sort(([, a], [, b]) => a - b)
      .map(([state, index]): Doing => {
        const ends = Array.from(outcomes.after(place, state));
        const line = graph.lines[state]!;
        return { flight, step, place, index, state, line, ends, after: ends.map((end) => graph.lines[end]!) };
      });
    all.set(step, here);
  }
  known.set(flight, all);
  return all;
}

/** The same step on every standard: the first doing that a question picks out on each. */
export type Hit = { readonly doing: Doing; readonly end: number | null };

/** Asks each step on each standard; gives the steps of which something was found, with a hit a standard. */
export function asked(
  flights: Flights,
  ask: (doings: readonly Doing[], step: Step) => Hit | null,
): readonly { readonly step: Step; readonly hits: readonly Hit[] }[] {
  const found = new Map<Step, Hit[]>();
  for (const flight of flights.flights) {
    for (const [step, here] of doings(flight)) {
      const hit = ask(here, step);
      if (hit !== null) found.set(step, [...(found.get(step) ?? []), hit]);
    }
  }
  return [...found].map(([step, hits]) => ({ step, hits }));
}

const moveTo = (does: string, line: Line): PathMove => ({
  does,
  thrust: line.thrust,
  lateral: line.lateral,
  vertical: line.vertical,
  armed: line.armed,
});

export const standardsWords = (standards: readonly string[]): string =>
  `standard${standards.length === 1 ? '' : 's'} ${standards.join(' and ')}`;

/** The shortest path to where the step is done, and the step itself with the outcome in question. */
export function pathWitness(procedure: Procedure, hits: readonly Hit[], also = ''): Witness {
  const { doing, end } = hits[0]!;
  const { flight, step, place, state } = doing;
  const before = story(procedure, flight, doing.index).map(({ rule, does, line }) =>
    moveTo(rule === '' ? does : `${rule} ${does}`, line),
  );
  const rule = end === null ? '' : ruleBetween(flight.composed, place, state, end);
  const last = flight.composed.graph.lines[end ?? state]!;
  const deed = `${rule} ${deedWords(procedure, step)}`.trim();
  const steps = [...before, moveTo(deed, last)];
  const standards = hits.map((hit) => hit.doing.flight.standard);
  const does = steps.slice(1).map((move) => move.does);
  const says = `${standardsWords(standards)}: from ${lineWords(flight.composed.graph.lines[flight.composed.parts(flight.found.states[0]!).state]!)}: ${does.join(' > ')}: ${lineWords(last)}${also}`;
  return { kind: 'path', says, standards, steps };
}

/** The shortest path to a state of a flight, whatever step comes next. */
export function endWitness(procedure: Procedure, flight: Flight, index: number, also = ''): Witness {
  const path = story(procedure, flight, index);
  const steps = path.map(({ rule, does, line }) => moveTo(rule === '' ? does : `${rule} ${does}`, line));
  const does = steps.slice(1).map((move) => move.does);
  const start = lineWords(path[0]!.line);
  const way = does.length === 0 ? start : `${start}: ${does.join(' > ')}: ${lineWords(path.at(-1)!.line)}`;
  return { kind: 'path', says: `standard ${flight.standard}: from ${way}${also}`, standards: [flight.standard], steps };
}

/** What keeps the question from being asked: standards refused, and exploration that was cut short. */
export function sayUnasked(flights: Flights, unasked: (because: string, at: Place) => void): void {
  const at = { step: '', field: 'entry.vertical' };
  for (const { standard, because } of flights.refused) unasked(`standard ${standard}: ${because}`, at);
  for (const { standard, found } of flights.flights) {
    if (!found.complete) unasked(`standard ${standard}: ${found.reason}`, at);
  }
}
