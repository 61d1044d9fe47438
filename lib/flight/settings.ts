// How a flight is computed beside its conditions: where it starts, how hands and flaps and engines follow, where it ends. The
// studies of the reference (D6.1) are settings of the one engine; so is the flight with every lag and every hand.
import type { SpeedName } from '../gate/syntax.ts';
import { AS_THE_SHEET, type Factors } from './craft.ts';

/** `at once`: drag and indication with the lever. `at the lever`: drag with the lever, indication after its time. */
export type TransitLaw = 'at once' | 'at the lever' | 'as indicated';

export type Start = {
  /** ft AAL; null: level at the altitude of the final approach fix. */
  readonly height: number | null;
  /** In gate notation, such as `V2 + 15 kt`. */
  readonly speed: string;
  readonly detent: string;
  readonly gear: 'up' | 'down';
  /** ft/min; `glide`: that of a 3° path. */
  readonly verticalSpeed: number | 'glide';
  /** Times idle thrust; null: what the mode line asks for. */
  readonly timesIdle: number | null;
  /** Speed selector, in gate notation; '' as the speed. */
  readonly selector: string;
  /** NM to the runway end; null: none ahead. */
  readonly toGo: number | null;
};

export type Settings = {
  readonly name: string;
  readonly assumptions: readonly string[];
  readonly start: Start;
  /** Gate notation; '' until nothing is left to do. */
  readonly end: string;
  readonly flap: TransitLaw;
  readonly gear: TransitLaw;
  /** False: thrust follows at once. */
  readonly spool: boolean;
  /** Most change of vertical speed on pitch, g. */
  readonly loadFactor: number;
  /** What GOVERN holds: the target; the speed that is there until the selector is turned; or idle until the target and then the speed that is there. */
  readonly govern: 'target' | 'present' | 'idle first';
  /** s from a capture to the thrust that follows it. Infinite: the levers are left where they are. */
  readonly governAfter: number;
  /** Speed targets of vertical modes that the study sets by itself, kt above a speed of the planned detent. */
  readonly targets: Readonly<Record<string, { readonly over: SpeedName; readonly plus: number }>>;
  /** When the first movement of this lever comes, s, whatever its cue says. */
  readonly hands: Readonly<{ flap?: number; gear?: number }>;
  /** `none`: a hand moves when its cue comes true. `policy`: words and hands take the time that the operator's policy gives them. */
  readonly reaction: 'none' | 'policy';
  /** s added to every hand, for a sensitivity. */
  readonly delay: number;
  /** s that the hand is taken after a movement, before the next lever. */
  readonly busy: Readonly<{ flap: number; gear: number }>;
  /** Events of the mode table, by their words, that this study leaves out. */
  readonly without: readonly string[];
  /** Steps that are left out, by label or id: a study of what comes before them. */
  readonly omit: readonly string[];
  /** Events and judgements that happen although they send away from the main line; those of it that do not. */
  readonly happens: readonly string[];
  readonly denied: readonly string[];
  readonly factors: Factors;
  /** s added for a step, by its id: how late the crew comes to it. */
  readonly late: Readonly<Record<string, number>>;
  /** What is watched for and noted when it first comes true, by name, in gate notation. */
  readonly marks: Readonly<Record<string, string>>;
  /** s between samples; 0: none but those of events. */
  readonly sampling: number;
  /** s after which a flight is broken off. */
  readonly longest: number;
  /** Relative error of a step. */
  readonly tolerance: number;
};

const PLAIN: Omit<Settings, 'name' | 'assumptions' | 'start' | 'end'> = {
  flap: 'as indicated',
  gear: 'as indicated',
  spool: true,
  loadFactor: 0.1,
  govern: 'target',
  governAfter: 0,
  targets: {},
  hands: {},
  reaction: 'none',
  delay: 0,
  busy: { flap: 0, gear: 0 },
  without: [],
  omit: [],
  happens: [],
  denied: [],
  factors: AS_THE_SHEET,
  late: {},
  marks: {},
  sampling: 1,
  longest: 1200,
  tolerance: 1e-6,
};

const SPEED_ON_PITCH =
  'Speed on pitch wants (target − speed) / 4 s, at most 1.2 m/s²; the path is at most 12.5°; the vertical speed changes by at most';

