import { printGate } from '../../gate/print.ts';
import { conjuncts } from '../../procedure/cue.ts';
import type { StepState } from '../../procedure/walk.ts';
import { spokenAt } from '../path-gate.ts';
import { defineRule } from '../rule.ts';
import { inOrder } from '../witness.ts';

export const twoTriggersOneMoment = defineRule({
  id: 'two-triggers-one-moment',
  number: 9,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Two triggers, one moment',
  says: 'No two steps of one actor begin on the same condition without an order between them; "then" on the second gives the order.',
  why: 'Two things at once force the pilot to invent an order.',
  source: { text: 'NASA CR 177642 (1994)', seen: false },
  needs: [],
  reads: ['cue', 'only', 'who'],
  messages: {
    same: '{who} is to do this and {step} at the same moment, {cue}: write "then" on the one that comes second.',
  },
  examples: {
    bad: '[{cue: height >= 400 ft AAL, who: PM, verb: call, object: height}, {cue: height >= 400 ft AAL, who: PM, verb: read, object: mode line}]',
    good: '[{cue: height >= 400 ft AAL, who: PM, verb: call, object: height}, {cue: then, who: PM, verb: read, object: mode line}]',
  },
  run({ states }, report) {
    const first = new Map<string, StepState>();
    for (const here of states) {
      const { gate } = here.gate;
      const { step } = here;
      if (gate === null || gate.kind === 'then' || step.who === '') continue;
      const cue = printGate(gate);
      const key = [here.branch?.id ?? '', step.who, step.only.trim(), cue].join('\u0000');
      const other = first.get(key);
      first.set(key, here);
      if (other === undefined || saidAgain(states, other, here)) continue;
      const name = other.step.label || `step ${other.index + 1}`;
      report({
        at: { step: step.id, field: 'cue' },
        message: 'same',
        data: { who: step.who, step: name, cue },
        witness: inOrder(other.step.id, step.id, `both begin at: ${cue}`),
        fix: { says: 'write then', at: { step: step.id, field: 'cue' }, value: 'then' },
        read: [other.step.cue],
      });
    }
  },
});

/** The same words can be heard twice: between the two steps somebody says them again. */
function saidAgain(states: readonly StepState[], first: StepState, second: StepState): boolean {
  const heard = conjuncts(second.gate.gate).flatMap((part) =>
    part.kind === 'heard' ? [part.words.trim().toLowerCase()] : [],
  );
  const between = states.slice(states.indexOf(first), states.indexOf(second));
  return heard.length > 0 && between.some((at) => spokenAt(at).some((words) => heard.includes(words)));
}
