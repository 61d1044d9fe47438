// How far before the stable gate a speed has to be left, on a glide path of 3° at idle: with the forces of the sheet, over the
// whole envelope. In nautical miles, as a formula.
import { forces } from '../aircraft/performance.ts';
import { speedExpression } from '../aircraft/schedule.ts';
import type { Sheet } from '../aircraft/sheet.ts';
import { add, div, type Expression, mul, number, sub, symbolic, variable } from '../base/expression.ts';
import type { Policy } from '../policy/policy.ts';

/** Standard gravity in kt each second; feet in a nautical mile; seconds in an hour. */
const GRAVITY = 9.80665 / (1852 / 3600);
const MILE = 1852 / 0.3048;
const HOUR = 3600;
const PATH = (3 * Math.PI) / 180;

/** NM from the runway end to the stable gate, along the path. */
export const gateDistance = (policy: Policy): number => policy.gates.stable.height / (Math.tan(PATH) * MILE);

export type Slowing = { readonly need: Expression; readonly target: Expression };

/**
 * The distance, NM, in which the type slows from a speed to the upper edge of the window at the gate, gear down, with the
 * detent before the landing detent, and in which the landing flap then runs. dV/dt = g ((T − D)/(W g) + sin 3°), D2 of the
 * project's reference; v² / 2a at the mean of the two speeds. null where the sheet has no reference speed.
 */
export function slowing(sheet: Sheet, policy: Policy, detent: string, from: number): Slowing | null {
  const vref = speedExpression(sheet, { name: 'VREF', detent, icing: false });
  const at = sheet.detents.findIndex(({ name }) => name === detent);
  const before = sheet.detents[at - 1];
  if (vref === null || before === undefined) return null;
  const target = add(vref, number(policy.speeds.approachAddition.least + policy.gates.stable.speedAbove));
  const mean = mul(number(0.5), add(target, number(from)));
  const moment = {
    speed: mean,
    altitude: variable('elevation'),
    temperature: variable('temperature'),
    weight: variable('weight'),
  };
  const { excess } = forces(symbolic, sheet, { detent: before.name, gear: 'down', rating: 'idle' }, moment);
  const rate = mul(number(-GRAVITY), add(excess, number(Math.sin(PATH))));
  const squares = sub(number(from * from), mul(target, target));
  const run = number(((before.transitToNext?.value ?? 0) * from) / HOUR);
  return { need: add(div(squares, mul(number(2 * HOUR), rate)), run), target };
}
