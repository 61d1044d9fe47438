/**
 * A gate as a number that is nil or more exactly where the gate holds, so that the moment at which it comes true is the root of a
 * function. Comparisons give the difference of their sides in their own unit; what is so or not gives plus or minus one; `and` is
 * the least, `or` the greatest. A value that nobody knows never comes true.
 */
import { never } from '../base/assert.ts';
import { commonReference, sortOf } from '../gate/sort.ts';
import type { AltitudeReference, Gate, NamedAltitude, Term } from '../gate/syntax.ts';
import { FOOT, NAUTICAL_MILE } from '../units/convert.ts';
import type { Now } from './now.ts';
import type { Speeds } from './speeds.ts';
import type { Conditions } from './trace.ts';

export type Margin = (now: Now) => number;
type Value = (now: Now) => number;

export type Frame = {
  readonly speeds: Speeds;
  readonly conditions: Conditions;
  readonly detents: readonly string[];
  /** Words that some step says: what nobody says is taken as heard, so that the flight goes on. */
  readonly spoken: string;
  /** Whether an event or a judgement, by its text, is so. */
  readonly happens: (text: string) => boolean;
  /** `met`: comparisons, trends and counted seconds are taken as holding. */
  readonly figures?: 'met';
};

/** The same gate where every figure is taken as met: below nil, nothing but an event can make it come true. */
export const possible = (frame: Frame, gate: Gate): Margin => marginOf({ ...frame, figures: 'met' }, gate);

/** A rate that is seen to be one, ft/min. */
export const SEEN_RATE = 100;
/** Sides of `=` are one within half a unit: a pilot reads whole knots and feet. */
const ALIKE = 0.5;

const truth = (holds: boolean): number => (holds ? 1 : -1);

export function termValue(frame: Frame, term: Term, reference: AltitudeReference | null): Value {
  const { conditions } = frame;
  switch (term.kind) {
    case 'amount': {
      const number = amount(term);
      // Without its own reference a height takes that of the other side.
      return () => number;
    }
    case 'sum': {
      const left = termValue(frame, term.left, reference);
      const right = termValue(frame, term.right, reference);
      return term.sign === '+' ? (now) => left(now) + right(now) : (now) => left(now) - right(now);
    }
    case 'extreme': {
      const parts = term.of.map((each) => termValue(frame, each, reference));
      const pick = term.which === 'max' ? Math.max : Math.min;
      return (now) => parts.reduce((best, each) => pick(best, each(now)), parts[0]!(now));
    }
    case 'speed': {
      const { name, detent, icing } = term;
      if (detent === 'indicated' || detent === 'selected') {
        const all = frame.detents.map((each) => frame.speeds.of(name, each, icing));
        return detent === 'indicated' ? (now) => all[now.detent]! : (now) => all[now.lever]!;
      }
      const speed = frame.speeds.of(name, detent, icing);
      return () => speed;
    }
    case 'altitude':
      return inReference(altitudeOf(frame, term.name), 'MSL', reference, conditions.elevation);
    case 'target':
      return () => 100;
    case 'measure':
      return measureOf(frame, term, reference);
    default:
      return never(term);
  }
}

function amount(term: Extract<Term, { kind: 'amount' }>): number {
  switch (term.unit) {
    case 'm':
      return term.value / FOOT;
    case 'km':
      return (term.value * 1000) / NAUTICAL_MILE;
    case 'min':
      return term.value * 60;
    case 't':
      return term.value * 1000;
    case 'lb':
      return term.value * 0.45359237;
    default:
      return term.value;
  }
}

/** ft MSL. */
function altitudeOf(frame: Frame, name: NamedAltitude): Value {
  const { conditions } = frame;
  const fixed =
    (value: number): Value =>
    () =>
      value;
  switch (name) {
    case 'acceleration-altitude':
      return fixed(conditions.elevation + conditions.accelerationHeight);
    case 'climb-thrust-altitude':
      return fixed(conditions.elevation + conditions.climbThrustHeight);
    case 'engine-out-acceleration-altitude':
      return fixed(conditions.elevation + conditions.engineOutAccelerationHeight);
    case 'transition-altitude':
    case 'transition-level':
      return fixed(conditions.transitionAltitude);
    case 'minima':
      return fixed(conditions.minima);
    case 'missed-approach-altitude':
      return fixed(conditions.missedApproachAltitude);
    case 'selected-altitude':
      return (now) => now.selectedAltitude;
    default:
      return never(name);
  }
}

/** Above the aerodrome, or above the sea: the setting is the standard one, so that levels are altitudes here. */
function inReference(value: Value, from: 'AAL' | 'MSL', to: AltitudeReference | null, elevation: number): Value {
  const wanted = to === 'AAL' || to === 'radio' ? 'AAL' : 'MSL';
  if (from === wanted) return value;
  return wanted === 'AAL' ? (now) => value(now) - elevation : (now) => value(now) + elevation;
}

