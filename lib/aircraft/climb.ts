import { type Expression, mul, number, symbolic, variable } from '../base/expression.ts';
import { forces, type Setting } from './performance.ts';
import { speedExpression } from './schedule.ts';
import type { Sheet } from './sheet.ts';

/** ft/min in a metre per second. */
const FEET_PER_MINUTE = 60 / 0.3048;

/**
 * Gross climb gradient in per cent at a calibrated speed (kt), as a formula of `weight` (kg), `elevation` (ft pressure
 * altitude) and `temperature` (°C from standard): 100 (T − D)/(W g), D2 of the project's reference.
 */
export function gradientExpression(sheet: Sheet, setting: Setting, speed: Expression): Expression {
  return mul(number(100), forces(symbolic, sheet, setting, momentOf(speed)).excess);
}

/** Rate of climb at constant true speed, ft/min, of the same variables: V (T − D)/(W g). */
export function climbRateExpression(sheet: Sheet, setting: Setting, speed: Expression): Expression {
  const { excess, trueSpeed } = forces(symbolic, sheet, setting, momentOf(speed));
  return mul(number(FEET_PER_MINUTE), mul(trueSpeed, excess));
}

const momentOf = (speed: Expression) => ({
  speed,
  altitude: variable('elevation'),
  temperature: variable('temperature'),
  weight: variable('weight'),
});

export type Segment = 'second' | 'final' | 'approach climb' | 'landing climb';

/** Speed of the approach climb over the reference stall speed. */
const APPROACH_CLIMB = 1.35;
/** Thrust there after 8 s, over go-around thrust, where engines come up from idle in 7 s. */
const LANDING_SHARE = 0.92;

/**
 * The gradient that a climb rule asks about, gross, per cent; null where the sheet has no speed for the detent. Second:
 * V2, gear up, one engine out. Final: VMM, continuous thrust, one engine out. Approach climb: 1.35 VSR, gear
 * up, one engine out. Landing climb: VREF, gear down, all engines, 92 % of go-around thrust. Speeds of the studies: D6.1.
 */
export function segmentGradient(sheet: Sheet, segment: Segment, detent: string): Expression | null {
  const named = (name: 'V2' | 'VSR' | 'VMM' | 'VREF') => speedExpression(sheet, { name, detent, icing: false });
  const at = (speed: Expression | null, setting: Omit<Setting, 'detent'>, factor = 1): Expression | null =>
    speed && gradientExpression(sheet, { ...setting, detent }, factor === 1 ? speed : mul(number(factor), speed));
  switch (segment) {
    case 'second':
      return at(named('V2'), { gear: 'up', enginesOut: 1, rating: 'take-off' });
    case 'final':
      return at(named('VMM'), { gear: 'up', enginesOut: 1, rating: 'continuous' });
    case 'approach climb':
      return at(named('VSR'), { gear: 'up', enginesOut: 1, rating: 'go-around' }, APPROACH_CLIMB);
    case 'landing climb':
      return at(named('VREF'), { gear: 'down', rating: 'go-around', share: LANDING_SHARE });
  }
}
