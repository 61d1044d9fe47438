import { type Feedback, governanceOn } from '../../../lib/check/governance.ts';
import { feedbackUnanswered } from '../../../lib/check/rules/feedback-unanswered.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { housePolicy } from '../../kit/world.ts';

const procedure = {
  steps: [
    { label: 'GA-07', cue: 'then' },
    { label: 'GA-08', cue: 'then' },
  ],
};
const report: Feedback = { step: 'GA-07', on: '2026-09-01', answered: false };
const facts = (...feedback: Partial<Feedback>[]) => ({
  governance: governanceOn('2026-11-25', { feedback: feedback.map((one) => ({ ...report, ...one })) }),
});
const quicker = { ...housePolicy, signOff: { ...housePolicy.signOff, feedbackDays: 5 } };

testRule(feedbackUnanswered, {
  valid: [
    { why: 'none', procedure, facts: facts() },
    { why: 'answered', procedure, facts: facts({ answered: true }) },
    { why: 'young', procedure, facts: facts({ on: '2026-11-20' }) },
  ],
  invalid: [
    {
      why: 'three on one step',
      procedure,
      facts: facts({}, { on: '2026-08-26' }, { on: '2026-10-01' }),
      findings: [
        { at: 'GA-07 object', message: 'several', says: '3 reports on GA-07', witness: { first: '2026-08-26' } },
      ],
    },
    {
      why: 'one, in a house that answers within five days',
      procedure,
      facts: { ...facts({ on: '2026-11-19' }), policy: quicker },
      findings: [{ at: 'GA-07 object', message: 'one', says: '6 days', witness: { second: '2026-11-25' } }],
    },
    {
      why: 'on two steps, one of them gone',
      procedure,
      facts: facts({ step: 'GA-08' }, { step: 'GA-99' }),
      findings: [
        { at: ' title', message: 'one', says: 'a step that is gone', witness: { kind: 'order' } },
        { at: 'GA-08 object', message: 'one', witness: { kind: 'order' } },
      ],
    },
  ],
  missing: [{ procedure, because: 'the feedback of the line was not given' }],
});
