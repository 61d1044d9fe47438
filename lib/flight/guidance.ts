// The mode table as it is flown: one state of the machine, the hands and thresholds that raise its rules, and the line it shows.
// Which of several outcomes comes is told by the flight: where the selected altitude lies, and which way the aircraft moves.
import type { Sheet } from '../aircraft/sheet.ts';
import { compile, type Machine, outcomesOf } from '../mode/compile.ts';
import { bitsOf, lineOf, read, write } from '../mode/layout.ts';
import { FOOT, NAUTICAL_MILE } from '../units/convert.ts';
import type { Margin } from './margin.ts';
import { FPM } from './motion.ts';
import type { Now } from './now.ts';
import type { Speeds } from './speeds.ts';
import type { Conditions, ModeLine } from './trace.ts';

export type Raised = {
  readonly rule: string;
  readonly who: 'crew' | 'automatic' | 'environment';
  readonly event: string;
};
type Automatic = { readonly rule: number; readonly margin: Margin; readonly held: number };

export type Guidance = {
  line: ModeLine;
  /** Rules that thresholds raise, in the order of the sheet; `held`: for so many seconds. */
  readonly automatic: readonly Automatic[];
  /** Events of automatic rules that this flight never raises, in the words of the sheet. */
  readonly silent: readonly string[];
  /** Whether the rule would change the line now. */
  readonly ready: (rule: number, now: Now) => boolean;
  /** Whether its guard holds now. */
  readonly guarded: (rule: number) => boolean;
  /** Raises it; null where it changes nothing. */
  readonly raise: (rule: number, now: Now) => Raised | null;
  /** The place of a rule by its id; -1 when the table has none. */
  readonly place: (id: string) => number;
};

const machines = new WeakMap<Sheet, Map<string, Machine | string>>();

/** The machine of a standard, or the sentence that says why the table can't be used. */
export function machineOf(sheet: Sheet, standard: string): Machine | string {
  const kept = machines.get(sheet) ?? new Map<string, Machine | string>();
  machines.set(sheet, kept);
  const known = kept.get(standard);
  if (known !== undefined) return known;
  const made = compile(sheet.modes, standard);
  const value = made.ok ? made.value : made.error.map((one) => `${one.at}: ${one.because}`).join('; ');
  kept.set(standard, value);
  return value;
}

const WHO = { crew: 'crew', auto: 'automatic', environment: 'environment' } as const;
/** A glide path ends so high above the runway end, ft; its angle. */
const THRESHOLD = 50;
export const GLIDE_SLOPE = Math.tan((3 * Math.PI) / 180);
/** A capture wants at least this rate: 2 m/s. */
const CAPTURE_RATE = 2 / FPM;

/** Margins of the thresholds, by the words in which the sheet names the event. */
function thresholds(
  sheet: Sheet,
  conditions: Conditions,
  speeds: Speeds,
): Readonly<Record<string, { readonly margin: Margin; readonly held?: number }>> {
  const { lowSpeed, highSpeed, routeCapture, captureAcceleration } = sheet.guidance;
  // (ft/min)² / divisor = ft: the height in which a rate comes to nil.
  const divisor = (2 * captureAcceleration.value * 9.80665 * FOOT) / FPM ** 2;
  const above = (now: Now): number => now.selectedAltitude - now.altitude;
  return {
    'climb-thrust altitude': { margin: (now) => now.height - conditions.climbThrustHeight },
    'acceleration altitude': { margin: (now) => now.height - conditions.accelerationHeight },
    'route capture': { margin: (now) => now.height - routeCapture.lowest.value },
    'course intercept': { margin: () => 1 },
    'glidepath intercept': {
      margin: (now) => {
        const path = THRESHOLD + (now.toGo * NAUTICAL_MILE * GLIDE_SLOPE) / FOOT;
        return Number.isNaN(path) ? 1 : now.height - path;
      },
    },
    '50 ft': { margin: (now) => 50 - now.height },
    'lateral leaves ROUTE': { margin: () => 1 },
    'inside capture window with ALT armed': {
      margin: (now) => {
        const way = Math.sign(above(now));
        const window = now.verticalSpeed ** 2 / divisor - Math.abs(above(now));
        return Math.min(window, way * now.verticalSpeed - CAPTURE_RATE);
      },
    },
    'within 20 ft': { margin: (now) => 20 - Math.abs(above(now)) },
    'aircraft passes selected altitude un-armed': {
      margin: (now) => (now.verticalSpeed > 0 ? -above(now) : above(now)) - Number.MIN_VALUE,
    },
    'speed below VMM - 6 kt for 2 s': {
      margin: (now) => speeds.vmm[now.detent]! - lowSpeed.below.value - now.speed,
      held: lowSpeed.held.value,
    },
    'speed above limit + 3 kt for 2 s': {
      margin: (now) => now.speed - speeds.vfe[now.detent]! - highSpeed.above.value,
      held: highSpeed.held.value,
    },
  };
}

