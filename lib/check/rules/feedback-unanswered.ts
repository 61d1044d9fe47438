import { daysBetween, NOT_KNOWN, WHOLE } from '../governance.ts';
import { defineRule } from '../rule.ts';
import { inOrder } from '../witness.ts';

export const feedbackUnanswered = defineRule({
  id: 'feedback-unanswered',
  number: 118,
  severity: 'ADVICE',
  kind: 'T',
  stage: 'submission',
  phases: 'all',
  title: 'Feedback unanswered',
  says: 'What the line reported on a step is answered before the step is submitted again, at the latest after the days of the policy.',
  why: 'Who reports that a step does not work and hears nothing reports no more.',
  source: { text: 'confidential reporting, common practice', seen: false },
  needs: ['governance', 'policy'],
  reads: [],
  messages: {
    one: 'A report on {step} has waited {days} days for an answer: it may be about just this change.',
    several:
      '{count} reports on {step} wait for an answer, the oldest for {days} days: they may be about just this change.',
  },
  examples: {
    bad: '{steps: [{label: GA-07, cue: then}], governance: {feedback: [{step: GA-07, on: 2026-09-01, answered: false}, {step: GA-07, on: 2026-09-20, answered: false}, {step: GA-07, on: 2026-10-02, answered: false}]}}',
    good: '{steps: [{label: GA-07, cue: then}], governance: {feedback: [{step: GA-07, on: 2026-09-01, answered: true}, {step: GA-07, on: 2026-11-20, answered: false}]}}',
  },
  run({ governance, policy, steps, unasked }, report) {
    const { feedback, today } = governance;
    if (feedback === null) return unasked(NOT_KNOWN.feedback, WHOLE);
    const waits = new Map<string, string[]>();
    for (const { step, on, answered } of feedback) {
      if (answered || daysBetween(on, today) <= policy.signOff.feedbackDays) continue;
      waits.set(step, [...(waits.get(step) ?? []), on]);
    }
    for (const [id, days] of waits) {
      const step = steps.find((one) => one.id === id);
      const at = step === undefined ? WHOLE : { step: id, field: 'object' };
      const oldest = [...days].sort()[0]!;
      const name = step === undefined ? 'a step that is gone' : step.label || 'this step';
      const data = { step: name, count: days.length, days: daysBetween(oldest, today) };
      const witness = inOrder(oldest, today, `${days.length} unanswered, the oldest of ${oldest}; today is ${today}`);
      const read = [policy.signOff.feedbackDays, ...days];
      report({ at, message: days.length === 1 ? 'one' : 'several', data, witness, cause: `feedback ${id}`, read });
    }
  },
});
