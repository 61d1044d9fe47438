// The procedure flown over its envelope, for the checks that need time: made once, when the first of them asks.
import type { Sheet } from '../aircraft/sheet.ts';
import { dutiesOf } from '../flight/crew.ts';
import { flyProcedure } from '../flight/fly.ts';
import type { Settings } from '../flight/settings.ts';
import { conditionsFor, settingsFor } from '../flight/start.ts';
import { type Timeline, timeline } from '../flight/timeline.ts';
import { type Varied, varied } from '../flight/timeline-spread.ts';
import type { Conditions, Trace } from '../flight/trace.ts';
import type { Aerodrome, Library } from '../library/library.ts';
import type { Policy } from '../policy/policy.ts';
import type { Phase, Procedure, Step } from '../procedure/procedure.ts';
import { knotsToMetresPerSecond } from '../units/convert.ts';
import { knots } from '../units/quantity.ts';
import { placeOf, pointsOf } from './flown-points.ts';

export type FlownOne = {
  readonly trace: Trace;
  /** The two pilots and the voice of this flight, durations as the policy has them; and with them stretched. */
  readonly crew: () => Timeline;
  readonly varied: () => Varied;
};
export type Flown = {
  readonly flights: readonly FlownOne[];
  /** Why nothing was flown; null when something was. */
  readonly because: string | null;
  /** The aerodrome that the procedure names, whose card the flights follow; null: none. */
  readonly place: Aerodrome | null;
  /** Under the same conditions with other settings, such as levers that nobody takes back. */
  readonly again: (conditions: Conditions, change: Partial<Settings>) => Trace;
};

type FlownFacts = { readonly sheet: Sheet; readonly policy: Policy; readonly library: Library | null };

/** A flight with its crew, reckoned when it is asked for. */
export function withCrew(procedure: Procedure, facts: FlownFacts, { hands }: Settings, trace: Trace): FlownOne {
  const { sheet, policy, library } = facts;
  const items = (step: Step): number | null => itemsOf(step, library);
  const forced = ({ object }: Step): boolean =>
    (hands.flap !== undefined && /\bflap/i.test(object)) || (hands.gear !== undefined && /\bgear\b/i.test(object));
  const duties = () => dutiesOf({ procedure, trace, policy, sheet, items, forced });
  let crew: Timeline | undefined;
  let spread: Varied | undefined;
  return {
    trace,
    crew: () => (crew ??= timeline(duties())),
    varied: () => (spread ??= varied(duties(), policy.durations)),
  };
}

/** How many items the list has that a step reads: as the step says, else as the library's list of that name has. */
export function itemsOf(step: Step, library: Library | null): number | null {
  if (step.verb !== 'read' || !/\b(check)?list\b/i.test(step.object)) return null;
  const said = /\b(\d+) items?\b/i.exec(`${step.object} ${step.value}`);
  if (said !== null) return Number(said[1]);
  const name = step.object.toLowerCase();
  const list = library?.checklists.find(({ title }) =>
    name.includes(title.toLowerCase().replace(/ (check)?list$/, '')),
  );
  return list === undefined ? null : list.items.length;
}

/** Phases that the engine can fly from a state that the procedure names. */
const FLIES = new Set<Phase>(['take-off', 'approach', 'go-around']);

/** s after which a level-off that has not come is no longer waited for. */
const LONGEST = 600;
const comesDown = ({ samples }: Trace, height: number): boolean => samples.height.some((at) => at < height);
const firstLevel = ({ events }: Trace): boolean => events.some(({ line }) => line?.vertical === 'LEVEL');

/** Flies the procedure over its envelope: every tonne, in the winds and temperatures at both ends, calm and on a standard day. */
export function flownOver(procedure: Procedure, facts: FlownFacts): Flown {
  const { sheet, policy } = facts;
  const place = placeOf(procedure, facts.library);
  const marks = { stable: stableGate(procedure, facts) };
  const settings: Settings = { ...settingsFor(procedure, sheet), marks };
  const fly = (conditions: Conditions, how: Settings): Trace => {
    const trace = flyProcedure(procedure, facts, conditions, how);
    // The last step is no end of a climb: what comes to a level-off is flown to it.
    const climbs = procedure.phases.some((phase) => phase === 'take-off' || phase === 'go-around');
    if (!climbs || trace.end.reason !== 'complete' || firstLevel(trace)) return trace;
    return flyProcedure(procedure, facts, conditions, { ...how, end: 'vertical = LEVEL', longest: LONGEST });
  };
  const again: Flown['again'] = (conditions, change) => fly(conditions, { ...settings, ...change });
  const none = (because: string): Flown => ({ flights: [], because, place, again });
  if (!procedure.phases.some((phase) => FLIES.has(phase))) {
    return none(`no ${procedure.phases.join(' or ') || 'phase'} is flown: only take-off, approach and go-around are`);
  }
  const traces = pointsOf(procedure, sheet, place).map((given) =>
    fly(conditionsFor(procedure, facts, given, place), settings),
  );
  const refused = traces.find(({ end }) => end.reason === 'refused');
  if (refused !== undefined) return none(refused.end.says);
  const approach = !procedure.phases.some((phase) => phase === 'take-off' || phase === 'go-around');
  const gate = policy.gates.stable.height;
  if (approach && !procedure.entry.vertical.includes('GLIDE') && traces.every((trace) => !comesDown(trace, gate))) {
    return none(
      `from its entry, ${procedure.entry.vertical.join(' or ') || 'which names no mode'}, no flight comes down to the gate`,
    );
  }
  const allowed = traces.filter((trace) => isAllowed(procedure, trace, policy));
  if (allowed.length === 0)
    return none('with one engine out no weight of the envelope has the climb that its limit asks for');
  const flights = allowed.map((trace) => withCrew(procedure, facts, settings, trace));
  return { flights, because: null, place, again };
}

/** Where a procedure says that the climb limits its weight, one engine out is flown up to that weight alone: the gross
 *  gradient behind lift-off, (T - D) / W at the climb speed, is at least that of the second segment. */
function isAllowed({ weightLimit }: Procedure, { samples, conditions }: Trace, { climb }: Policy): boolean {
  if (conditions.enginesOut === 0 || !/\b(climb|gradient)\b/i.test(weightLimit)) return true;
  const row = samples.height.findIndex((height) => height >= STEADY);
  return (
    row >= 0 && (100 * samples.excess[row]!) / knotsToMetresPerSecond(knots(samples.trueSpeed[row]!)) >= climb.second
  );
}
/** ft AAL: the climb has begun and nothing has been retracted yet. */
const STEADY = 100;

/** What counts as stable: the landing detent and the gear, and the window of the policy. */
function stableGate(procedure: Procedure, { sheet, policy }: FlownFacts): string {
  const { speedBelow, speedAbove } = policy.gates.stable;
  const how = settingsFor(procedure, sheet).flap === 'at the lever' ? 'selected' : 'indicated';
  const landing = sheet.detents.filter(({ use }) => use.includes('landing')).map(({ name }) => name);
  const detent = procedure.exit.flaps.findLast((name) => landing.includes(name)) ?? landing.at(-1);
  return `flaps ${detent} ${how} and gear down ${how} and speed between VAPP - ${speedBelow} kt and VAPP + ${speedAbove} kt`;
}
