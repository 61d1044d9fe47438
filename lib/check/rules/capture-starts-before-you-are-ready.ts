import type { Trace } from '../../flight/trace.ts';
import { formatNumber } from '../../units/format.ts';
import { namesCapture } from '../capture-named.ts';
import { pressesRead } from '../crew-reading.ts';
import type { FlownOne } from '../flown.ts';
import {
  conditionsWords,
  eventMoment,
  feet,
  firstMode,
  flightWitness,
  sayUnflown,
  seconds,
  sharesWords,
  worstFlight,
} from '../flown-worst.ts';
import { defineRule } from '../rule.ts';

/** By how much the capture comes below the later of the two altitudes at which thrust and speed change, ft; null: above both. */
function below({ conditions, ...trace }: Trace): number | null {
  const capture = firstMode({ conditions, ...trace }, 'CAPTURE');
  if (capture === null) return null;
  const gap = Math.max(conditions.climbThrustHeight, conditions.accelerationHeight) - capture.height;
  return gap > 0 ? gap : null;
}

export const captureStartsBeforeYouAreReady = defineRule({
  id: 'capture-starts-before-you-are-ready',
  number: 67,
  severity: 'ANSWER',
  kind: 'S',
  stage: 'submission',
  phases: ['take-off', 'go-around'],
  title: 'Capture starts before you are ready',
  says: 'A level-off capture begins behind thrust reduction and acceleration, or the procedure says what is done when it comes first; and always behind the reading of the modes.',
  why: 'At 3 000 ft/min a capture needs 777 ft: with a low missed-approach altitude it begins before anybody has looked.',
  source: { text: 'BEA study of aeroplane state awareness during go-around, 2013', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'verb', 'object', 'say', 'reply'],
  messages: {
    unread: 'CAPTURE begins {before} before the modes of {press} are read, at {weight}.',
    low: 'CAPTURE begins at {height} AAL at {weight}, {gap} below the altitude where thrust and speed are to change; no step says what is done then.',
  },
  examples: {
    bad: '{phases: [approach, go-around], entry: {flaps: [F35], gear: down, thrust: [GOVERN], lateral: [COURSE], vertical: [GLIDE], selectedAltitude: 2 000 ft MSL}, exit: {flaps: [F35]}, envelope: {weight: {from: 48000, to: 49000}}, steps: [{cue: event "gate not met", who: PF, verb: press, object: GO-AROUND switch, expect: {vertical: LIFT}}]}',
    good: '{phases: [approach, go-around], entry: {flaps: [F35], gear: down, thrust: [GOVERN], lateral: [COURSE], vertical: [GLIDE], selectedAltitude: 2 000 ft MSL}, exit: {flaps: [F35]}, envelope: {weight: {from: 48000, to: 49000}}, steps: [{cue: event "gate not met", who: PF, verb: press, object: GO-AROUND switch, expect: {vertical: LIFT}}, {cue: vertical = CAPTURE, who: PM, verb: read, object: mode line, say: "govern, capture"}]}',
  },
  run({ procedure, flown, unasked }, report) {
    if (sayUnflown({ flown, unasked })) return;
    for (const { press, reading } of pressesRead(procedure)) {
      const before = (one: FlownOne): number | null => {
        const [capture, read] = [firstMode(one.trace, 'CAPTURE'), reading(one.crew())];
        return capture === null || read === null || read.pressed > capture.time || read.start <= capture.time
          ? null
          : read.start - capture.time;
      };
      const found = worstFlight(flown, before);
      if (found === null) continue;
      const { trace, crew } = found.one;
      report({
        at: { step: reading(crew())!.step, field: 'cue' },
        message: 'unread',
        data: { before: seconds(found.value), press: press.object, weight: conditionsWords(trace.conditions) },
        witness: flightWitness(trace, [eventMoment(firstMode(trace, 'CAPTURE')!)], `so in ${sharesWords(found)}`),
        read: [Math.round(found.value)],
      });
    }
    if (namesCapture(procedure)) return;
    const found = worstFlight(flown, ({ trace }) => below(trace));
    if (found === null) return;
    const { trace } = found.one;
    const capture = firstMode(trace, 'CAPTURE')!;
    const rate = `${formatNumber(Math.round(capture.verticalSpeed / 10) * 10)} ft/min`;
    report({
      at: { step: procedure.steps.at(-1)?.id ?? '', field: 'cue' },
      message: 'low',
      data: { height: feet(capture.height), gap: feet(found.value), weight: conditionsWords(trace.conditions) },
      witness: flightWitness(
        trace,
        [{ ...eventMoment(capture), says: `CAPTURE at ${rate}` }],
        `so in ${sharesWords(found)}`,
      ),
      read: [Math.round(capture.height / 10)],
    });
  },
});
