// Flies a procedure: integrates between two events, finds each event by the root of its margin, lets hands and guidance act, and
// goes on under the law that then holds. What can't be flown is refused in a sentence; what was flown up to there is kept.
import type { Procedure } from '../procedure/procedure.ts';
import { cueCame, due, mayCome, raise } from './act.ts';
import { after, apply, begin, ceilingOf, type Flight, type FlightFacts, floorOf, gateOf } from './flight.ts';
import type { Margin } from './margin.ts';
import { SIZE, V } from './motion.ts';
import { counting, entered } from './pending.ts';
import type { Settings } from './settings.ts';
import { refusal, startLine } from './start.ts';
import { refusedTrace, traceOf } from './told.ts';
import type { Conditions, EndReason, Trace } from './trace.ts';

/** A moment is found to this, s: the millisecond that is promised, halved. */
const MOMENT = 5e-4;
/** So many changes at one moment are a circle. */
const MOST_CHANGES = 300;
/** s without an event after which a steady flight is over. */
const QUIET = 60;
/** Less than this is level, ft/min. */
const LEVEL = 50;
/** A bound counts as passed by this, kt: speeds are read in whole knots, and a speed may be flown on its bound. */
const SEEN = 0.5;
/** The guidance looks ten times a second whether a climb has come to its target speed: on average it sees it so late, s. */
const NOTICES = 0.05;

type Watch = { readonly margin: Margin; readonly act: () => void };

/** Never throws on what a person wrote. */
export function flyProcedure(
  procedure: Procedure,
  facts: FlightFacts,
  conditions: Conditions,
  settings: Settings,
): Trace {
  const refused = refusal(procedure, facts, conditions);
  if (refused !== null) return refusedTrace(procedure, facts, conditions, settings, refused);
  const flight = begin(procedure, facts, conditions, settings, startLine(procedure, facts.sheet, conditions, settings));
  if (typeof flight === 'string') return refusedTrace(procedure, facts, conditions, settings, flight);
  run(flight);
  return traceOf(flight);
}

function run(flight: Flight): void {
  const { one, settings, now, log } = flight;
  const inside = new Float64Array(SIZE);
  const watches: Watch[] = standing(flight);
  let sampled = 0;
  flight.look(0, one.state);
  log.lines.push({ from: 0, line: now.line });
  log.note(now, 'start', 'the flight begins', { line: now.line });
  flight.law.slew = 1;
  let live = settle(flight, watches);
  flight.follow();
  if (settings.sampling > 0) flight.row(0, one.state);
  one.restart(0);

  while (flight.end === null) {
    const until = Math.min(flight.timers[0]?.time ?? Number.POSITIVE_INFINITY, flight.quietAt, settings.longest);
    const from = one.time;
    if (until > from) one.step(until);
    let time = one.time;
    flight.look(time, one.state);
    const triggered = live.filter((watch) => watch.margin(now) >= 0);
    const bends = flight.bend(one.state) >= 0;
    const found = bends || triggered.length > 0;
    if (found && time > from) time = root(flight, triggered, bends, from, time, inside);
    if (settings.sampling > 0) {
      for (; (sampled + 1) * settings.sampling < time; ) {
        sampled += 1;
        one.at(sampled * settings.sampling, inside);
        flight.row(sampled * settings.sampling, inside);
      }
    }
    const moved = time < one.time;
    if (moved) {
      one.at(time, inside);
      one.state.set(inside);
    }
    const timers = flight.timers[0] !== undefined && flight.timers[0].time <= time;
    if (found || timers) {
      one.time = time;
      flight.look(time, one.state);
      // The vertical speed that is there stays through whatever happens now; where it goes is asked again after.
      flight.law.slew = 1;
      while (flight.timers[0] !== undefined && flight.timers[0].time <= time) {
        flight.timers.shift()!.run();
        apply(flight);
      }
      live = settle(flight, watches);
      flight.follow();
      flight.look(time, one.state);
      one.restart(time);
      if (settings.sampling > 0) flight.row(time, one.state);
    }
    if (one.time >= flight.quietAt) steady(flight);
    if (!Number.isFinite(one.state[V]!)) close(flight, 'limit', 'The figures went beyond what the model can follow.');
    if (one.time >= settings.longest) {
      close(flight, 'time', `The flight did not end within ${Math.round(settings.longest)} s.`);
    }
  }
  if (settings.sampling > 0) flight.row(one.time, one.state);
}

