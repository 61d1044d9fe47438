// What the aircraft may be doing beside a step, as sets of possibilities: a set with one member is known, an empty set of
// mode words is unknown. Worlds keep lever and flap together, so that a condition on one narrows the other.
import type { Comparison, Term } from '../gate/syntax.ts';

/** One possibility: the detent that the procedure began with, the lever, and the flap (in transit: every detent passed). */
export type FlapWorld = { readonly origin: string; readonly selected: string; readonly indicated: readonly string[] };

/** The speed asked for. `op` is '=' for a target. `words`: said, but not in a form that has a value. */
export type SpeedTarget =
  | { readonly kind: 'expression'; readonly term: Term; readonly text: string; readonly setBy: string }
  | { readonly kind: 'words'; readonly text: string; readonly setBy: string }
  | { readonly kind: 'unknown' };

/** Which lowest speed holds (C3). The names are those of the policy's floors. */
export type FloorPhase = 'takeOff' | 'engineOut' | 'goAroundFirstRetraction' | 'finalApproach' | 'elsewhere';

export type Modes = {
  readonly thrust: readonly string[];
  readonly lateral: readonly string[];
  readonly vertical: readonly string[];
  /** null: unknown. */
  readonly armed: readonly string[] | null;
};

export type AircraftState = {
  readonly worlds: readonly FlapWorld[];
  /** Detents possible for the lever and for the flap, each once. */
  readonly selected: readonly string[];
  readonly indicated: readonly string[];
  /** False where nothing in the procedure says what the flap is: then every detent is possible. */
  readonly flapsKnown: boolean;
  readonly gear: readonly ('up' | 'down')[];
  readonly floor: FloorPhase;
  /** The missed approach has begun and the flap isn't clean yet: the panel follows its own rule. */
  readonly goingAround: boolean;
  readonly target: SpeedTarget;
  readonly autopilot: 'on' | 'off' | 'either';
  readonly modes: Modes;
  readonly selectedAltitude: string;
};

/** A limit that a step's cue puts on the indicated speed at the moment the step begins. */
export type SpeedBound = { readonly op: Comparison; readonly term: Term };

export const unique = <T>(values: Iterable<T>): readonly T[] => [...new Set(values)];

/** The same state with other worlds, and the sets that follow from them. */
export function withWorlds(
  state: AircraftState,
  worlds: readonly FlapWorld[],
  flapsKnown = state.flapsKnown,
): AircraftState {
  const kept = new Map(worlds.map((world) => [`${world.origin} ${world.selected} ${world.indicated.join()}`, world]));
  const all = [...kept.values()];
  return {
    ...state,
    worlds: all,
    flapsKnown,
    selected: unique(all.map((world) => world.selected)),
    indicated: unique(all.flatMap((world) => world.indicated)),
  };
}

const joinWords = (a: readonly string[], b: readonly string[]): readonly string[] =>
  a.length === 0 || b.length === 0 ? [] : unique([...a, ...b]);

const joinArmed = (a: readonly string[] | null, b: readonly string[] | null): readonly string[] | null =>
  a !== null && b !== null && a.length === b.length && a.every((word) => b.includes(word)) ? a : null;

const sameTarget = (a: SpeedTarget, b: SpeedTarget): boolean =>
  a.kind === b.kind && (a.kind === 'unknown' || (b.kind !== 'unknown' && a.text === b.text));

/** Who reads on behind the press of GO-AROUND has pressed it: who has not was sent elsewhere. */
function eitherFloor(a: FloorPhase, b: FloorPhase): FloorPhase {
  if (a === b) return a;
  const [one, other] = a === 'finalApproach' ? [b, a] : [a, b];
  return other === 'finalApproach' && (one === 'goAroundFirstRetraction' || one === 'engineOut') ? one : 'elsewhere';
}

/** What may be the case when either of two states may be: nothing is known that is not known of both. */
export function either(a: AircraftState, b: AircraftState): AircraftState {
  if (a === b) return a;
  const merged: AircraftState = {
    ...a,
    gear: unique([...a.gear, ...b.gear]),
    floor: eitherFloor(a.floor, b.floor),
    goingAround: a.goingAround || b.goingAround,
    target: sameTarget(a.target, b.target) ? a.target : { kind: 'unknown' },
    autopilot: a.autopilot === b.autopilot ? a.autopilot : 'either',
    modes: {
      thrust: joinWords(a.modes.thrust, b.modes.thrust),
      lateral: joinWords(a.modes.lateral, b.modes.lateral),
      vertical: joinWords(a.modes.vertical, b.modes.vertical),
      armed: joinArmed(a.modes.armed, b.modes.armed),
    },
    selectedAltitude: a.selectedAltitude === b.selectedAltitude ? a.selectedAltitude : '',
  };
  return withWorlds(merged, [...a.worlds, ...b.worlds], a.flapsKnown && b.flapsKnown);
}
