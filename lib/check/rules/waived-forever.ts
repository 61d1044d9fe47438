import { monthsAfter } from '../answer.ts';
import { NOT_KNOWN, WHOLE } from '../governance.ts';
import { defineRule } from '../rule.ts';
import { inOrder, wordsOf } from '../witness.ts';

export const waivedForever = defineRule({
  id: 'waived-forever',
  number: 117,
  severity: 'ADVICE',
  kind: 'T',
  stage: 'in force',
  phases: 'all',
  title: 'Waived for ever',
  says: 'An answer ends when what its check read changes, or after the months of the policy; a waiver at its own end. Then it is asked again.',
  why: 'A reason that was good for one revision is read as good for ever: "accepted, 2021".',
  source: { text: 'drift of accepted exceptions, in general', seen: false },
  needs: ['governance', 'policy'],
  reads: [],
  messages: {
    changed: '{what} of {check} was given for what has changed since ("{reason}"): ask again.',
    over: '{what} of {check} ended on {until} ("{reason}"): ask again.',
    unused: '{what} of {check} answers nothing any more ("{reason}"): it can go.',
  },
  examples: {
    bad: '{governance: {answers: [{kind: answer, check: elastic-words, at: {step: a, field: value}, reason: accepted, on: 2021-03-01, until: null, read: x, readNow: x}]}}',
    good: '{governance: {answers: [{kind: answer, check: elastic-words, at: {step: a, field: value}, reason: the table gives the figure, on: 2026-03-01, until: null, read: x, readNow: x}]}}',
  },
  run({ governance, policy, steps, unasked }, report) {
    const { answers, today } = governance;
    if (answers === null) return unasked(NOT_KNOWN.answers, WHOLE);
    const ids = new Set(steps.map((step) => step.id as string));
    const told = new Set<string>();
    for (const { kind, check, at: place, reason, on, until, read, readNow } of answers) {
      const end = until ?? monthsAfter(on, policy.signOff.answerMonths);
      const message = readNow === null ? 'unused' : read !== readNow ? 'changed' : today > end ? 'over' : null;
      const key = `${message} ${check} ${place.step} ${place.field} ${reason}`;
      if (message === null || told.has(key)) continue;
      told.add(key);
      const data = { what: kind === 'waiver' ? 'The waiver' : 'The answer', check, reason, until: end };
      const witness = message === 'over' ? inOrder(end, today, `ended ${end}, today ${today}`) : wordsOf('why', reason);
      const at = ids.has(place.step) || place.step === '' ? place : WHOLE;
      report({ at, message, data, witness, cause: `answer ${check} ${read}`, read: [read, readNow ?? '', end] });
    }
  },
});