function close(flight: Flight, reason: EndReason, says: string): void {
  if (flight.end !== null) return;
  flight.end = { reason, says };
  flight.log.note(flight.now, 'end', says);
  if (reason === 'time' || reason === 'limit') {
    flight.problems.push({ time: flight.now.time, step: null, says });
  }
}

/**
 * The first moment in the last step at which one of these is due: the root of the greatest margin, by the Illinois rule.
 * `bends`: the vertical speed begins or ceases to be what is wanted is among them.
 */
function root(
  flight: Flight,
  triggered: readonly Watch[],
  bends: boolean,
  from: number,
  to: number,
  inside: Float64Array,
): number {
  const { one, now } = flight;
  const at = (time: number): number => {
    one.at(time, inside);
    flight.look(time, inside);
    let most = bends ? flight.bend(inside) : Number.NEGATIVE_INFINITY;
    for (const { margin } of triggered) most = Math.max(most, margin(now));
    return most;
  };
  let [low, high] = [from, to];
  let below = at(low);
  if (below >= 0) return Math.min(low + MOMENT, to);
  let above = at(high);
  if (above < 0) return high;
  let side = 0;
  for (let n = 0; high - low > MOMENT && n < 60; n++) {
    let middle = (low * above - high * below) / (above - below);
    // Where a margin jumps the chord is of no use.
    if (!(middle > low && middle < high) || n % 4 === 3) middle = (low + high) / 2;
    const value = at(middle);
    if (value >= 0) {
      high = middle;
      above = value;
      if (side === 1) below /= 2;
      side = 1;
    } else {
      low = middle;
      below = value;
      if (side === -1) above /= 2;
      side = -1;
    }
  }
  return high;
}

/** What is watched for beside steps and rules, whatever the line shows. */
function standing(flight: Flight): Watch[] {
  const { now, settings, speeds, sheet, craft } = flight;
  const watches: Watch[] = [];
  const end = settings.end === '' ? null : gateOf(flight, settings.end);
  if (end !== null) watches.push({ margin: end, act: () => close(flight, 'reached', settings.end) });
  for (const [name, text] of Object.entries(settings.marks)) {
    const gate = gateOf(flight, text);
    let seen = false;
    if (gate === null) continue;
    watches.push({
      margin: (at) => (seen ? -1 : gate(at)),
      act: () => {
        seen = true;
        flight.log.note(now, 'mark', name);
      },
    });
  }
  watches.push({
    margin: (at) => (at.verticalSpeed < 0 ? -at.height : -1),
    act: () => close(flight, 'ground', 'The ground is reached; flare and roll are not flown.'),
  });
  watches.push({
    margin: (at) => at.altitude - sheet.limits.maximumAltitude.value,
    act: () => close(flight, 'limit', 'The aircraft is above its highest altitude.'),
  });
  const stall = craft.detents.map((name) => speeds.of('VSR', name));
  watches.push({
    margin: (at) => stall[at.detent]! - at.speed,
    act: () => close(flight, 'limit', 'The speed is at the stall of the flap indicated; the model flies no further.'),
  });
  let noticed = true;
  watches.push({
    // Below its target a climb accelerates, at it and above it holds: as often as the speed crosses it.
    margin: (at) => {
      if (at.line.vertical !== 'ASCENT' || !flight.accelerates || !noticed) return -1;
      return flight.accelerating ? at.speed - at.target : at.target - at.speed - 1e-6;
    },
    act: () => {
      noticed = false;
      after(flight, NOTICES, () => {
        noticed = true;
        flight.accelerating = now.speed < now.target;
      });
    },
  });
  watches.push({
    margin: (at) => (flight.idleFirst ? at.target + 0.5 - at.speed : -1),
    act: () => void (flight.idleFirst = false),
  });
  watches.push(...bounds(flight));
  return watches;
}

/** The band: its ceiling and its floor, each noted when passed and when kept again. */
function bounds(flight: Flight): Watch[] {
  const { now, law } = flight;
  let [high, low] = [false, false];
  const ceiling = (): number => ceilingOf(flight);
  const slow = (): number => flight.speeds.vmm[now.detent]! - now.speed;
  const half = (): void => {
    law.bankLimit = ((slow() > 0 ? flight.policy.speeds.bankBelowVmm : 25) * Math.PI) / 180;
  };
  half();
  let below = slow() > 0;
  return [
    {
      margin: (at) => (high ? ceiling() - at.speed : at.speed - ceiling() - SEEN),
      act: () => {
        high = !high;
        flight.log.note(now, 'limit', `${high ? 'above' : 'back below'} the limit of ${Math.round(ceiling())} kt`);
      },
    },
    {
      margin: (at) => (low ? at.speed - floorOf(flight) : floorOf(flight) - at.speed - SEEN),
      act: () => {
        low = !low;
        flight.log.note(
          now,
          'limit',
          `${low ? 'below' : 'back above'} the lowest speed of ${Math.round(floorOf(flight))} kt`,
        );
      },
    },
    {
      margin: () => (below ? -slow() - 1e-6 : slow() - 1e-6),
      act: () => {
        below = !below;
        half();
      },
    },
  ];
}

