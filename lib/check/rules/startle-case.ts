import type { Trace } from '../../flight/trace.ts';
import { formatNumber } from '../../units/format.ts';
import { stepsAtCapture } from '../capture-named.ts';
import {
  conditionsWords,
  eventMoment,
  firstMode,
  flightWitness,
  momentAt,
  sayUnflown,
  seconds,
  worstFlight,
} from '../flown-worst.ts';
import { defineRule } from '../rule.ts';

const LOOKS = /\b(thrust|levers?)\b/i;

/** The first moment at which the speed is above the limit of what is out, s; null: never. */
function passesLimit({ samples }: Trace): number | null {
  const row = samples.speed.findIndex((speed, at) => speed > samples.ceiling[at]!);
  return row < 0 ? null : samples.time[row]!;
}

export const startleCase = defineRule({
  id: 'startle-case',
  number: 98,
  severity: 'ANSWER',
  kind: 'S',
  stage: 'submission',
  phases: ['go-around'],
  title: 'Startle case',
  says: 'Light, all engines, a low selected altitude: where a capture comes in the procedure, a step looks at the thrust there.',
  why: 'The all-engine go-around is rarely trained at the weights at which it is quickest.',
  source: { text: 'BEA study of aeroplane state awareness during go-around, 2013', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'object', 'say', 'reply', 'checkSees', 'checkIfNot'],
  messages: {
    unseen:
      'At {weight} CAPTURE comes {time} after the first moment flown, at {rate}, and no step looks at the thrust there{left}.',
  },
  examples: {
    bad: '{phases: [approach, go-around], entry: {flaps: [F35], gear: down, thrust: [GOVERN], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F35]}, envelope: {weight: {from: 48000, to: 49000}}, steps: [{cue: event "gate not met", who: PF, verb: press, object: GO-AROUND switch}]}',
    good: '{phases: [approach, go-around], entry: {flaps: [F35], gear: down, thrust: [GOVERN], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F35]}, envelope: {weight: {from: 48000, to: 49000}}, steps: [{cue: event "gate not met", who: PF, verb: press, object: GO-AROUND switch}, {cue: vertical = CAPTURE, who: PM, verb: read, object: mode line, say: capture, checkBy: PF, checkSees: thrust reducing}]}',
  },
  run({ procedure, flown, unasked }, report) {
    if (sayUnflown({ flown, unasked })) return;
    const looks = stepsAtCapture(procedure).some((step) =>
      LOOKS.test(`${step.object} ${step.say} ${step.reply} ${step.checkSees} ${step.checkIfNot}`),
    );
    if (looks) return;
    const found = worstFlight(flown, ({ trace }) => {
      const capture = firstMode(trace, 'CAPTURE');
      return capture === null ? null : -capture.time;
    });
    if (found === null) return;
    const { trace } = found.one;
    const capture = firstMode(trace, 'CAPTURE')!;
    const rate = `${formatNumber(Math.round(capture.verticalSpeed / 10) * 10)} ft/min`;
    const leftUp = flown.again(trace.conditions, { governAfter: Number.POSITIVE_INFINITY });
    const passed = passesLimit(leftUp);
    const left =
      passed === null
        ? ''
        : `; with the levers left where they are the limit of the flap is passed at ${seconds(passed)}`;
    report({
      at: { step: procedure.steps.at(-1)?.id ?? '', field: 'cue' },
      message: 'unseen',
      data: { time: seconds(capture.time), rate, left, weight: conditionsWords(trace.conditions) },
      witness: flightWitness(trace, [
        { ...eventMoment(capture), says: `CAPTURE at ${rate}` },
        ...(passed === null ? [] : [momentAt(leftUp, passed, 'with the levers left: the limit is passed')]),
      ]),
      read: [Math.round(capture.time), Math.round(passed ?? 0)],
    });
  },
});
