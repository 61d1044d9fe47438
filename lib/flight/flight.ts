// One flight under way: its state, its law, its levers, and what is written down of it. Everything here changes while it is flown and
// is thrown away after; nobody outside this folder sees it.

import { GRAVITY } from '../air/atmosphere.ts';
import type { Rating } from '../aircraft/performance.ts';
import type { Sheet } from '../aircraft/sheet.ts';
import type { Policy } from '../policy/policy.ts';
import { parsedCue } from '../procedure/parsed-cue.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { FOOT, NAUTICAL_MILE } from '../units/convert.ts';
import { type Craft, craftOf } from './craft.ts';
import { type Integrator, integrator } from './dormand-prince.ts';
import { GLIDE_SLOPE, type Guidance, guidanceOf, machineOf, type StartLine } from './guidance.ts';
import { type Frame, type Margin, marginOf, termValue } from './margin.ts';
import {
  BANK,
  bendOf,
  calibrated,
  EAST,
  FPM,
  H,
  HEADING,
  impactOf,
  KNOT,
  type Law,
  move,
  NORTH,
  newBalance,
  riseMargin,
  SIZE,
  settleRise,
  T,
  trueOf,
  V,
  W,
  X,
} from './motion.ts';
import { type Now, newNow } from './now.ts';
import { type Script, scriptFor, spokenIn } from './pending.ts';
import { type Log, newLog, newRows, type Rows } from './record.ts';
import type { Settings } from './settings.ts';
import { type Speeds, speedsOf } from './speeds.ts';
import { onPitch, steer, targetOf } from './steer.ts';
import type { Conditions, EndReason, FlightProblem } from './trace.ts';

export type FlightFacts = { readonly sheet: Sheet; readonly policy: Policy };
export type Timer = { readonly time: number; readonly run: () => void };
export type Phase = 'takeOff' | 'engineOut' | 'goAround' | 'finalApproach' | 'elsewhere';

export type Flight = {
  readonly sheet: Sheet;
  readonly policy: Policy;
  readonly conditions: Conditions;
  readonly settings: Settings;
  readonly craft: Craft;
  readonly speeds: Speeds;
  readonly frame: Frame;
  readonly script: Script;
  readonly guidance: Guidance;
  readonly now: Now;
  readonly law: Law;
  readonly one: Integrator;
  readonly log: Log;
  readonly rows: Rows;
  readonly problems: FlightProblem[];
  timers: Timer[];
  /** What only the flight knows beside `now`. */
  selector: number;
  governs: boolean;
  /** The speed selector was turned since thrust came to govern. */
  turned: boolean;
  idleFirst: boolean;
  /** Whether this climb has a speed to reach, and whether it is below it now. */
  accelerates: boolean;
  accelerating: boolean;
  hand: Rating | 'steady' | null;
  brake: boolean;
  /** A level that was pressed and not captured, ft MSL; null: the selected altitude. */
  level: number | null;
  phase: Phase;
  /** VREF of the detent left in a go-around, kt. */
  left: number;
  busyUntil: number;
  movement: number;
  lastEvent: number;
  quietAt: number;
  /** Since when each rule that must hold for a while does. */
  readonly held: Map<number, number>;
  end: { readonly reason: EndReason; readonly says: string } | null;
  /** Fills `now` from a state. */
  readonly look: (time: number, state: Float64Array) => void;
  readonly row: (time: number, state: Float64Array) => void;
  /** Nil or more when the vertical speed begins or ceases to be what is wanted. */
  readonly bend: (state: Float64Array) => number;
  /** Whether the vertical speed follows what is wanted, after an event. */
  readonly follow: () => void;
  /** Change of the true speed now, kt/s. */
  readonly slope: () => number;
};

/** Rates of a bank below and above VMM, °. */
const BANK_FREE = 25;
const RADIAN = Math.PI / 180;

