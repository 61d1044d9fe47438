import { speedExpression } from '../aircraft/schedule.ts';
import type { Sheet } from '../aircraft/sheet.ts';
import { add, type Expression, number } from '../base/expression.ts';

/** The lowest speed of a phase: a named speed of the detent held, left or resulting, and what is added to it, kt. */
export type FloorRule = {
  readonly speed: 'V2' | 'VREF' | 'VMM';
  readonly of: 'held' | 'left' | 'resulting';
  readonly plus: number;
};
export type FloorPhase = 'takeOff' | 'engineOut' | 'goAroundFirstRetraction' | 'finalApproach' | 'elsewhere';
export type Floors = Readonly<Record<FloorPhase, FloorRule>>;

export type Floor = { readonly name: string; readonly expression: Expression };

/**
 * The lowest speed allowed with a detent, kt, by phase. `left`: the detent that a first go-around retraction leaves.
 * Where the detent has no such speed (V2 of a landing detent) VMM holds. null when the sheet has neither.
 */
export function floorOf(
  sheet: Sheet,
  floors: Floors,
  phase: FloorPhase,
  detent: string,
  left: string | null,
): Floor | null {
  const rule = floors[phase];
  const of = rule.of === 'left' ? left : detent;
  return named(sheet, rule, of) ?? named(sheet, floors.elsewhere, detent);
}

function named(sheet: Sheet, rule: FloorRule, detent: string | null): Floor | null {
  const speed = detent && speedExpression(sheet, { name: rule.speed, detent, icing: false });
  if (!speed) return null;
  const name = `${rule.speed} ${detent}${rule.plus === 0 ? '' : ` + ${rule.plus} kt`}`;
  return { name, expression: rule.plus === 0 ? speed : add(speed, number(rule.plus)) };
}

/** Which floor holds, from what a step knows. `final`: established on final approach in a landing detent. */
export function floorPhase(moment: {
  readonly phase: string;
  readonly engineOut?: boolean;
  readonly firstGoAroundRetraction?: boolean;
  readonly final?: boolean;
}): FloorPhase {
  const { phase } = moment;
  const leaving = phase === 'take-off' || phase === 'initial climb' || phase === 'go-around';
  if (moment.engineOut && leaving) return 'engineOut';
  if (phase === 'go-around') return moment.firstGoAroundRetraction ? 'goAroundFirstRetraction' : 'elsewhere';
  if (phase === 'take-off' || phase === 'initial climb') return 'takeOff';
  return phase === 'landing' || moment.final ? 'finalApproach' : 'elsewhere';
}
