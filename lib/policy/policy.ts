/**
 * The operator's own thresholds, durations, words and sign-off rules: values with a version, owned by the standards
 * captain. A check asks here; it never carries a figure of its own. This folder knows no aircraft and no procedure.
 */
import { z } from 'zod';
import { err, ok, type Result } from '../base/result.ts';
import { sentence } from '../base/sentence.ts';
import { wordsPolicy } from './words.ts';

const kt = z.number().finite().min(0).max(400);
const ft = z.number().finite().min(0).max(60_000);
const seconds = z.number().finite().positive().max(3_600);
const share = z.number().finite().min(0).max(1);
const count = z.number().int().positive().max(1_000);

/** The lowest speed allowed: a named speed and what is added to it. `of`: which detent gives the named speed. */
const floor = z.strictObject({
  speed: z.enum(['V2', 'VREF', 'VMM']),
  of: z.enum(['held', 'left', 'resulting']),
  plus: kt,
});

const holdLimit = z.strictObject({ speed: kt, upTo: ft });

const speeds = z.strictObject({
  /** Flap is selected at or below VFE less this, kt. */
  selectionMargin: kt,
  selectionMarginTurbulence: kt,
  /** VFE of the next detent less VMM of the present one, kt, at least. */
  bandMinimum: kt,
  /** Steepest bank below VMM of the detent held, degrees. */
  bankBelowVmm: z.number().finite().min(5).max(45),
  /** Clean speed is VMM of the clean detent and this, kt. */
  cleanSpeedAddition: kt,
  /** What VAPP adds to VREF, kt: half the steady head wind and the gust above it, held between these. */
  approachAddition: z.strictObject({ least: kt, most: kt, headWindShare: share }),
  /** VREF and the largest addition stay at least this below VFE of the landing detent, kt. */
  additionMargin: kt,
  /** Take-off target above V2, all engines, kt. */
  takeOffTarget: kt,
  initialClimb: z.strictObject({ least: kt, most: kt }),
  areaLimit: z.strictObject({ speed: kt, below: ft }),
  crossCheck: z.strictObject({ at: kt, within: kt, thrustSetBy: kt }),
  /** Fastest in a hold, by level: each up to its altitude. */
  hold: z.strictObject({ low: holdLimit, middle: holdLimit, high: holdLimit }).default({
    low: { speed: 230, upTo: 14_000 },
    middle: { speed: 240, upTo: 20_000 },
    high: { speed: 265, upTo: 34_000 },
  }),
});

const floors = z.strictObject({
  takeOff: floor,
  engineOut: floor,
  goAroundFirstRetraction: floor,
  finalApproach: floor,
  elsewhere: floor,
});

const gates = z.strictObject({
  stable: z.strictObject({
    height: ft,
    heightVisual: ft,
    speedBelow: kt,
    speedAbove: kt,
    sink: z.number().finite().positive().max(3_000),
  }),
  /** No configuration, heading, thrust or head-down action below this height AAL, ft. */
  houseFloor: ft,
  autopilot: z.strictObject({ takeOff: ft, glide: ft, otherwise: ft }),
  noise: z.strictObject({ lowest: ft, latest: ft }),
  accelerationAltitude: ft,
  climbThrustAltitude: ft,
  goAroundAccelerationAltitude: ft,
  levelOff: z.strictObject({ rate: z.number().finite().positive(), within: ft }),
  highAerodrome: ft,
  routeEntry: ft,
  /** Mach takes over from the indicated speed, or gives back, this near to where both meet. */
  crossover: ft.default(500),
  /** Charted altitudes are corrected below this temperature; what is set is rounded up to these. */
  cold: z
    .strictObject({ below: z.number().finite().min(-60).max(20), selector: ft.positive(), minima: ft.positive() })
    .default({ below: 0, selector: 100, minima: 10 }),
});

const climb = z.strictObject({
  /** Gross gradients in per cent, two engines. */
  second: z.number().finite(),
  final: z.number().finite(),
  approach: z.number().finite(),
  landing: z.number().finite(),
  /** Gross less this is net, per cent. */
  netReduction: z.number().finite(),
  leastRate: z.number().finite().positive(),
});

const lists = z.strictObject({ items: count, words: count, afterGear: count });

/** Seconds each, unless the name says otherwise. */
const durations = z.strictObject({
  speechWordsPerSecond: z.number().finite().positive().max(10),
  challengeResponse: seconds,
  lever: seconds,
  pressAndRead: seconds,
  setAltitude: seconds,
  radio: seconds,
  dataEntry: seconds,
  reaction: seconds,
  least: share.positive(),
  most: z.number().finite().min(1).max(5),
  busyTen: share,
  busyThirty: share,
  /** Modes are read this soon after a press; a call waits for the voice channel no longer than this. A policy that was
   *  written before these were asked for has the figures of the catalogue. */
  modeReading: seconds.default(6),
  callWait: seconds.default(3),
  /** What falls due waits for a pair of hands no longer than this. */
  handWait: seconds.default(7),
  /** Of the time to a deadline this much is left over. */
  slack: share.default(0.3),
});

const panel = z.strictObject({
  /** Who presses and turns. */
  handFlown: z.enum(['PF', 'PM']),
  autopilot: z.enum(['PF', 'PM']),
  /** From the press until the flap is clean, whatever the autopilot does. */
  goAround: z.enum(['PF', 'PM']),
  goAroundSwitch: z.enum(['PF', 'PM']),
});

const signOff = z.strictObject({
  /** Drafter, reviewer and approver of one issue are this many people. */
  people: z.number().int().min(2).max(3),
  waiverMonths: count,
  answerMonths: count,
  reasonWords: count,
  feedbackDays: count,
  acknowledgedShare: share,
  familiarisationDays: z.number().int().min(0).max(365),
});

export const policySchema = z.strictObject({
  format: z.literal(1),
  operator: z.string().min(1).max(200),
  version: z.string().min(1).max(40),
  owner: z.string().min(1).max(200),
  speeds,
  floors,
  gates,
  climb,
  lists,
  durations,
  panel,
  words: wordsPolicy,
  signOff,
});

export type Policy = z.infer<typeof policySchema>;
export type PolicyProblem = { readonly at: string; readonly message: string };

/** Reads a policy from plain data, as YAML or JSON gives it. Every problem has its place, such as `speeds.bandMinimum`. */
export function readPolicy(data: unknown): Result<Policy, readonly PolicyProblem[]> {
  const parsed = policySchema.safeParse(data);
  if (parsed.success) return ok(parsed.data);
  if (data === null || data === undefined) return err([{ at: '', message: 'the file is empty: a policy is expected' }]);
  return err(parsed.error.issues.map((issue) => ({ at: issue.path.join('.'), message: sentence(issue, 'policy') })));
}

export { defaultPolicy } from './default.ts';
