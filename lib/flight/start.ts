// What a flight starts from: conditions where nobody gave them, the settings that fit a procedure, the mode line at the first
// moment, and the sentence that refuses what can't be flown.
import type { Sheet } from '../aircraft/sheet.ts';
import type { Policy } from '../policy/policy.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { FlightFacts } from './flight.ts';
import type { StartLine } from './guidance.ts';
import { STABLE } from './measures.ts';
import { APPROACH, ENGINE_OUT, FLIGHT, GO_AROUND, type Settings, TAKE_OFF } from './settings.ts';
import type { Conditions } from './trace.ts';

/** The charted values of an aerodrome that a flight needs; the library's cards have them. ft AAL, ft MSL. */
export type Place = {
  readonly elevation: number;
  readonly climbThrustHeight: number;
  readonly accelerationHeight: number;
  readonly goAroundAccelerationHeight: number;
  readonly engineOutAccelerationHeight: number;
  readonly transitionAltitude: number;
  readonly minima: { readonly altitude: number };
  readonly finalApproachFix: number;
  readonly missedApproachAltitude: number;
};

const goesAround = (procedure: Procedure): boolean => procedure.phases.includes('go-around');
const takesOff = (procedure: Procedure): boolean => procedure.phases.includes('take-off');
const engineOut = (procedure: Procedure): boolean =>
  procedure.class === 'engine-out' || /\bengine[- ]out\b/i.test(procedure.title);

/** The detent that the study of the phase plans, where the procedure allows it: F12 for take-off, the last one for landing. */
function plannedDetent(procedure: Procedure, sheet: Sheet): string {
  const use = takesOff(procedure) ? 'take-off' : 'landing';
  const fit = sheet.detents.filter((detent) => detent.use.includes(use)).map((detent) => detent.name);
  const allowed = procedure.envelope.detents.filter((name) => fit.includes(name));
  const from = allowed.length > 0 ? allowed : fit;
  return (use === 'take-off' ? from[Math.floor((from.length - 1) / 2)] : from.at(-1)) ?? sheet.detents[0]!.name;
}

/** Where a procedure that belongs to no runway is flown, ft MSL, and how far the selected altitude lies from there. */
const EN_ROUTE = 10_000;
const AWAY = 4000;
const enRoute = (procedure: Procedure): boolean =>
  !takesOff(procedure) && !goesAround(procedure) && !procedure.phases.includes('approach');

function selected(procedure: Procedure, sheet: Sheet, elevation: number, missed: number): number {
  if (takesOff(procedure)) return elevation + 7000;
  if (!enRoute(procedure)) return missed;
  const [vertical = ''] = procedure.entry.vertical;
  if (sheet.modes.climbing.includes(vertical)) return EN_ROUTE + AWAY;
  return sheet.modes.descending.includes(vertical) ? EN_ROUTE - AWAY : EN_ROUTE;
}

/** Conditions of a flight; whatever is not given is that of the place, else of the operator's policy. */
export function conditionsFor(
  procedure: Procedure,
  facts: { readonly sheet: Sheet; readonly policy: Policy },
  given: Partial<Conditions> & Pick<Conditions, 'weight'>,
  place: Place | null = null,
): Conditions {
  const { gates } = facts.policy;
  const elevation = given.elevation ?? place?.elevation ?? 0;
  const missed = given.missedApproachAltitude ?? place?.missedApproachAltitude ?? elevation + 3000;
  const track = given.track ?? 0;
  return {
    elevation,
    temperature: 0,
    wind: 0,
    windGradient: 0,
    enginesOut: engineOut(procedure) ? 1 : 0,
    standard: procedure.effectivity.standards[0] ?? Object.keys(facts.sheet.modes.standards)[0] ?? 'A',
    detent: plannedDetent(procedure, facts.sheet),
    selectedAltitude: selected(procedure, facts.sheet, elevation, missed),
    missedApproachAltitude: missed,
    climbThrustHeight: place?.climbThrustHeight ?? gates.climbThrustAltitude,
    accelerationHeight: goesAround(procedure)
      ? (place?.goAroundAccelerationHeight ?? gates.goAroundAccelerationAltitude)
      : (place?.accelerationHeight ?? gates.accelerationAltitude),
    engineOutAccelerationHeight: place?.engineOutAccelerationHeight ?? gates.accelerationAltitude,
    transitionAltitude: place?.transitionAltitude ?? 10_000,
    minima: place?.minima.altitude ?? elevation + 200,
    finalApproachFix: place?.finalApproachFix ?? elevation + 2000,
    track,
    turnTo: track,
    ...given,
  };
}

