import { conjuncts } from '../../procedure/cue.ts';
import type { Step } from '../../procedure/procedure.ts';
import type { StepState } from '../../procedure/walk.ts';
import { defineRule } from '../rule.ts';
import { absent, wordsOf } from '../witness.ts';

const HANDS = new Set(['set', 'select', 'press', 'move', 'arm', 'engage', 'disengage']);
const THING =
  /\b(fuel (lever|control|switch|shut-?off)s?|fire (handle|button|bottle|switch)s?|generator drive|engine master|cut-?off lever)\b/i;
const FINAL = /\b(off|cut-?off|pull\w*|discharge\w*|disconnect\w*|shut)\b/i;
const CONFIRM = /\bconfirm(ed|s)?\b/i;

export const oneHandIrreversible = defineRule({
  id: 'one-hand-irreversible',
  number: 20,
  severity: 'STOP',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'One hand, irreversible',
  says: 'What can not be taken back (fuel lever off, fire handle, generator drive, and every hand act that is flagged so) is named aloud by the one who acts and confirmed by the other pilot before it is done.',
  why: 'Crews have shut down the engine that was running.',
  source: { text: 'wrong-engine shutdowns, in general', seen: false },
  needs: [],
  reads: [
    'cue',
    'who',
    'verb',
    'object',
    'value',
    'say',
    'sayBy',
    'reply',
    'replyBy',
    'flags',
    'orderWords',
    'orderBy',
  ],
  messages: {
    alone: '{object}: nobody confirms that it is the right one before it is done, and it can not be undone.',
    himself: '{object}: {who} confirms the own hand: the other pilot has not looked.',
  },
  examples: {
    bad: '[{cue: then, who: PM, verb: set, object: fuel lever, value: "OFF"}]',
    good: '[{cue: then, who: PM, verb: call, object: fuel lever, say: confirm number two, replyBy: PF, reply: confirm}, {cue: heard "confirm", who: PM, verb: set, object: fuel lever, value: "OFF"}]',
  },
  run({ states }, report) {
    for (const [index, here] of states.entries()) {
      const { step } = here;
      if (!isFinal(step)) continue;
      const at = { step: step.id as string, field: 'object' };
      const data = { object: step.object || 'The step', who: step.who || 'the actor' };
      const before = states[index - 1];
      const asked = [here, ...(before !== undefined && before.branch === here.branch ? [before] : [])];
      if (asked.some((one) => confirmedByOther(one.step, step.who)) || ordered(here)) continue;
      const own = asked.find(({ step: one }) => CONFIRM.test(`${one.say} ${one.reply}`));
      if (own === undefined)
        report({ at, message: 'alone', data, witness: absent('reply'), read: [before?.step.id ?? ''] });
      else {
        const field = CONFIRM.test(own.step.reply) ? 'reply' : 'say';
        report({ at, message: 'himself', data, witness: wordsOf(field, own.step[field]), read: [own.step.id] });
      }
    }
  },
});

const isFinal = (step: Step): boolean =>
  HANDS.has(step.verb) &&
  (step.flags.includes('irreversible') || (THING.test(step.object) && FINAL.test(`${step.value} ${step.object}`)));

/** Asked by one, answered by another who isn't the hand; or said by the other to the hand. */
function confirmedByOther(step: Step, hand: Step['who']): boolean {
  if (CONFIRM.test(step.reply)) return step.replyBy !== '' && step.replyBy !== hand;
  const speaker = step.sayBy || step.who;
  return CONFIRM.test(step.say) && step.reply === '' && speaker !== '' && speaker !== hand;
}

/** The cue waits for the word of the other, or the other orders it with that word. */
const ordered = ({ step, gate }: StepState): boolean =>
  conjuncts(gate.gate).some((part) => part.kind === 'heard' && /\bconfirmed\b/i.test(part.words)) ||
  (CONFIRM.test(step.orderWords) && step.orderBy !== '' && step.orderBy !== step.who);