export type StartLine = {
  readonly thrust: string;
  readonly lateral: string;
  readonly vertical: string;
  readonly armed: readonly string[];
  readonly phase: string;
  readonly rel: string;
};

export function guidanceOf(
  machine: Machine,
  sheet: Sheet,
  conditions: Conditions,
  speeds: Speeds,
  options: { readonly without: readonly string[]; readonly start: StartLine },
): Guidance {
  const { modes, layout } = machine;
  const known = thresholds(sheet, conditions, speeds);
  const automatic: Automatic[] = [];
  const silent: string[] = [];
  for (const [rule, { who, event, id }] of machine.rules.entries()) {
    const found = known[event];
    if (who === 'crew') continue;
    if (found !== undefined && !options.without.includes(event)) {
      automatic.push({ rule, margin: found.margin, held: found.held ?? 0 });
    } else silent.push(`${id}, ${event}`);
  }

  const place = (axis: 'thrust' | 'lateral' | 'vertical' | 'phase', word: string): number =>
    Math.max(0, modes[axis].indexOf(word));
  let state = 0;
  for (const axis of ['thrust', 'lateral', 'vertical', 'phase'] as const) {
    state = write(layout[axis], state, place(axis, options.start[axis]));
  }
  state = write(layout.rel, state, Math.max(0, modes.rel.indexOf(options.start.rel)));
  state = write(layout.armedVertical, state, bitsOf(layout.armedVertical, options.start.armed));
  state = write(layout.armedLateral, state, bitsOf(layout.armedLateral, options.start.armed));

  const shown = (): ModeLine => {
    const { thrust, lateral, vertical, armed } = lineOf(layout, state);
    return { thrust, lateral, vertical, armed };
  };
  const into: number[] = [];
  const next = (rule: number, now: Now): number => {
    const ends = outcomesOf(machine, rule, state, into);
    if (ends.length === 0) return state;
    const before = read(layout.rel, state);
    const near = modes.rel.indexOf('near');
    const side = modes.rel.indexOf(now.selectedAltitude > now.altitude ? 'above' : 'below');
    const way = now.verticalSpeed >= 0 ? modes.climbing : modes.descending;
    // A turn of the selector ends where the aircraft is not: that outcome belongs to another figure.
    const fitting = ends.filter((end) => [before, near, side].includes(read(layout.rel, end)));
    const sided = fitting.filter((end) => read(layout.rel, end) === side);
    const moving = sided.filter((end) => way.includes(modes.vertical[read(layout.vertical, end)]!));
    return moving[0] ?? sided[0] ?? fitting[0] ?? state;
  };

  const self: Guidance = {
    line: shown(),
    automatic,
    silent,
    ready: (rule, now) => {
      const end = next(rule, now);
      return end !== state;
    },
    guarded: (rule) => outcomesOf(machine, rule, state, into).length > 0,
    raise(rule, now) {
      const end = next(rule, now);
      if (end === state) return null;
      state = end;
      self.line = shown();
      const { id, who, event } = machine.rules[rule]!;
      return { rule: id, who: WHO[who], event };
    },
    place: (id) => machine.rules.findIndex((rule) => rule.id === id),
  };
  return self;
}