/** The study that fits the procedure; for all else the flight with every lag. */
export function settingsFor(procedure: Procedure, sheet: Sheet, elevation = 0): Settings {
  if (takesOff(procedure)) return engineOut(procedure) ? ENGINE_OUT : TAKE_OFF;
  if (goesAround(procedure)) return GO_AROUND;
  if (!procedure.phases.includes('approach')) {
    const speed = /\d+ kt/.exec(procedure.entry.speed)?.[0] ?? '250 kt';
    const detent = procedure.entry.flaps[0] ?? sheet.detents[0]!.name;
    return { ...FLIGHT, start: { ...FLIGHT.start, height: EN_ROUTE - elevation, speed, detent } };
  }
  // An approach that is on the path already is that of the study; one that is level before it is flown from there.
  const { entry } = procedure;
  if (!entry.vertical.includes('GLIDE')) {
    const start = { ...FLIGHT.start, detent: entry.flaps[0] ?? sheet.detents[0]!.name, toGo: 19 };
    return { ...FLIGHT, start, marks: stableMark(procedure, sheet) };
  }
  const speed = /\d+ kt/.exec(entry.speed)?.[0] ?? APPROACH.start.speed;
  const detent = entry.flaps[0] ?? APPROACH.start.detent;
  return { ...APPROACH, start: { ...APPROACH.start, speed, detent }, marks: stableMark(procedure, sheet) };
}

/** Stable as the study has it: the landing detent and the gear selected, and VAPP − 5 to VAPP + 10 kt. */
function stableMark(procedure: Procedure, sheet: Sheet): Settings['marks'] {
  const detent = plannedDetent(procedure, sheet);
  return {
    [STABLE]: `flaps ${detent} selected and gear down selected and speed between VAPP - 5 kt and VAPP + 10 kt`,
  };
}

/** The mode line at the first moment. A take-off has left the ground: its levers are latched and the first climb is on. */
export function startLine(procedure: Procedure, sheet: Sheet, conditions: Conditions, settings: Settings): StartLine {
  const { entry } = procedure;
  const height = settings.start.height ?? 0;
  const rel = conditions.selectedAltitude > conditions.elevation + height ? 'above' : 'below';
  const armed = entry.armed ?? [];
  if (takesOff(procedure)) {
    const kept = armed.filter((word) => sheet.modes.armedLateral.includes(word));
    return {
      thrust: 'LATCHED',
      lateral: 'CENTRELINE',
      vertical: 'DEPART',
      armed: rel === 'above' ? ['ALT', ...kept] : kept,
      phase: 'air',
      rel,
    };
  }
  const vertical = entry.vertical[0] ?? 'GLIDE';
  const level = sheet.modes.levels?.includes(vertical) ?? false;
  return {
    thrust: entry.thrust[0] ?? 'GOVERN',
    lateral: entry.lateral[0] ?? 'ROUTE',
    vertical,
    armed: level ? [] : armed,
    phase: 'air',
    rel: level ? 'near' : rel,
  };
}

const kilograms = (value: number): string => `${(value / 1000).toFixed(1)} t`;

/** A sentence for what can't be flown at all; null when it can. */
export function refusal(procedure: Procedure, facts: FlightFacts, conditions: Conditions): string | null {
  const { weights, limits, detents } = facts.sheet;
  const { weight, elevation, temperature, wind, enginesOut, detent } = conditions;
  const bad = Object.entries(conditions).find(([, value]) => typeof value === 'number' && Number.isNaN(value));
  if (bad !== undefined) return `The condition ${bad[0]} is no number.`;
  if (weight < weights.minimumFlight.value || weight > weights.maximumTakeOff.value) {
    return `A weight of ${kilograms(weight)} is outside the sheet: ${kilograms(weights.minimumFlight.value)} to ${kilograms(weights.maximumTakeOff.value)}.`;
  }
  const inside = (value: number, range: { from: number; to: number }, what: string, unit: string): string | null =>
    value < range.from || value > range.to
      ? `${what} ${value} ${unit} is outside the sheet: ${range.from} to ${range.to} ${unit}.`
      : null;
  const range =
    inside(elevation, limits.elevation, 'An elevation of', 'ft') ??
    inside(temperature, limits.temperature, 'A temperature of standard', '°C') ??
    inside(wind, limits.wind, 'A head wind of', 'kt');
  if (range !== null) return range;
  if (!detents.some((one) => one.name === detent)) return `The sheet has no detent ${detent}.`;
  if (enginesOut >= facts.sheet.thrust.engines) return 'No engine is left to fly with.';
  if (procedure.steps.length === 0) return 'The procedure has no steps.';
  return null;
}
