// The speed at which a procedure climbs, as a formula of the altitude.
import { speedOfMach } from '../aircraft/mach.ts';
import { type Expression, min, number, variable } from '../base/expression.ts';
import type { StepState } from '../procedure/walk.ts';
import { knotsOf, machIn } from './speed-text.ts';

type Climbing = { readonly expression: Expression; readonly key: string };

/** The speed of the climb: the last Mach number and the indicated speed before it, whichever is slower. */
export function climbSpeed(entry: string, states: readonly StepState[]): Climbing | null {
  let mach = machIn(entry);
  let knots: number | null = null;
  for (const { step, done } of states) {
    if (!/\bspeed\b/i.test(step.object) || /rough|turbulen/i.test(step.value)) continue;
    if (!/\bor\b/.test(step.value)) mach = machIn(step.value) ?? mach;
    const own = done.target.kind === 'expression' && done.target.setBy === step.id ? knotsOf(done.target.term) : null;
    knots = Math.max(own ?? 0, knots ?? 0) || knots;
  }
  if (mach === null) return null;
  const atMach = speedOfMach(number(mach), variable('elevation'));
  return { expression: knots === null ? atMach : min(number(knots), atMach), key: `${knots} ${mach}` };
}