/** Take-off and departure, all engines. */
export const TAKE_OFF: Settings = {
  ...PLAIN,
  name: 'take-off study',
  assumptions: [
    'Starts at 35 ft AAL with V2 + 15 kt, gear down, 6 m/s up, take-off thrust set.',
    `${SPEED_ON_PITCH} 0.1 g.`,
    'From the acceleration height 35 % of the excess power climbs, at least 500 ft/min, until 250 kt; the rest accelerates.',
    'Each flap step moves when its cue comes true; drag and indication follow at once. Gear drag ends at 15 s. Thrust follows at once.',
  ],
  start: {
    height: 35,
    speed: 'V2 + 15 kt',
    detent: '',
    gear: 'down',
    verticalSpeed: (6 * 60) / 0.3048,
    timesIdle: null,
    selector: '',
    toGo: null,
  },
  end: '',
  flap: 'at once',
  spool: false,
  hands: { gear: 4 },
};

/** One engine out from lift-off. */
export const ENGINE_OUT: Settings = {
  ...TAKE_OFF,
  name: 'engine-out study',
  assumptions: [
    'Starts at 35 ft AAL with V2 of the take-off detent, gear up, take-off thrust of one engine, drag of one engine out.',
    `${SPEED_ON_PITCH} 0.1 g.`,
    'Each flap step moves when its cue comes true; drag and indication follow at once. Thrust follows at once.',
  ],
  start: { ...TAKE_OFF.start, speed: 'V2', gear: 'up', verticalSpeed: 0 },
  hands: {},
};

/** All engines, from 200 ft AAL. */
export const GO_AROUND: Settings = {
  ...PLAIN,
  name: 'go-around study',
  assumptions: [
    'Starts at 200 ft AAL with VREF + 5 kt on a 3° path, gear down, thrust 3.5 times idle; the switch is pressed at 0 s.',
    `${SPEED_ON_PITCH} 0.15 g; the target is VREF + 15 kt to CAPTURE, none after.`,
    'Flap lever 6 s and gear lever 10 s after the press. Drag of F18 with the lever: pessimistic for the limit of the flap still indicated.',
    'Thrust follows with 1.8 s up and 1.5 s down; 1 s after CAPTURE it holds the speed that is there.',
  ],
  start: {
    height: 200,
    speed: 'VREF + 5 kt',
    detent: '',
    gear: 'down',
    verticalSpeed: 'glide',
    timesIdle: 3.5,
    selector: '',
    toGo: null,
  },
  end: '',
  flap: 'at the lever',
  loadFactor: 0.15,
  govern: 'present',
  governAfter: 1,
  targets: { LIFT: { over: 'VREF', plus: 15 } },
  hands: { flap: 6, gear: 10 },
};

/** From 3 000 ft AAL on a 3° path. */
export const APPROACH: Settings = {
  ...PLAIN,
  name: 'approach study',
  assumptions: [
    'Starts at 3 000 ft AAL on a 3° path, F6, gear up, 200 kt, engines at idle, no vertical speed yet.',
    'Flap and gear steps come in the listed order only; a step waits for its height, its speed and the hand, which is busy 5 s after a flap step and 2 s after the gear.',
    'Drag of the new detent and of the gear from the moment of selection. Idle while the speed is above VAPP + 0.5 kt, then what holds speed and path; no lag.',
    'Stable: all five steps selected and VAPP − 5 to VAPP + 10 kt; thrust is not asked.',
  ],
  start: {
    height: 3000,
    speed: '200 kt',
    detent: 'F6',
    gear: 'up',
    verticalSpeed: 0,
    timesIdle: null,
    selector: 'VAPP',
    toGo: null,
  },
  end: '',
  flap: 'at the lever',
  gear: 'at the lever',
  spool: false,
  govern: 'idle first',
  busy: { flap: 5, gear: 2 },
};

/** Level or climbing or descending from a state line: with every lag and every hand. */
export const FLIGHT: Settings = {
  ...PLAIN,
  name: 'flight',
  assumptions: [
    `${SPEED_ON_PITCH} 0.1 g.`,
    'Flap and gear move with their transit times; drag follows the indication. Thrust follows with the lag of the sheet.',
    "Words and hands take the time that the operator's policy gives them.",
  ],
  start: {
    height: null,
    speed: 'clean speed',
    detent: '',
    gear: 'up',
    verticalSpeed: 0,
    timesIdle: null,
    selector: '',
    toGo: null,
  },
  end: '',
  reaction: 'policy',
};