export function begin(
  procedure: Procedure,
  facts: FlightFacts,
  conditions: Conditions,
  settings: Settings,
  line: StartLine,
): Flight | string {
  const { sheet, policy } = facts;
  const machine = machineOf(sheet, conditions.standard);
  if (typeof machine === 'string') return `The mode table of the sheet can't be flown: ${machine}`;
  const craft = craftOf(sheet, conditions.weight, conditions.temperature, settings.factors);
  const speeds = speedsOf(sheet, policy, conditions);
  const frame: Frame = {
    speeds,
    conditions,
    detents: craft.detents,
    spoken: spokenIn(procedure),
    happens: (text) => !settings.denied.includes(text),
  };
  const takeOff = procedure.phases.includes('take-off');
  const script = scriptFor(procedure, sheet.modes, frame, !takeOff, settings);
  const guidance = guidanceOf(machine, sheet, conditions, speeds, {
    without: settings.without,
    start: line,
  });

  const { start } = settings;
  const now = newNow(guidance.line);
  const detent = craft.detents.indexOf(start.detent === '' ? conditions.detent : start.detent);
  if (detent < 0) return `The sheet has no detent ${start.detent || conditions.detent}.`;
  now.detent = detent;
  now.lever = detent;
  now.gearSelected = start.gear;
  now.gearIndicated = start.gear;
  now.selectedAltitude = conditions.selectedAltitude;
  const height = start.height ?? conditions.finalApproachFix - conditions.elevation;
  const speed = speedOf(frame, start.speed, now);
  if (!(speed > 0)) return `The speed at the start can't be told: ${start.speed}`;
  const selector = start.selector === '' ? speed : speedOf(frame, start.selector, now);

  const law: Law = {
    path: 'rate',
    target: 0,
    rate: 0,
    altitude: conditions.selectedAltitude * FOOT,
    slope: GLIDE_SLOPE,
    share: 0.35,
    least: 500 * FPM,
    load: settings.loadFactor * GRAVITY,
    slew: 0,
    capture: sheet.guidance.captureAcceleration.value * GRAVITY,
    thrust: 'rating',
    rating: 'take-off',
    limit: 'climb',
    up: settings.spool ? sheet.thrust.spool.up.value : 0,
    down: settings.spool ? sheet.thrust.spool.down.value : 0,
    running: craft.engines - conditions.enginesOut,
    zero: 0,
    induced: 0,
    turning: false,
    heading: conditions.track * RADIAN,
    bankLimit: BANK_FREE * RADIAN,
    wind: conditions.wind * KNOT,
    shear: (conditions.windGradient * KNOT) / (1000 * FOOT),
    elevation: conditions.elevation * FOOT,
    track: conditions.track * RADIAN,
    trackSine: Math.sin(conditions.track * RADIAN),
    trackCosine: Math.cos(conditions.track * RADIAN),
  };
  const balance = newBalance();
  const scratch = new Float64Array(SIZE);
  const one = integrator(SIZE, (_, y, into) => move(craft, law, y, balance, into), {
    relative: settings.tolerance,
    // m, m/s, m/s, N, m, rad, rad, m, m: a thousand times finer than what is shown.
    absolute: Float64Array.from([1, 0.1, 0.1, 100, 10, 0.01, 0.01, 10, 10], (unit) => unit * settings.tolerance * 10),
    most: 4,
    least: 1e-4,
  });
  const log = newLog();
  const rows = newRows();
  // On a glide path the runway end lies where the path leads.
  const onPath = guidance.line.vertical === 'GLIDE' ? ((height - 50) * FOOT) / GLIDE_SLOPE / NAUTICAL_MILE : null;
  const ends = start.toGo ?? onPath;

  const look = (time: number, y: Float64Array): void => {
    move(craft, law, y, balance, null);
    now.time = time;
    now.altitude = y[H]! / FOOT;
    now.height = now.altitude - conditions.elevation;
    now.speed = calibrated(y[V]!, balance.air) / KNOT;
    now.trueSpeed = y[V]! / KNOT;
    now.groundSpeed = balance.groundSpeed / KNOT;
    now.delta = balance.air.delta;
    now.mach = y[V]! / balance.air.sound;
    // Where the vertical speed is what is wanted, the state has it from here.
    y[W] = balance.rise;
    now.verticalSpeed = balance.rise / FPM;
    now.thrust = (100 * balance.thrust) / craft.thrust(balance.air, y[V]!, y[H]!, 'take-off', law.running);
    now.bank = y[BANK]! / RADIAN;
    now.distance = y[X]! / NAUTICAL_MILE;
    now.toGo = ends === null ? Number.NaN : ends - now.distance;
    now.wind = conditions.wind + (conditions.windGradient * now.height) / 1000;
    now.temperature = 15 - 0.0065 * y[H]! + conditions.temperature;
  };

  const flight: Flight = {
    sheet,
    policy,
    conditions,
    settings,
    craft,
    speeds,
    frame,
    script,
    guidance,
    now,
    law,
    one,
    log,
    rows,
    problems: [],
    timers: [],
    selector,
    governs: true,
    turned: false,
    idleFirst: false,
    accelerates: false,
    accelerating: false,
    hand: null,
    brake: false,
    level: guidance.line.vertical === 'LEVEL' ? height + conditions.elevation : null,
    phase: takeOff ? (conditions.enginesOut > 0 ? 'engineOut' : 'takeOff') : 'elsewhere',
    left: 0,
    busyUntil: Number.NEGATIVE_INFINITY,
    movement: 0,
    lastEvent: 0,
    quietAt: Number.POSITIVE_INFINITY,
    held: new Map(),
    bend: (y) => riseMargin(craft, law, y, balance),
    follow: () => settleRise(craft, law, one.state, balance),
    slope() {
      move(craft, law, one.state, balance, scratch);
      return scratch[V]! / KNOT;
    },
    end: null,
    look,
    row(time, y) {
      look(time, y);
      const bend = bendOf(craft, law, y, balance);
      rows.add((set) => {
        set('time', time);
        set('height', now.height);
        set('altitude', now.altitude);
        set('speed', now.speed);
        set('trueSpeed', now.trueSpeed);
        set('groundSpeed', now.groundSpeed);
        set('mach', now.mach);
        set('distance', now.distance);
        set('verticalSpeed', now.verticalSpeed);
        set('path', Math.asin(balance.rise / y[V]!) / RADIAN);
        set('thrust', now.thrust);
        set('detent', now.detent);
        set('lever', now.lever);
        set('gear', now.gearIndicated === null ? 0.5 : now.gearIndicated === 'down' ? 1 : 0);
        set('loadFactor', (1 + bend / GRAVITY) * balance.lift);
        set('bank', now.bank);
        set('heading', (((y[HEADING]! / RADIAN) % 360) + 360) % 360);
        set('east', y[EAST]! / NAUTICAL_MILE);
        set('north', y[NORTH]! / NAUTICAL_MILE);
        set('target', now.target);
        set('vmm', speeds.vmm[now.detent]!);
        set('floor', floorOf(flight));
        set('ceiling', ceilingOf(flight));
        set('excess', y[V]! * balance.excess);
        set('energy', y[H]! + y[V]! ** 2 / (2 * GRAVITY));
      });
    },
  };

  const y = one.state;
  y[H] = (height + conditions.elevation) * FOOT;
  craft.airAt(y[H]!, balance.air);
  y[V] = trueOf(impactOf(speed), balance.air);
  y[HEADING] = law.heading;
  const ground = y[V]! - law.wind - law.shear * height * FOOT;
  y[W] = start.verticalSpeed === 'glide' ? -ground * GLIDE_SLOPE : start.verticalSpeed * FPM;
  law.rate = y[W]!;
  flight.idleFirst = settings.govern === 'idle first' && guidance.line.thrust === 'GOVERN';
  now.speed = speed;
  now.target = selector;
  retarget(flight);
  apply(flight);
  const idle = craft.thrust(balance.air, y[V]!, y[H]!, 'idle', law.running);
  if (start.timesIdle !== null) y[T] = idle * start.timesIdle;
  else {
    const { up } = law;
    law.up = 0;
    move(craft, law, y, balance, null);
    y[T] = balance.thrust;
    law.up = up;
  }
  settleRise(craft, law, y, balance);
  one.restart(0);
  return flight;
}

