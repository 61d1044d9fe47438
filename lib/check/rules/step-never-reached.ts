import { speedBounds } from '../../procedure/cue.ts';
import type { StepState } from '../../procedure/walk.ts';
import type { FlownOne } from '../flown.ts';
import { isFlown, lowestSpeed } from '../flown-cue.ts';
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

const isLever = ({ step }: StepState): boolean => /\b(flap|gear) lever\b/i.test(step.object);

const missed = (one: FlownOne, id: string): boolean =>
  one.trace.steps.some(({ step, left }) => step === id && left === 'its gate never came true');
/** A flight that did not come to an end tells nothing of what would have come. */
const BROKEN_OFF = new Set(['refused', 'limit', 'time']);
const flewOn = ({ trace }: FlownOne): boolean => !BROKEN_OFF.has(trace.end.reason);

export const stepNeverReached = defineRule({
  id: 'step-never-reached',
  number: 10,
  severity: 'STOP',
  kind: 'X/S',
  stage: 'submission',
  phases: 'all',
  title: 'Step never reached',
  says: 'What a step waits for comes in flight: some time for every step, at every weight and wind for the flap and the gear.',
  why: 'Dead text hides that an action is missing: at 220 kt on a 3° path the speed for the next detent never comes by itself.',
  source: { text: 'approach study of the reference', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'only', 'verb', 'object', 'value'],
  messages: {
    never: '"{cue}" comes in none of {of} flights before the procedure ends: the step is never done{nearest}.',
    sometimes:
      '"{cue}" does not come in {some} before the procedure ends, such as {weight}: {object} stays where it is{nearest}.',
  },
  examples: {
    bad: '{phases: [approach], entry: {flaps: [F6], gear: up, speed: 200 kt, thrust: [IDLE], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F35], gear: down}, envelope: {weight: {from: 58000, to: 60000}}, steps: [{cue: speed <= 90 kt, who: PM, verb: select, object: flap lever, value: F12}]}',
    good: '{phases: [approach], entry: {flaps: [F6], gear: up, speed: 200 kt, thrust: [IDLE], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F12], gear: up}, envelope: {weight: {from: 58000, to: 60000}}, steps: [{cue: speed <= 205 kt, who: PM, verb: select, object: flap lever, value: F12}]}',
  },
  run({ states, flown, unasked }, report) {
    if (sayUnflown({ flown, unasked })) return;
    let levers = false;
    for (const at of states) {
      const { step, branch, ways } = at;
      if (branch !== null || step.only !== '' || !ways.every((way) => way.length > 0 && way.every(isFlown))) continue;
      const found = worstFlight(flown, (one) => (flewOn(one) && missed(one, step.id) ? lowestSpeed(one, ways) : null));
      // Levers come in the listed order: behind one that never comes, none does.
      if (found === null || (isLever(at) && levers)) continue;
      const always = found.hits === found.of;
      if (!always && !isLever(at)) continue;
      levers = levers || isLever(at);
      const { trace } = found.one;
      const bound = ways.some((way) => speedBounds(way).length > 0);
      const nearest = bound ? `; the speed falls to ${knots(found.value)} and no lower` : '';
      report({
        at: { step: step.id, field: 'cue' },
        message: always ? 'never' : 'sometimes',
        data: {
          cue: step.cue,
          of: found.of,
          some: sharesWords(found),
          weight: conditionsWords(trace.conditions),
          object: step.object,
          nearest,
        },
        witness: flightWitness(trace, [momentAt(trace, trace.end.time, trace.end.says)]),
        read: [found.hits, found.of],
      });
    }
  },
});
