import { stepOfDuty } from '../../flight/crew.ts';
import type { Collision } from '../../flight/timeline.ts';
import { worstOf } from '../../flight/timeline-spread.ts';
import { formatNumber } from '../../units/format.ts';
import type { FlownOne } from '../flown.ts';
import { conditionsWords, flightWitness, momentAt, sayUnflown } from '../flown-worst.ts';
import { defineRule } from '../rule.ts';

const tenths = (value: number): string => `${formatNumber(value, 1)} s`;
const keyOf = ({ first, second }: Collision): string => `${first.duty.id} ${second.duty.id}`;

export const callsCollide = defineRule({
  id: 'calls-collide',
  number: 92,
  severity: 'ANSWER',
  kind: 'S',
  stage: 'submission',
  phases: 'all',
  title: 'Calls collide',
  says: 'No flight-path critical call waits longer for the voice channel than policy allows, and none is spoken over for as long: pilots, automatic voice and controller share one. V1 with VR in one breath is exempt; a call of less weight gives way.',
  why: 'A radio call can hold the channel over the moment of the call that the flight needs.',
  source: { text: 'crew timeline of the reference go-around', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'who', 'say', 'reply', 'orderWords', 'flags'],
  messages: {
    waits: '{second} waits {wait} behind {first} at {weight}: the longest that policy lets a call wait is {limit}.',
    over: '{second} and {first} are spoken over each other for {wait} at {weight}: neither is heard.',
  },
  examples: {
    bad: '{phases: [approach, go-around], entry: {flaps: [F35], gear: down, thrust: [GOVERN], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F35]}, envelope: {weight: {from: 48000, to: 50000}}, steps: [{cue: event "gate not met", who: PF, verb: press, object: GO-AROUND switch}, {cue: height >= 350 ft AAL, who: PM, verb: call, object: radio, say: (radio) going around}, {cue: height >= 400 ft AAL, who: PF, verb: call, object: heading, say: heading zero five zero, flags: [critical]}]}',
    good: '{phases: [approach, go-around], entry: {flaps: [F35], gear: down, thrust: [GOVERN], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F35]}, envelope: {weight: {from: 48000, to: 50000}}, steps: [{cue: event "gate not met", who: PF, verb: press, object: GO-AROUND switch}, {cue: height >= 400 ft AAL, who: PF, verb: call, object: heading, say: heading zero five zero, flags: [critical]}, {cue: then, who: PM, verb: call, object: radio, say: (radio) going around}]}',
  },
  run({ steps, flown, policy, unasked }, report) {
    if (sayUnflown({ flown, unasked })) return;
    const { callWait, least, most } = policy.durations;
    const critical = new Set(steps.filter(({ flags }) => flags.includes('critical')).map(({ id }) => id as string));
    // The worst of each step: one finding is enough to mend, and the mend is asked again.
    const worst = new Map<string, { one: FlownOne; found: Collision }>();
    for (const one of flown.flights) {
      for (const found of one.crew().collisions) {
        const step = stepOfDuty(found.second.duty) ?? '';
        // Words that close a movement are said when it is done; a call is words from its beginning.
        if (found.seconds <= callWait || found.second.duty.speaks !== 0 || !critical.has(step)) continue;
        const before = worst.get(step);
        if (before === undefined || found.seconds > before.found.seconds + 1e-9) worst.set(step, { one, found });
      }
    }
    for (const [step, { one, found }] of worst) {
      const { trace } = one;
      const { first, second, seconds, over } = found;
      const slow = worstOf(
        one.varied(),
        (run) => run.collisions.find((each) => keyOf(each) === keyOf(found))?.seconds ?? null,
      );
      const stretched =
        slow === null ? '' : `${tenths(slow.value)} at most with durations ×${least} to ×${most} (${slow.under})`;
      report({
        at: { step, field: 'say' },
        message: over ? 'over' : 'waits',
        data: {
          ...{ first: first.duty.does, second: second.duty.does, wait: tenths(seconds), limit: tenths(callWait) },
          weight: conditionsWords(trace.conditions),
        },
        witness: flightWitness(
          trace,
          [
            momentAt(trace, first.start, `${first.duty.does} begins`),
            momentAt(trace, second.trigger, `${second.duty.does} is due`),
            momentAt(trace, second.start, `${second.duty.does} is said`),
          ],
          stretched,
        ),
        read: [callWait, first.duty.id, Math.round(seconds * 10)],
      });
    }
  },
});
