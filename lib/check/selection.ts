// The speed at which a flap is selected, as a step tells it: by its cue, by a look at the speed before the lever moves, or by
// the target that is flown.

import type { Term } from '../gate/syntax.ts';
import type { Policy } from '../policy/policy.ts';
import { speedBounds } from '../procedure/cue.ts';
import type { FlapMove } from '../procedure/flaps.ts';
import type { FloorPhase } from '../procedure/state.ts';
import type { StepState } from '../procedure/walk.ts';

export type SelectionSpeed = {
  /** The speed is at most each of these, and at least each of those. */
  readonly atMost: readonly Term[];
  readonly atLeast: readonly Term[];
};

/** House convention 4: "speed checked" is said only inside the band of the detents involved; else the lever isn't moved. */
const LOOKED = /\bspeed checked\b/i;
const TURBULENCE = /\bturbulen|\brough[- ]air\b/i;

/** One for each way in which the cue can hold. */
export function selectionSpeeds(at: StepState): readonly SelectionSpeed[] {
  return at.ways.map((way) => {
    const bounds = speedBounds(way);
    return {
      atMost: bounds.filter(({ op }) => op !== '>' && op !== '>=').map(({ term }) => term),
      atLeast: bounds.filter(({ op }) => op !== '<' && op !== '<=').map(({ term }) => term),
    };
  });
}

export const isLookedAt = (at: StepState): boolean => LOOKED.test(at.step.say);

/** kt below VFE at which flap may be selected. */
export function selectionMargin(at: StepState, policy: Policy): number {
  const rough = TURBULENCE.test(`${at.step.cue} ${at.step.only}`);
  return rough ? policy.speeds.selectionMarginTurbulence : policy.speeds.selectionMargin;
}

/** Movements to be asked about: none where nothing says what the flap is. */
export const askedMoves = (at: StepState): readonly FlapMove[] => (at.before.flapsKnown ? at.moves : []);

/** Retraction in a take-off belongs to the acceleration, where the lowest speed is that of everywhere else. */
export function floorPhase(here: StepState, move: FlapMove): FloorPhase {
  const { floor } = here.before;
  return move.way === 'retract' && floor === 'takeOff' ? 'elsewhere' : floor;
}
