import { floorOf } from '../../envelope/floor.ts';
import { ceilings, scheduled } from '../held.ts';
import { defineRule } from '../rule.ts';
import { compareOver, envelopeOf, type Speed, speedOf } from '../speed-question.ts';
import { worst } from '../worst.ts';

/** The step's own look keeps the figure under the limit of the flap, whatever is ordered. */
const GUARDED = /\bVFE of the (detent|flap) (indicated|held)\b/i;

export const targetOutsideBand = defineRule({
  id: 'target-outside-band',
  number: 45,
  severity: 'STOP',
  kind: 'N',
  stage: 'writing',
  phases: 'all',
  title: 'Target outside the band',
  says: "Each speed target lies between the lowest speed of the phase and the least of VFE of the flap indicated, VLE and VMO less the policy's margin, for the configuration held until the next step. A target that flap steps follow on their own speed cues is measured by the configuration they lead to.",
  why: 'A target outside the band is flown by autothrust without a question: into the stall margin or through a limit.',
  source: { text: 'type data of the TN-182, speed band', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'only', 'verb', 'object', 'value', 'checkSees'],
  messages: {
    high: 'The target {target} is above {limit} {where}, with {flaps} held.',
    low: 'The target {target} is below {limit} {where}, with {flaps} held.',
  },
  examples: {
    bad: '{phases: [approach], entry: {flaps: [F18]}, steps: [{cue: then, who: PF, verb: set, object: speed selector, value: 200 kt}]}',
    good: '{phases: [approach], entry: {flaps: [F18]}, steps: [{cue: then, who: PF, verb: set, object: speed selector, value: 180 kt}]}',
  },
  run({ states, sheet, policy, procedure, unasked }, report) {
    const domain = envelopeOf(procedure, sheet);
    for (const [index, { step, done }] of states.entries()) {
      const { target } = done;
      if (target.kind === 'unknown' || target.setBy !== step.id || !done.flapsKnown) continue;
      const at = { step: step.id as string, field: 'value' };
      if (target.kind === 'words') {
        unasked(`"${target.text}" has no value in the sheet or the policy`, at);
        continue;
      }
      const [fast, slow] = [scheduled(states, index, 'retract'), scheduled(states, index, 'extend')];
      const over = worst();
      const under = worst();
      const ask = (detents: readonly string[], op: '<=' | '>=', other: Speed, into: ReturnType<typeof worst>): void => {
        const speeds = detents.map((detent) => speedOf(target.term, detent, sheet, policy));
        const speed = speeds.find((each) => each.ok) ?? speeds[0];
        if (speed === undefined || !speed.ok) {
          unasked(speed?.error ?? 'nothing says which detent is held', at);
          return;
        }
        const verdict = compareOver(speed.value, op, other, domain);
        if (verdict.kind === 'undecided') unasked(verdict.because, at);
        if (verdict.kind === 'fails') into.take({ verdict, speed: speed.value, other });
      };
      const guarded = GUARDED.test(`${step.value} ${step.checkSees}`);
      // What the wind adds to VREF has its own margin and its own check: here it has to stay under the limit itself.
      const margin = /\bVAPP\b/.test(target.text) ? 0 : policy.speeds.selectionMargin;
      for (const limit of ceilings(fast, sheet, margin, !guarded)) ask(done.selected, '<=', limit, over);
      for (const detent of slow.selected) {
        const floor = floorOf(sheet, policy.floors, slow.floor, detent, detent);
        if (floor === null) unasked(`the sheet gives no lowest speed for ${detent}`, at);
        else ask([detent, ...done.selected], '>=', floor, under);
      }
      for (const [message, bad, state] of [
        ['high', over, fast],
        ['low', under, slow],
      ] as const) {
        if (bad.found === null) continue;
        const { speed, other, verdict } = bad.found;
        const flaps = state.indicated.join(' or ');
        const data = { target: speed.name, limit: other.name, where: verdict.where, flaps };
        const read = [other.name, JSON.stringify(other.expression), flaps, JSON.stringify(domain)];
        report({ at, message, data, witness: verdict.witness, cause: `target-outside-band ${other.name}`, read });
      }
    }
  },
});
