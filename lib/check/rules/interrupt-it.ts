import { conjuncts } from '../../procedure/cue.ts';
import { parsedCue } from '../../procedure/parsed-cue.ts';
import type { Step } from '../../procedure/procedure.ts';
import { defineRule } from '../rule.ts';
import { inOrder } from '../witness.ts';

/** Cues that only a person who knows where the list stood can see. */
const remembered = (step: Step): boolean => {
  const parts = conjuncts(parsedCue(step.cue).gate);
  return parts.length > 0 && parts.every(({ kind }) => kind === 'then' || kind === 'after');
};

const watched = (step: Step): boolean => step.checkBy !== '' && step.checkBy !== step.who && step.checkIfNot !== '';

const words = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[,;…]/)
    .map((part) => part.trim())
    .filter(Boolean);

/** Whether a later step can't go by without somebody seeing that this one was left out. */
function catches(later: Step, missed: Step): boolean {
  if (missed.object !== '' && later.object === missed.object && (later.verb === 'check' || later.verb === 'read'))
    return true;
  const said = new Set([missed.say, missed.reply, missed.orderWords].flatMap(words));
  return conjuncts(parsedCue(later.cue).gate).some((part) => {
    if (part.kind === 'heard') return said.has(part.words.toLowerCase());
    if (part.kind === 'flaps') return missed.value === part.detent;
    if (part.kind === 'gear') return /\bgear\b/i.test(missed.object);
    if (part.kind === 'mode') return part.words.some((word) => word === missed.expect[part.axis]);
    return part.kind === 'armed' && Array.isArray(missed.expect.armed) && missed.expect.armed.includes(part.word);
  });
}

export const interruptIt = defineRule({
  id: 'interrupt-it',
  number: 97,
  severity: 'ANSWER',
  kind: 'X/S',
  stage: 'submission',
  phases: 'all',
  title: 'Interrupt it',
  says: 'When a call from outside takes a pilot away behind any step, the flight-path critical step that comes next is not lost: its own cue calls for it, the other pilot looks for it, or a later step shows that it is missing.',
  why: 'Interruptions are the norm, and what stood next in the list is what is left out after one.',
  source: { text: 'line study of cockpit interruptions and distractions, 2001', seen: true },
  needs: [],
  reads: ['cue', 'who', 'object', 'value', 'say', 'reply', 'checkBy', 'checkIfNot', 'expect', 'flags'],
  messages: {
    lost: 'A call from outside behind {before} takes {object} along: nothing but memory calls for it, nobody looks for it, and no later step shows that it is missing.',
  },
  examples: {
    bad: '[{cue: height >= 400 ft AAL, who: PM, verb: press, object: HEADING}, {cue: then, who: PM, verb: set, object: altitude selector, flags: [critical]}]',
    good: '[{cue: height >= 400 ft AAL, who: PM, verb: press, object: HEADING}, {cue: then, who: PM, verb: set, object: altitude selector, checkBy: PF, checkSees: the figure, checkIfNot: PF orders it, flags: [critical]}]',
  },
  run({ procedure }, report) {
    for (const line of [procedure.steps, ...procedure.branches.map(({ steps }) => steps)]) {
      for (const [index, step] of line.entries()) {
        const before = line[index - 1];
        if (before === undefined || !step.flags.includes('critical') || !remembered(step) || watched(step)) continue;
        if (line.slice(index + 1).some((later) => catches(later, step))) continue;
        const called = before.label || `step ${index}`;
        const object = step.object || step.say || 'the step';
        report({
          at: { step: step.id, field: 'cue' },
          message: 'lost',
          data: { before: called, object },
          witness: inOrder(
            before.id,
            step.id,
            `interrupted behind ${called}, the list goes on behind ${object}: "${step.cue}" is not seen on any display`,
          ),
        });
      }
    }
  },
});