function measureOf(frame: Frame, term: Extract<Term, { kind: 'measure' }>, reference: AltitudeReference | null): Value {
  const { elevation, weight } = frame.conditions;
  switch (term.measure) {
    case 'height':
    case 'radio-height':
      return inReference((now) => now.height, 'AAL', reference ?? 'AAL', elevation);
    case 'altitude':
    case 'flight-level':
      return inReference((now) => now.altitude, 'MSL', reference ?? 'MSL', elevation);
    case 'speed':
      return (now) => now.speed;
    case 'target-speed':
      return (now) => now.target;
    case 'mach':
      return (now) => now.mach;
    case 'ground-speed':
      return (now) => now.groundSpeed;
    case 'vertical-speed':
      return (now) => now.verticalSpeed;
    case 'thrust':
      return (now) => now.thrust;
    case 'weight':
      return () => weight;
    case 'temperature':
      return (now) => now.temperature;
    case 'wind':
      return (now) => now.wind;
    case 'distance':
      return (now) => now.toGo;
    case 'bank':
      return (now) => Math.abs(now.bank);
    case 'deviation':
      return () => 0;
    default:
      return never(term.measure);
  }
}

function compare(frame: Frame, left: Term, op: '<' | '<=' | '=' | '>=' | '>', right: Term): Margin {
  const reference = commonReference(left, right);
  const heights = sortOf(left).quantities.includes('height');
  const one = termValue(frame, left, heights ? reference : null);
  const other = termValue(frame, right, heights ? reference : null);
  if (op === '=') return (now) => ALIKE - Math.abs(one(now) - other(now));
  return op === '>=' || op === '>' ? (now) => one(now) - other(now) : (now) => other(now) - one(now);
}

function trend(measure: Extract<Gate, { kind: 'trend' }>['measure'], up: boolean): Margin {
  const way = up ? 1 : -1;
  if (measure === 'height' || measure === 'radio-height' || measure === 'altitude' || measure === 'flight-level') {
    return (now) => way * now.verticalSpeed - SEEN_RATE;
  }
  // What else may rise or fall is not followed: the cue is taken as seen.
  return () => 1;
}

/** Never NaN: what can't be told is a gate that does not hold. */
export function marginOf(frame: Frame, gate: Gate): Margin {
  const inner = rawMargin(frame, gate);
  return (now) => {
    const value = inner(now);
    return Number.isNaN(value) ? -1 : value;
  };
}

const MET: Margin = () => Number.POSITIVE_INFINITY;
const figured = (gate: Gate): boolean =>
  gate.kind === 'compare' ||
  gate.kind === 'window' ||
  gate.kind === 'trend' ||
  (gate.kind === 'after' && gate.delay !== null) ||
  // What is not so may be a figure in part: then it counts as one.
  (gate.kind === 'not' && gate.of.kind !== 'mode' && gate.of.kind !== 'armed' && gate.of.kind !== 'flaps');

function rawMargin(frame: Frame, gate: Gate): Margin {
  if (frame.figures === 'met' && figured(gate)) return MET;
  switch (gate.kind) {
    case 'compare':
      return compare(frame, gate.left, gate.op, gate.right);
    case 'window': {
      const low = compare(frame, gate.what, '>=', gate.low);
      const high = compare(frame, gate.what, '<=', gate.high);
      return (now) => Math.min(low(now), high(now));
    }
    case 'trend':
      return trend(gate.measure, gate.way === 'increasing');
    case 'flaps': {
      const place = frame.detents.indexOf(gate.detent);
      return gate.how === 'selected' ? (now) => truth(now.lever === place) : (now) => truth(now.detent === place);
    }
    case 'gear':
      return gate.how === 'selected'
        ? (now) => truth(now.gearSelected === gate.position)
        : (now) => truth(now.gearIndicated === gate.position);
    case 'mode':
      return (now) => truth(gate.words.includes(now.line[gate.axis]));
    case 'armed':
      return (now) => truth(now.line.armed.includes(gate.word));
    case 'autopilot':
      return (now) => truth(now.autopilot === gate.on);
    case 'heard': {
      const words = gate.words.toLowerCase();
      if (!frame.spoken.includes(words)) return () => 1;
      return (now) => truth(now.said.includes(words));
    }
    case 'event':
    case 'judged': {
      const answer = truth(frame.happens(gate.text));
      return () => answer;
    }
    case 'then':
      // Whether the step before is done is asked by who keeps the order.
      return () => 1;
    case 'after': {
      if (gate.delay === null) return (now) => truth(now.done.has(gate.step));
      return elapsed(frame, gate.step, gate.delay, 1);
    }
    case 'within': {
      const of = rawMargin(frame, gate.of);
      if (gate.step === null || frame.figures === 'met') return of;
      const limit = elapsed(frame, gate.step, gate.limit, -1);
      return (now) => Math.min(of(now), limit(now));
    }
    case 'not': {
      const of = rawMargin(frame, gate.of);
      // At the very edge a gate and its contrary would both hold: the edge belongs to the gate.
      return (now) => -of(now) - Number.MIN_VALUE;
    }
    case 'all': {
      const parts = gate.of.map((each) => rawMargin(frame, each));
      return (now) => {
        let least = Number.POSITIVE_INFINITY;
        for (const each of parts) least = Math.min(least, each(now));
        return least;
      };
    }
    case 'any': {
      const parts = gate.of.map((each) => marginOf(frame, each));
      return (now) => {
        let most = Number.NEGATIVE_INFINITY;
        for (const each of parts) most = Math.max(most, each(now));
        return most;
      };
    }
    default:
      return never(gate);
  }
}

function elapsed(frame: Frame, step: string, limit: Term, sign: 1 | -1): Margin {
  const time = sortOf(limit).quantities.includes('time');
  const much = termValue(frame, limit, null);
  return (now) => {
    const then = now.done.get(step);
    if (then === undefined) return -1;
    return sign * ((time ? now.time - then.time : now.distance - then.distance) - much(now));
  };
}
