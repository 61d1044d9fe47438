// What the explorer says of a procedure: each property with the standards on which it comes about, and how.
import type { Procedure } from '../procedure/procedure.ts';
import { type Flight, type Flights, story } from './flights.ts';
import type { Property } from './properties.ts';
import type { StoryStep } from './story.ts';

export type FlightVerdict = {
  readonly id: string;
  readonly says: string;
  readonly standard: string;
  /** Composed states in which it is so. 0 in an incomplete exploration means "none found". */
  readonly cases: number;
  /** A shortest path; null when there is none. */
  readonly path: readonly StoryStep[] | null;
};
export type Explored = {
  readonly verdicts: readonly FlightVerdict[];
  /** Slips and surprises that were allowed, in words. */
  readonly setting: string;
  readonly complete: boolean;
  /** Why it is not complete: standards refused, limits reached. */
  readonly because: readonly string[];
};

/** All properties of states in one pass over each standard. Properties of edges belong to the table and are not asked here. */
export function judgeFlights(flights: Flights, procedure: Procedure, properties: readonly Property[]): Explored {
  const asked = properties.filter((property) => property.state !== undefined);
  const verdicts = flights.flights.flatMap((flight) => judgeFlight(flight, procedure, asked));
  const because = [
    ...flights.refused.map(({ standard, because: why }) => `standard ${standard}: ${why}`),
    ...flights.flights.flatMap(({ standard, found }) =>
      found.reason === null ? [] : [`standard ${standard}: ${found.reason}`],
    ),
  ];
  return { verdicts, setting: flights.setting, complete: flights.complete, because };
}

function judgeFlight(flight: Flight, procedure: Procedure, asked: readonly Property[]): readonly FlightVerdict[] {
  const { composed, found, standard } = flight;
  const { graph } = composed;
  const holds = asked.map((property) => graph.lines.map((line) => property.state!(line, graph)));
  const cases = asked.map(() => 0);
  const first = asked.map(() => -1);
  for (let index = 0; index < found.states.length; index += 1) {
    const { state } = composed.parts(found.states[index]!);
    for (let p = 0; p < asked.length; p += 1) {
      if (!holds[p]![state]) continue;
      cases[p] = cases[p]! + 1;
      if (first[p]! < 0) first[p] = index;
    }
  }
  return asked.map(({ id, says }, p) => ({
    id,
    says,
    standard,
    cases: cases[p]!,
    path: first[p]! < 0 ? null : story(procedure, flight, first[p]!),
  }));
}

/** The expected path: a shortest one on which the main line is done as written; null where none comes to its end. */
export function expectedPath(flight: Flight, procedure: Procedure): readonly StoryStep[] | null {
  const [end] = flight.at[flight.composed.script.main.end]!;
  return end === undefined ? null : story(procedure, flight, end[1]);
}

/** Where a path leaves another: the number of moves that both begin with. */
export function sharedMoves(path: readonly StoryStep[], other: readonly StoryStep[]): number {
  const differs = path.findIndex((move, k) => {
    const there = other[k];
    return there === undefined || there.does !== move.does || JSON.stringify(there.line) !== JSON.stringify(move.line);
  });
  return differs < 0 ? path.length : differs;
}
