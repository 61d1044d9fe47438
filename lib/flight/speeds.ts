// The speeds of the sheet and of the operator at one weight, looked up once for a flight.

import { impactRatio } from '../air/airspeed.ts';
import { SEA_SOUND } from '../air/atmosphere.ts';
import { detentNames } from '../aircraft/limits.ts';
import { speedAt } from '../aircraft/schedule.ts';
import type { Sheet } from '../aircraft/sheet.ts';
import { plain } from '../base/arithmetic.ts';
import type { SpeedName } from '../gate/syntax.ts';
import type { Policy } from '../policy/policy.ts';
import { KNOT } from './motion.ts';
import type { Conditions } from './trace.ts';

export type Speeds = {
  /** kt; NaN where the sheet has no such speed. The planned detent where none is named. */
  readonly of: (name: SpeedName, detent: string | null, icing?: boolean) => number;
  /** By place of the detent: VMM, and VFE (VMO where the detent has none). */
  readonly vmm: readonly number[];
  readonly vfe: readonly number[];
  /** VMO, above the crossover MMO, kt, where the pressure is so much of sea level; the same with the gear out. */
  readonly aircraft: (delta: number) => number;
  readonly gear: (delta: number) => number;
};

export function speedsOf(sheet: Sheet, policy: Policy, conditions: Conditions): Speeds {
  const names = detentNames(sheet);
  const known = new Map<string, number>();
  const { weight } = conditions;
  const ask = (name: SpeedName, detent: string | null, icing: boolean): number => {
    if (name === 'VAPP') {
      const { least, most, headWindShare } = policy.speeds.approachAddition;
      const added = Math.max(least, Math.min(most, headWindShare * conditions.wind));
      return of('VREF', detent, icing) + added;
    }
    if (name === 'clean-speed') return of('VMM', names[0]!, icing) + policy.speeds.cleanSpeedAddition;
    return speedAt(sheet, { name, detent: detent ?? conditions.detent, icing }, { weight }) ?? Number.NaN;
  };
  const of = (name: SpeedName, detent: string | null, icing = false): number => {
    const key = `${name} ${detent} ${icing}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const found = ask(name, detent, icing);
    known.set(key, found);
    return found;
  };
  const { vmo, mmo, gear } = sheet.limits;
  // The Mach limit as an indicated speed: below the crossover it is beyond the other and does not matter.
  const byMach = (impact: number, delta: number): number =>
    (SEA_SOUND * Math.sqrt(5 * ((impact * delta + 1) ** (2 / 7) - 1))) / KNOT;
  const mmoImpact = impactRatio(plain, mmo.value);
  const mleImpact = impactRatio(plain, gear.mle.value);
  // Above this pressure the indicated limit is the nearer one, and the Mach number need not be asked.
  const crossing = (speed: number, impact: number): number => impactRatio(plain, (speed * KNOT) / SEA_SOUND) / impact;
  const vmoFrom = crossing(vmo.value, mmoImpact);
  const vleFrom = crossing(gear.vle.value, mleImpact);
  return {
    of,
    vmm: names.map((name) => of('VMM', name)),
    vfe: sheet.detents.map((detent) => detent.vfe?.value ?? vmo.value),
    aircraft: (delta) => (delta >= vmoFrom ? vmo.value : byMach(mmoImpact, delta)),
    gear: (delta) => (delta >= vleFrom ? gear.vle.value : byMach(mleImpact, delta)),
  };
}
