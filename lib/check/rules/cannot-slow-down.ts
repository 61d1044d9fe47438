import type { Trace } from '../../flight/trace.ts';
import { stuckIn } from '../flown-stuck.ts';
import {
  conditionsWords,
  flightWitness,
  knots,
  momentAt,
  sayUnflown,
  sharesWords,
  worstFlight,
} from '../flown-worst.ts';
import { defineRule } from '../rule.ts';

export const cannotSlowDown = defineRule({
  id: 'cannot-slow-down',
  number: 57,
  severity: 'STOP',
  kind: 'S',
  stage: 'submission',
  phases: ['descent', 'approach', 'landing'],
  title: 'Cannot slow down',
  says: 'A lower speed that is asked for on the path is reached at idle with the drag that the procedure puts out, at every weight and wind.',
  why: 'Clean on a 3° path the type gains speed at idle: a speed asked for there is never reached.',
  source: { text: 'approach study of the reference', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'verb', 'object', 'value'],
  messages: {
    gains:
      'At idle on the path the speed goes from {before} to {after} although {target} is asked for ({weight}): without more drag it does not fall.',
  },
  examples: {
    bad: '{phases: [approach], entry: {flaps: [F0], gear: up, speed: 220 kt, thrust: [IDLE], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F0]}, envelope: {weight: {from: 60000, to: 61000}}, steps: [{cue: height <= 2 900 ft AAL, who: PF, verb: set, object: speed selector, value: 180 kt}]}',
    good: '{phases: [approach], entry: {flaps: [F6], gear: up, speed: 200 kt, thrust: [IDLE], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F18], gear: down}, envelope: {weight: {from: 60000, to: 61000}}, steps: [{cue: height <= 2 900 ft AAL, who: PM, verb: move, object: gear lever, value: DOWN}]}',
  },
  run({ procedure, flown, policy, sheet, unasked }, report) {
    if (sayUnflown({ flown, unasked })) return;
    const above = policy.gates.stable.speedAbove;
    // Of take-off thrust, %: idle is most of it standing still.
    const idle = sheet.thrust.idle.fraction * 100;
    const ask = (trace: Trace) => stuckIn(trace, above, idle);
    const found = worstFlight(flown, ({ trace }) => ask(trace)?.gained ?? null);
    if (found === null) return;
    const { trace } = found.one;
    const { from, to, target } = ask(trace)!;
    const [before, after] = [momentAt(trace, from, 'idle, above the target'), momentAt(trace, to, 'still above it')];
    const step =
      trace.events.findLast((event) => event.step !== null && event.time <= from)?.step ?? procedure.steps[0]?.id ?? '';
    report({
      at: { step, field: 'value' },
      message: 'gains',
      data: {
        before: knots(before.speed),
        after: knots(after.speed),
        target: knots(target),
        weight: conditionsWords(trace.conditions),
      },
      witness: flightWitness(trace, [before, after], `so in ${sharesWords(found)}`),
      read: [above, Math.round(after.speed)],
    });
  },
});
