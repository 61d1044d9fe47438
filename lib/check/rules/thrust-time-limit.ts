import type { Trace } from '../../flight/trace.ts';
import { formatNumber } from '../../units/format.ts';
import {
  conditionsWords,
  flightWitness,
  momentAt,
  sayUnflown,
  seconds,
  sharesWords,
  worstFlight,
} from '../flown-worst.ts';
import { defineRule } from '../rule.ts';

/** From the first moment above maximum continuous thrust to the first that is not, whatever the mode is called; the whole
 *  flight where none comes. s; null: never above. */
function timeAbove({ samples, end }: Trace, continuous: number): { readonly from: number; readonly to: number } | null {
  const first = samples.thrust.findIndex((thrust) => thrust > continuous);
  if (first < 0) return null;
  const last = samples.thrust.findIndex((thrust, row) => row > first && thrust <= continuous);
  return { from: samples.time[first]!, to: last < 0 ? end.time : samples.time[last]! };
}

export const thrustTimeLimit = defineRule({
  id: 'thrust-time-limit',
  number: 56,
  severity: 'ANSWER',
  kind: 'S',
  stage: 'submission',
  phases: ['take-off', 'go-around'],
  title: 'Thrust time limit',
  says: 'Take-off or go-around thrust is reduced within its time limit, also with one engine out and the acceleration still to come.',
  why: 'With one engine the climb and the level acceleration take minutes; the rating is given for a number of them.',
  source: { text: 'rating of the type data', seen: false },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'verb', 'object', 'value', 'expect'],
  messages: {
    long: 'Take-off thrust stands for {time} of the {limit} allowed at {weight}.',
  },
  examples: {
    bad: '{class: engine-out, title: Engine-out take-off, phases: [take-off], entry: {flaps: [F12], gear: up}, exit: {flaps: [F0]}, envelope: {weight: {from: 66000, to: 68000}, detents: [F12]}, sheet: {limits: {takeOffThrustTime: {value: 60}}}, steps: [{cue: height >= 1 400 ft AAL, who: PF, verb: move, object: thrust levers, value: maximum continuous}]}',
    good: '{class: engine-out, title: Engine-out take-off, phases: [take-off], entry: {flaps: [F12], gear: up}, exit: {flaps: [F0]}, envelope: {weight: {from: 60000, to: 62000}, detents: [F12]}, steps: [{cue: height >= 400 ft AAL, who: PF, verb: move, object: thrust levers, value: maximum continuous}]}',
  },
  run({ procedure, flown, sheet, unasked }, report) {
    if (sayUnflown({ flown, unasked })) return;
    const limit = sheet.limits.takeOffThrustTime.value;
    // A hair above, %: thrust that settles on the rating is the rating.
    const continuous = sheet.thrust.maximumContinuous.value * 100 + 0.5;
    const time = (trace: Trace): number | null => {
      const used = timeAbove(trace, continuous);
      return used === null ? null : used.to - used.from;
    };
    const isBroken = (trace: Trace): boolean =>
      trace.end.reason === 'time' && timeAbove(trace, continuous)?.to === trace.end.time;
    const broken = flown.flights.filter(({ trace }) => isBroken(trace));
    if (broken.length > 0) {
      const { conditions } = broken[0]!.trace;
      const at = { step: procedure.steps[0]?.id ?? '', field: 'cue' };
      unasked(`${broken.length} flights hardly climb and were broken off, such as ${conditionsWords(conditions)}`, at);
    }
    const found = worstFlight(flown, ({ trace }) => {
      if (isBroken(trace)) return null;
      const used = time(trace);
      return used !== null && used > limit ? used : null;
    });
    if (found === null) return;
    const { trace } = found.one;
    const { from, to } = timeAbove(trace, continuous)!;
    report({
      at: { step: procedure.steps[0]?.id ?? '', field: 'cue' },
      message: 'long',
      data: { time: seconds(to - from), limit: seconds(limit), weight: conditionsWords(trace.conditions) },
      witness: flightWitness(
        trace,
        [momentAt(trace, from, 'take-off thrust stands'), momentAt(trace, to, 'it is reduced, or the flight ends')],
        `so in ${sharesWords(found)}; the time on the ground before is not in it`,
      ),
      read: [limit, formatNumber(to - from)],
    });
  },
});
