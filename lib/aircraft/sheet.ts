/**
 * The type data sheet: all that the house knows of an aircraft, as data with a source for every figure. This folder reads
 * sheets and answers questions about them. It knows no procedure, no policy and no operator.
 */
import { z } from 'zod';
import { err, ok, type Result } from '../base/result.ts';
import { sentence } from '../base/sentence.ts';
import { modeSet } from './mode-set.ts';
import { referenceProblems } from './references.ts';
import { figure, GAP, quantity, rule, sourceReference } from './value.ts';

const name = z.string().min(1).max(60);
const kt = quantity('kt');
const ft = quantity('ft');
const seconds = quantity('s');
const kg = quantity('kg');
const one = quantity('1');

const weights = z.strictObject({
  maximumTakeOff: kg,
  maximumLanding: kg,
  maximumZeroFuel: kg,
  empty: kg,
  minimumFlight: kg,
  fuelCapacity: kg,
});

const gear = z.strictObject({
  vloExtend: kt,
  vloRetract: kt,
  vle: kt,
  mle: quantity('M'),
  extend: seconds,
  retract: seconds,
});

const range = (unit: string) =>
  z
    .strictObject({
      from: figure,
      to: figure,
      unit: z.literal(unit, { error: `the unit is ${unit} here` }),
      source: sourceReference,
    })
    .refine((value) => value.from <= value.to, { error: 'a range begins at its lower end' });

const limits = z.strictObject({
  vmo: kt,
  mmo: quantity('M'),
  maximumAltitude: ft,
  vmcg: kt,
  v1Floor: kt,
  vmca: kt,
  gear,
  flapAltitude: ft,
  elevation: range('ft'),
  /** From standard, °C. */
  temperature: range('°C'),
  /** Along the runway, head wind positive. */
  wind: range('kt'),
  crosswind: kt,
  takeOffThrustTime: seconds,
  /** Lowest use of the autopilot: after take-off and on approach AAL, on the glide path by radio height. */
  autopilot: z.strictObject({ takeOff: ft, glide: ft, otherwise: ft }),
});

const detent = z.strictObject({
  name,
  slat: name,
  use: z.array(z.enum(['clean', 'take-off', 'approach', 'go-around', 'landing', 'hold'])).min(1),
  /** Limit of this detent; null where the limit of the aircraft holds. */
  vfe: kt.nullable(),
  clMax: one.nullable(),
  drag: z.strictObject({ cd0: figure, k: figure, source: sourceReference }),
  /** Time to the next detent, s; null for the last one. */
  transitToNext: seconds.nullable(),
});

const speedRule = z.strictObject({
  name: z.enum(['VSR', 'VMM', 'V1', 'VR', 'V2', 'VREF']),
  /** Only for V1: the runway it belongs to. */
  runway: z.enum(['dry', 'wet']).optional(),
  detents: z.array(name).min(1),
  /** kt, of `weight` in kg. */
  rule,
  /** Added when the icing setting is on, kt. */
  icing: kt.optional(),
  source: sourceReference,
});

const drag = z.strictObject({
  wingArea: quantity('m²'),
  span: quantity('m'),
  cd0: one,
  gear: one,
  engineOut: one,
  speedbrake: one,
  wave: z.strictObject({ factor: figure, fromMach: figure, source: sourceReference }),
});

const thrust = z.strictObject({
  engines: z.number().int().min(1).max(4),
  static: quantity('N'),
  densityPower: one,
  /** Ascending powers of Mach. */
  mach: z.strictObject({ polynomial: z.array(figure).min(1).max(6), source: sourceReference }),
  flatRatedTo: quantity('°C'),
  lossPerDegree: one,
  climbRating: z.strictObject({
    kind: z.literal('table'),
    by: z.literal('altitude'),
    unit: z.literal('ft'),
    at: z.array(figure).min(2),
    gives: z.array(figure).min(2),
    beyond: z.literal('constant'),
    source: sourceReference,
  }),
  maximumContinuous: one,
  goAround: one,
  idle: z.strictObject({ fraction: figure, perMach: figure, source: sourceReference }),
  spool: z.strictObject({ idleToGoAround: seconds, up: seconds, down: seconds }),
});

const fuel = z.strictObject({ perNewtonHour: quantity('kg/(N·h)'), idle: quantity('kg/h') });

