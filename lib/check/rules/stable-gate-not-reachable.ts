import type { FlightEvent } from '../../flight/trace.ts';
import { formatNumber } from '../../units/format.ts';
import type { FlownOne } from '../flown.ts';
import {
  conditionsWords,
  eventMoment,
  feet,
  flightWitness,
  sayUnflown,
  sharesWords,
  worstFlight,
} from '../flown-worst.ts';
import { defineRule } from '../rule.ts';

/** When speed, detent and gear are there together for the first time. */
const stable = ({ trace }: FlownOne): FlightEvent | null =>
  trace.events.find(({ kind, says }) => kind === 'mark' && says === 'stable') ?? null;

export const stableGateNotReachable = defineRule({
  id: 'stable-gate-not-reachable',
  number: 70,
  severity: 'STOP',
  kind: 'S',
  stage: 'submission',
  phases: ['approach'],
  title: 'Stable gate not reachable',
  says: 'The stable gate of the policy is reached inside its window, with the landing detent and the gear, at every weight and wind: not only at the ends of the range.',
  why: 'Approaches were continued that the sequence on the page could not have made stable.',
  source: { text: 'DSB M2009LV0225_01', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'verb', 'object', 'value'],
  messages: {
    low: 'Speed, {detent} and gear are there at {height} AAL at {weight}, below the gate at {gate} AAL, in {some}. Begin earlier, or with the gear.',
    never:
      'Speed, {detent} and gear never come together before the ground at {weight}; {some} do not make the gate at {gate} AAL. Begin earlier, or with the gear.',
  },
  examples: {
    bad: '{phases: [approach], entry: {flaps: [F6], gear: up, speed: 200 kt, thrust: [IDLE], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F35], gear: down}, envelope: {weight: {from: 58000, to: 59000}, detents: [F35]}, steps: [{cue: height <= 900 ft AAL, who: PM, verb: move, object: gear lever, value: DOWN}]}',
    good: '{phases: [approach], entry: {flaps: [F6], gear: up, speed: 200 kt, thrust: [IDLE], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F35], gear: down}, envelope: {weight: {from: 58000, to: 59000}, detents: [F35]}, steps: [{cue: height <= 2 900 ft AAL, who: PM, verb: move, object: gear lever, value: DOWN}, {cue: height <= 2 700 ft AAL and speed <= VFE F12 - 5 kt, who: PM, verb: select, object: flap lever, value: F12}, {cue: height <= 2 500 ft AAL and speed <= VFE F18 - 5 kt, who: PM, verb: select, object: flap lever, value: F18}, {cue: height <= 2 200 ft AAL and speed <= VFE F26 - 5 kt, who: PM, verb: select, object: flap lever, value: F26}, {cue: height <= 1 900 ft AAL and speed <= VFE F35 - 5 kt, who: PM, verb: select, object: flap lever, value: F35}]}',
  },
  run({ procedure, flown, policy, unasked }, report) {
    if (procedure.phases.includes('go-around') || procedure.exit.gear !== 'down') return;
    if (sayUnflown({ flown, unasked })) return;
    const gate = policy.gates.stable.height;
    const found = worstFlight(flown, (one) => {
      const height = stable(one)?.height ?? 0;
      return height < gate ? gate - height : null;
    });
    if (found === null) return;
    const { trace } = found.one;
    const event = stable(found.one);
    const heights = flown.flights.map((one) => stable(one)?.height ?? 0);
    const ends = `first and last of ${heights.length} flights: ${formatNumber(heights[0]!)} and ${formatNumber(heights.at(-1)!)} ft`;
    const levers = procedure.steps.filter(({ object }) => /\b(flap|gear) lever\b/i.test(object));
    report({
      at: { step: (levers[0] ?? procedure.steps[0])?.id ?? '', field: 'cue' },
      message: event === null ? 'never' : 'low',
      data: {
        ...{ height: event === null ? '' : feet(event.height), gate: feet(gate), some: sharesWords(found) },
        ...{ detent: trace.conditions.detent, weight: conditionsWords(trace.conditions) },
      },
      witness: flightWitness(trace, event === null ? [] : [eventMoment(event)], ends),
      read: [gate, Math.round((event?.height ?? 0) / 10), found.hits],
    });
  },
});
