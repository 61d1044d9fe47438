// One flight with its crew, as the screen asks for it: the worker's deed, kept apart so that tests can ask it too.
import type { Sheet } from '../../../../lib/aircraft/sheet.ts';
import { itemsOf } from '../../../../lib/check/flown.ts';
import { placeOf } from '../../../../lib/check/flown-points.ts';
import { dutiesOf } from '../../../../lib/flight/crew.ts';
import { flyProcedure } from '../../../../lib/flight/fly.ts';
import { type Interruption, interruptionDuties } from '../../../../lib/flight/interruptions.ts';
import { ceilingMargin, endTime, floorMargin, STABLE, stableHeight } from '../../../../lib/flight/measures.ts';
import { conditionsFor, settingsFor } from '../../../../lib/flight/start.ts';
import type { Measure } from '../../../../lib/flight/sweep.ts';
import { type Timeline, timeline } from '../../../../lib/flight/timeline.ts';
import type { Conditions, Trace } from '../../../../lib/flight/trace.ts';
import type { Library } from '../../../../lib/library/library.ts';
import type { Policy } from '../../../../lib/policy/policy.ts';
import type { Procedure, Step } from '../../../../lib/procedure/procedure.ts';

/** All that is flown on; it changes when another text is opened, and not with a slider. */
export type Ground = {
  readonly procedure: Procedure;
  readonly against: Procedure | null;
  readonly sheet: Sheet;
  readonly policy: Policy;
  readonly library: Library | null;
};
export type Given = Partial<Conditions> & Pick<Conditions, 'weight'>;
export type Flown = { readonly trace: Trace; readonly crew: Timeline };

export const conditionsOf = (ground: Ground, procedure: Procedure, given: Given): Conditions =>
  conditionsFor(procedure, ground, given, placeOf(procedure, ground.library));

export function flyOne(
  ground: Ground,
  procedure: Procedure,
  given: Given,
  interruptions: readonly Interruption[],
): Flown {
  const settings = settingsFor(procedure, ground.sheet);
  const trace = flyProcedure(procedure, ground, conditionsOf(ground, procedure, given), settings);
  return { trace, crew: timeline(dutiesIn(ground, procedure, trace, interruptions)) };
}

export function dutiesIn(
  { sheet, policy, library }: Ground,
  procedure: Procedure,
  trace: Trace,
  interruptions: readonly Interruption[],
) {
  const { hands } = settingsFor(procedure, sheet);
  // Levers that the study moves at times of its own say nothing of the cue.
  const forced = ({ object }: Step): boolean =>
    (hands.flap !== undefined && /\bflap/i.test(object)) || (hands.gear !== undefined && /\bgear\b/i.test(object));
  const own = dutiesOf({ procedure, trace, policy, sheet, items: (step) => itemsOf(step, library), forced });
  return [...own, ...interruptionDuties(interruptions, policy)];
}

export const MEASURES = {
  stable: stableHeight,
  limit: ceilingMargin,
  lowest: floorMargin,
  length: endTime,
} as const satisfies Record<string, Measure>;
export type MeasureName = keyof typeof MEASURES;

/** What is asked of every flight of a procedure first: the stable height where one is watched for, else the margin to the limit. */
export const firstMeasure = (procedure: Procedure, sheet: Sheet): MeasureName =>
  STABLE in settingsFor(procedure, sheet).marks ? 'stable' : 'limit';