const observable = z.strictObject({
  name,
  kind: z.enum(['display', 'light', 'position', 'sound', 'outside', 'feel']),
  source: sourceReference,
});
const panelObject = z.strictObject({
  name,
  kind: z.enum(['lever', 'selector', 'button', 'switch', 'display', 'page', 'control', 'list']),
  /** One for both pilots, or one each side. */
  shared: z.boolean(),
  /** The mode word that stands on it. */
  mode: z.string().optional(),
  source: sourceReference,
});
const retraction = z.strictObject({ from: name, to: name, phases: z.array(name).min(1), source: sourceReference });
const protection = z.strictObject({
  name,
  acts: z.string().min(1),
  rule: z.string().optional(),
  source: sourceReference,
});
const callout = z.strictObject({ words: z.string().min(1), when: z.string().min(1), source: sourceReference });
const alert = z.strictObject({
  name,
  level: z.enum(['warning', 'caution', 'advisory']),
  words: z.string(),
  source: sourceReference,
});
const runwayState = z.strictObject({
  code: z.number().int().min(0).max(6),
  surface: z.string().min(1),
  crosswind: figure,
  tailwind: figure,
  landingFactor: figure,
  reverseCredit: z.boolean(),
  autobrake: z.string().min(1),
  source: sourceReference,
});
const option = z.strictObject({
  id: name,
  name: z.string().min(1),
  values: z.array(name).min(1),
  source: sourceReference,
});
const constant = z.strictObject({ value: figure, unit: z.string().min(1), source: sourceReference });
const document = z.strictObject({ title: z.string().min(1), seen: z.boolean() });

export const sheetSchema = z.strictObject({
  format: z.literal(1, { error: 'format: 1 is expected at the head of a sheet' }),
  type: name,
  name,
  revision: name,
  note: z.string(),
  documents: z.record(z.string().regex(/^\S+$/), document),
  weights,
  limits,
  drag,
  thrust,
  fuel,
  detents: z.array(detent).min(2).max(20),
  retractions: z.array(retraction),
  constants: z.record(z.string().regex(/^[a-z]\w*$/i), constant),
  speeds: z.array(speedRule).min(1),
  guidance: z.strictObject({
    captureAcceleration: quantity('g'),
    goAroundSwitch: z.strictObject({ deadFrom: z.string().min(1), aliveAt: ft }),
    routeCapture: z.strictObject({
      lowest: ft,
      closing: quantity('°'),
      divisor: one,
      least: quantity('NM'),
      most: quantity('NM'),
    }),
    /** Reversions, kt beside the limit, held for so long. */
    lowSpeed: z.strictObject({ below: kt, held: seconds, target: kt, rule: name }),
    highSpeed: z.strictObject({ above: kt, held: seconds, target: kt, rule: name }),
    /** Target of the first climb above V2, and of a go-around at most above VREF. */
    departTarget: kt,
    liftTargetMost: kt,
    accelerationTarget: kt,
  }),
  modes: modeSet,
  indications: z.array(observable).min(1),
  panel: z.array(panelObject).min(1),
  protections: z.array(protection),
  callouts: z.array(callout),
  alerts: z.array(alert),
  runwayStates: z.array(runwayState),
  options: z.array(option),
});

export type Sheet = z.infer<typeof sheetSchema>;
export type Detent = Sheet['detents'][number];
export type SpeedRule = Sheet['speeds'][number];

/** `at`: the place in the file, such as `detents.2.vfe`; '' for the file itself. */
export type SheetProblem = { readonly at: string; readonly message: string };

/** Reads a sheet from plain data, as YAML or JSON gives it. Never throws on what a person wrote. */
export function readSheet(data: unknown): Result<Sheet, readonly SheetProblem[]> {
  if (data === null || data === undefined || data === '')
    return err([{ at: '', message: 'the file is empty: a type data sheet is expected' }]);
  const parsed = sheetSchema.safeParse(data);
  if (!parsed.success) {
    return err(parsed.error.issues.map((issue) => ({ at: issue.path.join('.'), message: sentenceAbout(issue, data) })));
  }
  const problems = referenceProblems(parsed.data);
  return problems.length > 0 ? err(problems) : ok(parsed.data);
}

/** A gap is named by the point where it is, which stands beside the values and not in them. */
function sentenceAbout(issue: z.core.$ZodIssue, data: unknown): string {
  const said = sentence(issue, 'type data sheet');
  if (said !== GAP) return said;
  const table = issue.path.slice(0, issue.path.lastIndexOf('gives'));
  const rule = table.reduce<unknown>((value, key) => (value as Record<PropertyKey, unknown>)[key], data) as TableShape;
  const points = rule.kind === 'table2' ? rule.across : rule.at;
  return `${GAP} at ${points?.[Number(issue.path[issue.path.length - 1])] ?? 'its end'}`;
}
type TableShape = { readonly kind: string; readonly at?: readonly unknown[]; readonly across?: readonly unknown[] };
