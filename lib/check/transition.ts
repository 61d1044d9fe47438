// Where a procedure passes from altitudes to flight levels, or back: the altimeters change their setting between the two.
import type { Gate } from '../gate/syntax.ts';
import { conjuncts } from '../procedure/cue.ts';
import type { StepState } from '../procedure/walk.ts';

export type Way = 'climb' | 'descent';

/** The scale that the cue measures by; null where it measures no level. */
export function scale({ gate }: StepState): 'FL' | 'MSL' | null {
  const parts = conjuncts(gate.gate).filter(
    (part): part is Extract<Gate, { kind: 'compare' }> => part.kind === 'compare',
  );
  for (const { left, right } of parts) {
    if (left.kind !== 'measure' || right.kind !== 'amount') continue;
    if (left.measure === 'flight-level') return 'FL';
    if (left.measure === 'altitude') return 'MSL';
  }
  return null;
}

/** Something before was still measured on the other scale: the procedure passes from one to the other. */
export const passed = (main: readonly StepState[], here: StepState, from: 'FL' | 'MSL'): boolean =>
  main.slice(0, main.indexOf(here)).some((other) => scale(other) === from);

/** The cue at which the procedure comes to the other scale. */
export function crosses(here: StepState, main: readonly StepState[], way: Way): boolean {
  const names = way === 'climb' ? ['transition-altitude'] : ['transition-level'];
  const named = conjuncts(here.gate.gate).some(
    (part) => part.kind === 'compare' && part.right.kind === 'altitude' && names.includes(part.right.name),
  );
  const [from, to] = way === 'climb' ? (['MSL', 'FL'] as const) : (['FL', 'MSL'] as const);
  return named || (scale(here) === to && passed(main, here, from));
}

/** From the ground into the climb, or from the descent to the ground: the transition lies between. */
export function wholeWay(
  { class: kind, phases }: { readonly class: string; readonly phases: readonly string[] },
  way: Way,
): boolean {
  const wanted = way === 'climb' ? ['initial climb', 'climb'] : ['descent', 'approach'];
  return kind === 'normal' && wanted.every((phase) => phases.includes(phase));
}
