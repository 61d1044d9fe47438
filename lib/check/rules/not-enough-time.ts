import { stepOfDuty } from '../../flight/crew.ts';
import { allSteps, type Step } from '../../procedure/procedure.ts';
import { formatNumber } from '../../units/format.ts';
import type { FlownOne } from '../flown.ts';
import { passingHeight } from '../flown-moments.ts';
import { conditionsWords, flightWitness, momentAt, sayUnflown, seconds, worstFlight } from '../flown-worst.ts';
import { defineRule } from '../rule.ts';

type Need = { readonly begins: number; readonly ends: number; readonly gate: number; readonly used: number };

/** What has to be over at a gate: levers and lists. */
const isDue = (step: Step): boolean =>
  /\b(flap|gear|speedbrake) lever\b/i.test(step.object) ||
  (step.verb === 'read' && /\b(check)?list\b/i.test(step.object));

/** A step that falls due before the gate: how much of the time to the gate it takes, 1 and more where it ends behind it. */
function needOf(one: FlownOne, step: Step, gate: number): Need | null {
  const spans = one.crew().spans.filter(({ duty }) => stepOfDuty(duty) === step.id);
  const [first, last] = [spans[0], spans.at(-1)];
  if (first === undefined || last === undefined || first.trigger >= gate) return null;
  return { begins: first.trigger, ends: last.end, gate, used: (last.end - first.trigger) / (gate - first.trigger) };
}

export const notEnoughTime = defineRule({
  id: 'not-enough-time',
  number: 94,
  severity: 'STOP',
  kind: 'S',
  stage: 'submission',
  phases: ['approach', 'landing'],
  title: 'Not enough time',
  says: 'What has to be over at the stable gate (levers and lists) takes, waits included, no more of the time to the gate than policy leaves after its slack, at the fastest ground speed.',
  why: 'A list that is longer than the time there is ends below the gate, or is not read.',
  source: { text: 'NTSB AAR-10/03', seen: true },
  needs: ['sheet', 'policy', 'library'],
  reads: ['cue', 'who', 'verb', 'object', 'value', 'say', 'reply', 'orderWords'],
  messages: {
    slack: '{what} takes {needs} of the {has} to {height} at {weight}: {left} % is left over, policy wants {slack} %.',
    below: '{what} ends {after} after {height} at {weight}, at {ends}: there is not enough time for it.',
  },
  examples: {
    bad: '{phases: [approach], entry: {flaps: [F6], gear: up, speed: 200 kt, thrust: [IDLE], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F35], gear: down}, envelope: {weight: {from: 58000, to: 60000}}, steps: [{cue: height <= 1 100 ft AAL, who: PM, verb: read, object: landing checklist, value: 12 items}]}',
    good: '{phases: [approach], entry: {flaps: [F6], gear: up, speed: 200 kt, thrust: [IDLE], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F35], gear: down}, envelope: {weight: {from: 58000, to: 60000}}, steps: [{cue: height <= 2 500 ft AAL, who: PM, verb: read, object: landing checklist, value: 4 items}]}',
  },
  run({ procedure, flown, policy, unasked }, report) {
    if (sayUnflown({ flown, unasked })) return;
    const { slack } = policy.durations;
    const { height } = policy.gates.stable;
    for (const step of allSteps(procedure).filter(isDue)) {
      const found = worstFlight(flown, (one) => {
        const gate = passingHeight(one.trace, height);
        return gate === null ? null : (needOf(one, step, gate)?.used ?? null);
      });
      if (found === null || found.value <= 1 - slack + 1e-9) continue;
      const { trace } = found.one;
      const { begins, ends, gate, used } = needOf(found.one, step, passingHeight(trace, height)!)!;
      const at = momentAt(trace, ends, `${step.object} is over`);
      report({
        at: { step: step.id, field: 'cue' },
        message: used > 1 ? 'below' : 'slack',
        data: {
          ...{
            what: step.object,
            needs: seconds(ends - begins),
            has: seconds(gate - begins),
            after: seconds(ends - gate),
          },
          ...{ height: `${formatNumber(height)} ft AAL`, weight: conditionsWords(trace.conditions) },
          ...{
            left: formatNumber((1 - used) * 100),
            slack: formatNumber(slack * 100),
            ends: `${formatNumber(Math.round(at.height / 10) * 10)} ft`,
          },
        },
        witness: flightWitness(trace, [
          momentAt(trace, begins, `${step.object} is due`),
          momentAt(trace, gate, 'the gate is passed'),
          at,
        ]),
        read: [slack, height, Math.round(used * 100)],
      });
    }
  },
});
