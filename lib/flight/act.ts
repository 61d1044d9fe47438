// A step from its cue to its end: the cue is noted, the hand moves, the words are said, the next steps are freed.

import type { StepId } from '../procedure/procedure.ts';
import { after, apply, type Flight, retarget, speedUp } from './flight.ts';
import { moveFlap, moveGear } from './levers.ts';
import { FPM, W } from './motion.ts';
import { AT_ONCE, paceOf } from './pace.ts';
import { follow, free, open, type Waiting } from './pending.ts';
import type { ModeLine } from './trace.ts';

const wordsOf = (line: ModeLine): string =>
  `${line.thrust} · ${line.lateral} · ${line.vertical}, ${line.armed.length === 0 ? 'nothing armed' : `armed ${line.armed.join(', ')}`}`;

/** How far a step that may still come is from being done, nil or more when it is due; -1 where something else comes first. */
export function due(flight: Flight, one: Waiting): number {
  const { script, settings, now } = flight;
  if (!open(script, one)) return -1;
  // A study may say when the first movement of a lever comes, whatever its cue says.
  const fixed = one.lever === null ? undefined : settings.hands[one.lever];
  if (fixed !== undefined && !script.waiting.some((other) => other.lever === one.lever && other.gate !== null)) {
    return now.time - fixed;
  }
  if (!free(script, one, now)) return -1;
  const cue = one.cue(now);
  if (one.lever === null || cue < 0) return cue;
  return Math.min(cue, now.time - flight.busyUntil);
}

/** Whether the step may come due before the next event: what waits for an event need not be looked at until then. */
export function mayCome(flight: Flight, one: Waiting): boolean {
  const { script, settings, now } = flight;
  if (!open(script, one)) return false;
  if (one.lever !== null && settings.hands[one.lever] !== undefined) return true;
  return free(script, one, now) && one.could(now) >= 0;
}

export function cueCame(flight: Flight, one: Waiting): void {
  const { now, log, settings, policy } = flight;
  one.gate = now.time;
  one.times += 1;
  log.note(now, 'gate', `${one.step.label || 'step'}: ${one.step.cue || 'follows'}`, { step: one.step.id });
  const pace = settings.reaction === 'policy' ? paceOf(one.step, policy) : AT_ONCE;
  const late = Math.max(0, pace.before + settings.delay + (settings.late[one.step.id] ?? 0));
  const hand = (): void => {
    handMoves(flight, one);
    if (pace.after === 0) over(flight, one);
    else after(flight, pace.after, () => over(flight, one));
  };
  // A reading or a call needs no hand: a study's delay is one of hands.
  const moves = one.lever !== null || one.deed.rules.length > 0 || one.deed.speed !== null || one.deed.thrust !== null;
  const wait = moves ? late : Math.max(0, pace.before + (settings.late[one.step.id] ?? 0));
  if (wait === 0) hand();
  else after(flight, wait, hand);
}

function handMoves(flight: Flight, one: Waiting): void {
  const { now, log, settings, law, conditions } = flight;
  const { deed, step } = one;
  one.act = now.time;
  log.note(now, 'act', `${step.label || 'step'}: ${step.verb} ${step.object}${step.value ? `, ${step.value}` : ''}`, {
    step: step.id,
  });
  if (one.lever !== null) flight.busyUntil = now.time + settings.busy[one.lever];
  if (deed.flap >= 0) moveFlap(flight, deed.flap, step.id);
  if (deed.gear !== null) moveGear(flight, deed.gear, step.id);
  if (deed.altitude !== null) now.selectedAltitude = deed.altitude;
  if (deed.rate !== null) law.rate = deed.rate * FPM;
  if (deed.brake !== null) flight.brake = deed.brake;
  if (deed.autopilot !== null) now.autopilot = deed.autopilot;
  if (deed.thrust !== null) flight.hand = deed.thrust;
  if (deed.speed !== null) {
    const speed = deed.speed(now);
    if (Number.isFinite(speed)) {
      flight.selector = speed;
      flight.turned = true;
      // Modes that keep their target take the selector when it is turned.
      now.target = speed;
      log.note(now, 'target', `speed target ${Math.round(speed)} kt`, { step: step.id });
    }
  }
  for (const rule of deed.rules) if (raise(flight, rule, step.id)) break;
  if (deed.turns && !law.turning && conditions.turnTo !== conditions.track) {
    law.turning = true;
    law.heading = (conditions.turnTo * Math.PI) / 180;
  }
  if (deed.speed !== null && flight.guidance.line.vertical === 'ASCENT') speedUp(flight);
  apply(flight);
}

function over(flight: Flight, one: Waiting): void {
  const { now, log, script } = flight;
  one.done = now.time;
  now.said += ` | ${one.words}`;
  const when = { time: now.time, distance: now.distance };
  now.done.set(one.step.id, when);
  if (one.step.label !== '') now.done.set(one.step.label, when);
  const said = [one.step.say, one.step.reply].filter(Boolean).join(' · ');
  log.note(now, 'done', said === '' ? 'done' : `"${said}"`, { step: one.step.id });
  const circle = follow(script, one, now);
  if (circle !== null) flight.problems.push({ time: now.time, step: one.step.id, says: circle });
}

/** Raises a rule of the guidance; false where it changes nothing. */
export function raise(flight: Flight, rule: number, step: StepId | null): boolean {
  const { guidance, now, log, settings, law, sheet, one } = flight;
  const before = guidance.line;
  const raised = guidance.raise(rule, now);
  if (raised === null) return false;
  const line = guidance.line;
  now.line = line;
  log.lines.push({ from: now.time, line });
  log.note(now, 'mode', wordsOf(line), {
    step,
    who: step === null ? raised.who : 'crew',
    rule: raised.rule,
    line,
  });
  if (raised.event === 'acceleration altitude') flight.selector = sheet.guidance.accelerationTarget.value;
  if (line.thrust !== before.thrust) {
    flight.turned = false;
    if (line.thrust === 'GOVERN') {
      flight.governs = settings.governAfter === 0;
      if (!flight.governs && Number.isFinite(settings.governAfter)) {
        after(flight, settings.governAfter, () => {
          flight.governs = true;
          apply(flight);
        });
      }
    } else flight.governs = true;
    if (line.thrust === sheet.modes.manual) flight.hand ??= before.thrust === 'GOVERN' ? 'steady' : law.rating;
  }
  if (line.vertical !== before.vertical) {
    // A rate that is taken over is the one that is there.
    if (!line.vertical.startsWith('RATE') || !before.vertical.startsWith('RATE')) law.rate = one.state[W]!;
    if (line.vertical === 'LEVEL') flight.level = before.vertical === 'CAPTURE' ? null : now.altitude;
    if (line.vertical === 'LIFT') {
      flight.phase = 'goAround';
      flight.left = flight.speeds.of('VREF', flight.craft.detents[now.detent]!);
    }
    retarget(flight);
  }
  if (
    line.lateral !== before.lateral &&
    line.lateral === 'ROUTE' &&
    flight.conditions.turnTo !== flight.conditions.track
  ) {
    law.turning = true;
    law.heading = (flight.conditions.turnTo * Math.PI) / 180;
  }
  apply(flight);
  return true;
}
