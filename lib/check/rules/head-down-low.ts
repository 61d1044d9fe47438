import { allSteps, type Step } from '../../procedure/procedure.ts';
import type { FlownOne } from '../flown.ts';
import { conditionsWords, feet, flightWitness, momentAt, sayUnflown, worstFlight } from '../flown-worst.ts';
import { downSpans, lowest, nearLevel, negative, overlap } from '../heads-down.ts';
import { defineRule } from '../rule.ts';

export const headDownLow = defineRule({
  id: 'head-down-low',
  number: 95,
  severity: 'ANSWER',
  kind: 'S',
  stage: 'submission',
  phases: 'all',
  title: 'Head down low',
  says: 'No data entry below the height that policy gives for it, nor within the last feet before a level-off; never both pilots heads-down at once.',
  why: 'Reports tell of crews that typed while the aircraft descended through its altitude.',
  source: { text: 'ASRS CALLBACK 292, 412, 533 and 545', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'who', 'verb', 'object', 'flags'],
  messages: {
    low: 'Heads are down for {object} at {height} AAL ({weight}); below {floor} AAL both pilots look out and at the modes.',
    level:
      'Heads are down for {object} {gap} before the level-off ({weight}); within {within} of it both pilots watch.',
    both: 'Both pilots have their heads down at once: {object} and {other} ({weight}).',
  },
  examples: {
    bad: '{phases: [approach], entry: {flaps: [F6], gear: up, speed: 200 kt, thrust: [IDLE], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F35], gear: down}, envelope: {weight: {from: 58000, to: 60000}}, steps: [{cue: height <= 2 000 ft AAL, who: PM, verb: set, object: route page, flags: [eyes-down]}]}',
    good: '{phases: [approach], entry: {flaps: [F6], gear: up, speed: 200 kt, thrust: [IDLE], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F35], gear: down}, envelope: {weight: {from: 58000, to: 60000}}, steps: [{cue: height <= 2 000 ft AAL, who: PM, verb: read, object: mode line}]}',
  },
  run({ procedure, flown, policy, unasked }, report) {
    if (sayUnflown({ flown, unasked })) return;
    const floor = policy.gates.routeEntry;
    const { within } = policy.gates.levelOff;
    const down = allSteps(procedure).filter(({ flags }) => flags.includes('eyes-down'));
    const tell = (
      step: Step,
      message: 'low' | 'level' | 'both',
      one: FlownOne,
      at: number,
      data: Record<string, string>,
    ) => {
      const weight = conditionsWords(one.trace.conditions);
      const moments = downSpans(one, step).map((span) =>
        momentAt(one.trace, span.start, `heads down for ${step.object}`),
      );
      report({
        at: { step: step.id, field: 'cue' },
        message,
        data: { object: step.object, weight, ...data },
        witness: flightWitness(one.trace, moments),
        read: [floor, within, Math.round(at / 100)],
      });
    };
    for (const step of down) {
      const low = worstFlight(flown, (one) => negative(lowest(one, step)));
      const level = worstFlight(flown, (one) => negative(nearLevel(one, step)));
      if (low !== null && -low.value < floor)
        tell(step, 'low', low.one, -low.value, { height: feet(-low.value), floor: feet(floor) });
      else if (level !== null && -level.value < within)
        tell(step, 'level', level.one, -level.value, { gap: feet(-level.value), within: feet(within) });
      for (const other of down.slice(down.indexOf(step) + 1)) {
        const both = worstFlight(flown, (one) => overlap(downSpans(one, step), downSpans(one, other)));
        if (both !== null) tell(step, 'both', both.one, both.value, { other: other.object });
      }
    }
  },
});