/** Lets everything act that is due now, one after the other, until nothing is; gives what is watched for from here on. */
function settle(flight: Flight, watches: readonly Watch[]): readonly Watch[] {
  const { now, guidance, script, one } = flight;
  const { held } = flight;
  let stepped = false;
  for (let changes = 0; flight.end === null; changes++) {
    if (changes > MOST_CHANGES) {
      const last = script.waiting.findLast((each) => each.gate === now.time);
      const says = 'Steps or modes change one another again and again at one moment; the flight ends here.';
      flight.problems.push({ time: now.time, step: last?.step.id ?? null, says });
      flight.end = { reason: 'limit', says };
      break;
    }
    if (!changed()) break;
    flight.lastEvent = now.time;
    flight.look(now.time, one.state);
  }
  quiet(flight);

  function changed(): boolean {
    for (const side of script.branches) {
      if (!side.entered && side.when(now) >= 0) {
        side.entered = true;
        return true;
      }
    }
    // After a hand the guidance has its turn: of two ways to read one moment, the later step sees what the earlier led to.
    if (stepped) {
      stepped = false;
      if (guided()) return true;
    }
    for (const each of script.waiting) {
      if (due(flight, each) >= 0) {
        cueCame(flight, each);
        stepped = true;
        return true;
      }
    }
    if (guided()) return true;
    for (const watch of watches) {
      if (watch.margin(now) >= 0) {
        watch.act();
        apply(flight);
        return true;
      }
    }
    return false;
  }

  function guided(): boolean {
    for (const each of guidance.automatic) {
      if (!guidance.ready(each.rule, now) || each.margin(now) < 0) {
        held.delete(each.rule);
        continue;
      }
      const since = held.get(each.rule) ?? now.time;
      if (each.held > 0 && now.time < since + each.held) {
        held.set(each.rule, since);
        continue;
      }
      held.delete(each.rule);
      if (raise(flight, each.rule, null)) return true;
    }
    return false;
  }

  const live: Watch[] = [...watches];
  for (const each of script.waiting) {
    if (each.left === '' && each.gate === null && mayCome(flight, each)) {
      live.push({ margin: () => due(flight, each), act: () => {} });
    }
  }
  for (const each of guidance.automatic) {
    const since = held.get(each.rule);
    if (since !== undefined) {
      live.push({ margin: (at) => Math.max(at.time - since - each.held, -each.margin(at) - 1e-9), act: () => {} });
    } else if (guidance.guarded(each.rule)) live.push({ margin: each.margin, act: () => {} });
  }
  for (const side of script.branches) if (!side.entered) live.push({ margin: side.when, act: () => {} });
  // What is due and yet did not act would be found again and again.
  return live.filter((watch) => watch.margin(now) < 0);
}

/** Steps that may still come in this flight. */
const rest = ({ script }: Flight): boolean =>
  script.waiting.some((each) => each.left === '' && each.done === null && entered(script, each));

/** After an event a flight is given its time; when nothing is left to do, less of it. */
function quiet(flight: Flight): void {
  flight.quietAt = flight.now.time + (rest(flight) ? QUIET : QUIET / 3);
}

/** A while without an event: a steady flight is over, another goes on. */
function steady(flight: Flight): void {
  const { now, settings, script, timers } = flight;
  flight.quietAt = now.time + QUIET / 3;
  // With a runway ahead, or a step that counts seconds, something still comes.
  const counts = script.waiting.some((each) => each.gate === null && each.left === '' && counting(each, now));
  const going = now.toGo > 0 || counts || timers.length > 0 || settings.end !== '';
  if (!going && Math.abs(now.verticalSpeed) < LEVEL && Math.abs(flight.slope()) < 0.02) {
    const says = rest(flight) ? 'The flight is steady; nothing more comes by itself.' : 'Every step is done.';
    close(flight, 'complete', says);
  }
}