/** A speed written in gate notation, kt; NaN where it can't be told. */
export function speedOf(frame: Frame, text: string, now: Now): number {
  const { gate } = parsedCue(`speed = ${text}`);
  return gate?.kind === 'compare' ? termValue(frame, gate.right, null)(now) : Number.NaN;
}

export function gateOf(flight: Flight, text: string): Margin | null {
  const { gate } = parsedCue(text);
  return gate === null ? null : marginOf(flight.frame, gate);
}

/** Least of VFE indicated, VLE with gear not up, VMO and MMO, kt. */
export function ceilingOf({ speeds, now }: Flight): number {
  const limit = Math.min(speeds.vfe[now.detent]!, speeds.aircraft(now.delta));
  return now.gearIndicated === 'up' ? limit : Math.min(limit, speeds.gear(now.delta));
}

/** The lowest speed of the phase, kt, as the policy has it. */
export function floorOf(flight: Flight): number {
  const { speeds, now, policy, phase } = flight;
  const name = flight.craft.detents[now.detent]!;
  switch (phase) {
    case 'takeOff':
      return speeds.of('V2', null) + policy.floors.takeOff.plus;
    case 'engineOut':
      return speeds.of('V2', null) + policy.floors.engineOut.plus;
    case 'goAround':
      return flight.left + policy.floors.goAroundFirstRetraction.plus;
    case 'finalApproach':
      return speeds.of('VREF', name) + policy.floors.finalApproach.plus;
    case 'elsewhere':
      return speeds.vmm[now.detent]! + policy.floors.elsewhere.plus;
  }
}

