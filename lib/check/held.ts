// The configuration that a speed target is measured by, and its limits.
import { detentNamed } from '../aircraft/limits.ts';
import type { Sheet } from '../aircraft/sheet.ts';
import { number } from '../base/expression.ts';
import { speedBounds } from '../procedure/cue.ts';
import type { AircraftState } from '../procedure/state.ts';
import type { StepState } from '../procedure/walk.ts';
import type { Speed } from './speed-question.ts';

/** The limits that hold while this configuration is held, each less a margin, kt; `flap` false: those of gear and aircraft
 *  alone. */
export function ceilings(state: AircraftState, sheet: Sheet, margin: number, flap = true): readonly Speed[] {
  const limit = (name: string, value: number): Speed => ({
    name: margin === 0 ? name : `${name} - ${margin} kt`,
    expression: number(value - margin),
  });
  const flaps = (flap ? state.indicated : []).flatMap((detent) => {
    const vfe = detentNamed(sheet, detent)?.vfe?.value;
    return vfe === undefined ? [] : [limit(`VFE ${detent}`, vfe)];
  });
  const gear = state.gear.length === 1 && state.gear[0] === 'down' ? [limit('VLE', sheet.limits.gear.vle.value)] : [];
  return [...flaps, ...gear, limit('VMO', sheet.limits.vmo.value)];
}

/** The state to which flap steps lead that follow on their own speed cues before another target is set. */
export function scheduled(states: readonly StepState[], from: number, way: 'retract' | 'extend'): AircraftState {
  const start = states[from]!;
  let state = start.done;
  for (const next of states.slice(from + 1)) {
    if (
      next.branch !== start.branch ||
      (next.done.target.kind !== 'unknown' && next.done.target.setBy === next.step.id)
    )
      break;
    const paced = next.ways.every((parts) => speedBounds(parts).length > 0);
    if (paced && next.moves.some((move) => move.way === way)) state = next.done;
  }
  return state;
}
