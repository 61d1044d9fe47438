// For each step the modes that may be active before it and after it, and what could be written as expected.
import type { Expect, ExpectedArmed, ExpectedMode, Step } from '../procedure/procedure.ts';
import type { Flight, Flights } from './flights.ts';
import type { Line } from './layout.ts';

/** Words in the order of the sheet. One possible word is certain; an armed word is certain when it always is. */
export type Possible = {
  readonly thrust: readonly string[];
  readonly lateral: readonly string[];
  readonly vertical: readonly string[];
  readonly armedCertain: readonly string[];
  readonly armedPossible: readonly string[];
};
export type StepModes = {
  readonly step: Step;
  /** False: the explorer came to no state in which this step is done. */
  readonly reached: boolean;
  readonly before: Possible;
  readonly after: Possible;
};

type Pair = { readonly before: Line; readonly after: Line };

/** The places of a step in a flight: its own, and where it is a standing one, everywhere from its first on. */
function pairsOf(flight: Flight, step: Step): readonly Pair[] {
  const { script, outcomes, graph } = flight.composed;
  const place = script.places.findIndex((one) => one.step?.id === step.id);
  if (place < 0) return [];
  const { cue, only } = script.places[place]!;
  const standing = script.standing.find((one) => one.place === place);
  const places = standing === undefined ? [place] : [place, ...range(standing.from, script.main.end)];
  const states = new Set(places.flatMap((one) => [...flight.at[one]!.keys()]));
  return [...states]
    .filter((state) => cue?.[state] !== 'false' && only?.[state] !== 'false')
    .flatMap((state) =>
      Array.from(outcomes.after(place, state), (end) => ({ before: graph.lines[state]!, after: graph.lines[end]! })),
    );
}
const range = (from: number, to: number): readonly number[] =>
  Array.from({ length: to - from + 1 }, (_, k) => from + k);

function possible(flight: Flight | undefined, lines: readonly Line[]): Possible {
  const layout = flight?.composed.graph.machine.layout;
  const words = (axis: 'thrust' | 'lateral' | 'vertical'): readonly string[] => {
    const met = new Set(lines.map((line) => line[axis]));
    return (layout?.[axis].words ?? []).filter((word) => met.has(word));
  };
  const armed = [...new Set(lines.flatMap((line) => line.armed))];
  return {
    thrust: words('thrust'),
    lateral: words('lateral'),
    vertical: words('vertical'),
    armedCertain: armed.filter((word) => lines.every((line) => line.armed.includes(word))),
    armedPossible: armed,
  };
}

/** Over all standards explored. */
export function stepModes(flights: Flights, step: Step): StepModes {
  const pairs = flights.flights.flatMap((flight) => pairsOf(flight, step));
  const [first] = flights.flights;
  return {
    step,
    reached: pairs.length > 0,
    before: possible(
      first,
      pairs.map(({ before }) => before),
    ),
    after: possible(
      first,
      pairs.map(({ after }) => after),
    ),
  };
}

/** What may be written as expected for the step: `same` where nothing changes, one word, or the words possible. Null: never reached. */
export function expectedModes(flights: Flights, step: Step): Expect | null {
  // What the step expects now must not decide what is offered in its place.
  const pairs = flights.flights.flatMap((flight) => pairsOf(flight, step));
  const [first] = flights.flights;
  if (pairs.length === 0 || first === undefined) return null;
  const ends = possible(
    first,
    pairs.map(({ after }) => after),
  );
  const axis = (name: 'thrust' | 'lateral' | 'vertical'): ExpectedMode => {
    if (pairs.every(({ before, after }) => before[name] === after[name])) return 'same';
    return ends[name].length === 1 ? ends[name][0]! : ends[name];
  };
  return { thrust: axis('thrust'), lateral: axis('lateral'), vertical: axis('vertical'), armed: armedOf(pairs) };
}

function armedOf(pairs: readonly Pair[]): ExpectedArmed {
  const text = (line: Line): string => line.armed.join();
  if (pairs.every(({ before, after }) => text(before) === text(after))) return 'same';
  const [first] = pairs;
  return pairs.every(({ after }) => text(after) === text(first!.after)) ? first!.after.armed : null;
}