/** Sets the law from what hands and guidance have set. */
export function apply(flight: Flight): void {
  const { law, craft, now, settings, guidance, conditions } = flight;
  const drawn = settings.flap === 'as indicated' ? now.detent : now.lever;
  law.zero = craft.zeroLift(drawn, now.gearIndicated !== 'up', flight.brake, conditions.enginesOut);
  law.induced = craft.inducedOf(drawn);
  const level = guidance.line.vertical === 'LEVEL' ? flight.level : null;
  law.altitude = (level ?? now.selectedAltitude) * FOOT;
  law.target = now.target * KNOT;
  steer(law, guidance.line, {
    hand: flight.hand,
    governs: flight.governs,
    turned: flight.turned,
    idleFirst: flight.idleFirst,
    accelerating: flight.accelerating,
    settings,
  });
}

/** The speed target after a change of the line or the selector. */
export function retarget(flight: Flight): void {
  const { guidance, now, settings, sheet, speeds, conditions } = flight;
  const before = now.target;
  now.target = targetOf(sheet, speeds, settings, conditions, guidance.line, {
    speed: now.speed,
    selector: flight.selector,
    kept: before,
  });
  if (guidance.line.vertical === 'ASCENT') speedUp(flight);
  if (!onPitch(guidance.line.vertical)) flight.accelerating = false;
}

/** A target well above the speed makes a climb accelerate; one that is nearly there is held on pitch from the start. */
const WELL_ABOVE = 10;
export function speedUp(flight: Flight): void {
  flight.accelerates = flight.now.target > flight.now.speed + WELL_ABOVE;
  flight.accelerating = flight.accelerates;
}

/** A timer among the others, by time; of one time in the order in which they were set. */
export function after(flight: Flight, seconds: number, run: () => void): void {
  const time = flight.now.time + seconds;
  const at = flight.timers.findIndex((timer) => timer.time > time);
  flight.timers.splice(at < 0 ? flight.timers.length : at, 0, { time, run });
}
