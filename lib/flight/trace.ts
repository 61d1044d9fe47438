// A flight that was computed: under which conditions, what was flown, what happened when, why it ended. This folder flies a
// procedure as a point mass; it reads no clock, calls no random number and knows no screen. Other files build on these shapes.
import type { StepId } from '../procedure/procedure.ts';

/** Of the laws and of the integration: whoever changes a figure that a trace shows, raises it. Stored with each run. */
export const FLIGHT_VERSION = '1.0.0';

/** Everything that a flight depends on beside procedure, sheet and policy. */
export type Conditions = {
  /** kg */
  readonly weight: number;
  /** Aerodrome, ft MSL. Pressure altitude is altitude: the setting is the standard one. */
  readonly elevation: number;
  /** °C from standard. */
  readonly temperature: number;
  /** kt along the track at the ground, head wind positive, and how much more of it for each 1 000 ft. */
  readonly wind: number;
  readonly windGradient: number;
  readonly enginesOut: number;
  /** Guidance standard, such as A. */
  readonly standard: string;
  /** The detent planned for take-off or landing. */
  readonly detent: string;
  /** ft MSL, as set before the first moment flown, and as set when a step says "missed-approach altitude". */
  readonly selectedAltitude: number;
  readonly missedApproachAltitude: number;
  /** ft AAL. */
  readonly climbThrustHeight: number;
  readonly accelerationHeight: number;
  readonly engineOutAccelerationHeight: number;
  /** ft MSL. */
  readonly transitionAltitude: number;
  readonly minima: number;
  readonly finalApproachFix: number;
  /** Track flown, °; what a heading or a route turns to later, ° (the same unless said). */
  readonly track: number;
  readonly turnTo: number;
};

/** One row for each sample; columns of equal length. kt, ft, ft/min, NM, °, s unless the name says otherwise. */
export type Samples = Readonly<Record<SampleColumn, Float64Array>>;
export type SampleColumn = (typeof SAMPLE_COLUMNS)[number]['name'];

/** In the order of a table or a file. `detent` and `lever` are places in the list `detents` of the trace. */
export const SAMPLE_COLUMNS = [
  { name: 'time', unit: 's', says: 'time from the first moment flown' },
  { name: 'height', unit: 'ft', says: 'height above the aerodrome' },
  { name: 'altitude', unit: 'ft', says: 'altitude above the sea' },
  { name: 'speed', unit: 'kt', says: 'indicated speed' },
  { name: 'trueSpeed', unit: 'kt', says: 'true speed' },
  { name: 'groundSpeed', unit: 'kt', says: 'ground speed' },
  { name: 'mach', unit: 'M', says: 'Mach number' },
  { name: 'distance', unit: 'NM', says: 'distance flown over the ground' },
  { name: 'verticalSpeed', unit: 'ft/min', says: 'vertical speed' },
  { name: 'path', unit: '°', says: 'path angle in the air' },
  { name: 'thrust', unit: '%', says: 'thrust of the running engines, of what take-off gives here and now' },
  { name: 'detent', unit: '', says: 'flap indicated' },
  { name: 'lever', unit: '', says: 'flap lever' },
  { name: 'gear', unit: '', says: 'gear: 0 up, 1 down, between in transit' },
  { name: 'loadFactor', unit: 'g', says: 'load factor' },
  { name: 'bank', unit: '°', says: 'bank, right positive' },
  { name: 'heading', unit: '°', says: 'track through the air' },
  { name: 'east', unit: 'NM', says: 'position east of the start' },
  { name: 'north', unit: 'NM', says: 'position north of the start' },
  { name: 'target', unit: 'kt', says: 'speed target' },
  { name: 'vmm', unit: 'kt', says: 'VMM of the flap indicated' },
  { name: 'floor', unit: 'kt', says: 'lowest speed of the phase' },
  { name: 'ceiling', unit: 'kt', says: 'least of VFE indicated, VLE with gear not up, VMO and MMO' },
  { name: 'excess', unit: 'm/s', says: 'specific excess power' },
  { name: 'energy', unit: 'm', says: 'energy height' },
] as const;

export type ModeLine = {
  readonly thrust: string;
  readonly lateral: string;
  readonly vertical: string;
  readonly armed: readonly string[];
};

/**
 * `gate`: the cue of a step came true. `act`: its hand moved. `done`: the step is over, with its words. `mode`: the line
 * changed. `flap`, `gear`: the lever moved, or (`-there`) the indication followed. `limit`: a bound of the band was passed.
 * `mark`: something that the flight was asked to watch for came true, such as `stable`.
 */
export type EventKind =
  | 'start'
  | 'gate'
  | 'act'
  | 'done'
  | 'mode'
  | 'flap'
  | 'flap-there'
  | 'gear'
  | 'gear-there'
  | 'target'
  | 'limit'
  | 'mark'
  | 'end';

export type FlightEvent = {
  readonly time: number;
  readonly kind: EventKind;
  /** The step whose gate or hand it was; null: the aircraft or the guidance. */
  readonly step: StepId | null;
  /** Of a change of modes. */
  readonly who: 'crew' | 'automatic' | 'environment' | null;
  /** The rule of the mode table; '' where none was. */
  readonly rule: string;
  /** A sentence or words, as a table shows them: `flaps F12 → F6, 5 s`, `LATCHED · ROUTE · DEPART, armed ALT`. */
  readonly says: string;
  /** At that moment: ft AAL, kt indicated, ft/min. */
  readonly height: number;
  readonly speed: number;
  readonly verticalSpeed: number;
  /** After a change of modes; null for every other kind. */
  readonly line: ModeLine | null;
};

/** Something that moves for a while: a bar on the time axis. `to` is null where the flight ended before it arrived. */
export type Transit = {
  readonly what: 'flap' | 'gear';
  readonly from: string;
  readonly to: string;
  readonly begins: number;
  readonly ends: number | null;
  readonly step: StepId | null;
};

/** When the gate of a step came true, when its hand moved, and when it was done; null: not in this flight. */
export type StepTimes = {
  readonly step: StepId;
  readonly gate: number | null;
  readonly act: number | null;
  readonly done: number | null;
  /** Why it was not flown: `before the flight`, `not for this flight`, `its gate never came true`; '' when it was. */
  readonly left: string;
};

/** Something the flight could not do as written. What was flown up to there is kept. */
export type FlightProblem = { readonly time: number; readonly step: StepId | null; readonly says: string };

export type EndReason = 'complete' | 'reached' | 'ground' | 'time' | 'refused' | 'limit';

export type Trace = {
  readonly version: string;
  readonly conditions: Conditions;
  /** Sentences: what was taken for granted; then what this model cannot say. */
  readonly assumptions: readonly string[];
  readonly cannot: readonly string[];
  /** Names of the detents from clean to full. */
  readonly detents: readonly string[];
  readonly samples: Samples;
  /** By time; of one moment in the order in which they came. */
  readonly events: readonly FlightEvent[];
  /** The mode line from each moment on. */
  readonly lines: readonly { readonly from: number; readonly line: ModeLine }[];
  readonly transits: readonly Transit[];
  readonly steps: readonly StepTimes[];
  readonly problems: readonly FlightProblem[];
  readonly end: { readonly time: number; readonly reason: EndReason; readonly says: string };
};
