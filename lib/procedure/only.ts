// A step that exists under a condition: the state of those who do it, and of those who leave it out.
import { conjuncts, narrowed } from './cue.ts';
import type { Craft } from './effect.ts';
import { detentsIn } from './flaps.ts';
import { parsedCue } from './parsed-cue.ts';
import { type AircraftState, withWorlds } from './state.ts';

export type OnlyWhen = { readonly doing: AircraftState; readonly leftOut: AircraftState | null };

/** `only: take-off detent F18` speaks of the detent that the procedure began with; a gate speaks of now; other words of neither. */
export function onlyWhen(only: string, state: AircraftState, craft: Craft): OnlyWhen {
  if (only.trim() === '') return { doing: state, leftOut: null };
  const named = detentsIn(only, craft.detents);
  if (named.length > 0 && /\bdetent\b/i.test(only)) {
    const inside = state.worlds.filter((world) => named.includes(world.origin));
    const outside = state.worlds.filter((world) => !named.includes(world.origin));
    return {
      doing: inside.length > 0 ? withWorlds(state, inside) : state,
      leftOut: outside.length > 0 ? withWorlds(state, outside) : null,
    };
  }
  const hand = /\bhand-?flown\b/i.test(only);
  const engaged = /\bautopilot\s+(is\s+)?on\b/i.test(only);
  if (hand || engaged) return { doing: { ...state, autopilot: engaged ? 'on' : 'off' }, leftOut: state };
  const gate = parsedCue(only);
  const readable = gate.gate !== null && gate.problems.length === 0;
  return { doing: readable ? narrowed(state, conjuncts(gate.gate)) : state, leftOut: state };
}
