import { governanceOn, type StandingAnswer } from '../../../lib/check/governance.ts';
import { waivedForever } from '../../../lib/check/rules/waived-forever.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { housePolicy } from '../../kit/world.ts';

const procedure = { steps: [{ id: 'a', cue: 'then' }] };
const answer: StandingAnswer = {
  kind: 'answer',
  check: 'elastic-words',
  at: { step: 'a', field: 'value' },
  reason: 'the table gives the figure',
  on: '2026-03-01',
  until: null,
  read: 'x',
  readNow: 'x',
};
const facts = (...answers: Partial<StandingAnswer>[]) => ({
  governance: governanceOn('2026-11-25', { answers: answers.map((one) => ({ ...answer, ...one })) }),
});
const longer = { ...housePolicy, signOff: { ...housePolicy.signOff, answerMonths: 36 } };

testRule(waivedForever, {
  valid: [
    { why: 'none', procedure, facts: facts() },
    { why: 'fresh', procedure, facts: facts({}) },
    {
      why: 'a waiver until its day',
      procedure,
      facts: facts({ kind: 'waiver', on: '2020-01-01', until: '2026-11-25' }),
    },
    { why: 'the house gives three years', procedure, facts: { ...facts({ on: '2024-01-01' }), policy: longer } },
  ],
  invalid: [
    {
      why: 'accepted, 2021',
      procedure,
      facts: facts({ on: '2021-03-01', reason: 'accepted' }),
      findings: [{ at: 'a value', message: 'over', says: 'ended on 2022-03-01', witness: { second: '2026-11-25' } }],
    },
    {
      why: 'what it was about has changed',
      procedure,
      facts: facts({ readNow: 'y' }),
      findings: [{ at: 'a value', message: 'changed', witness: { quote: 'the table gives the figure' } }],
    },
    {
      why: 'a waiver after its day',
      procedure,
      facts: facts({ kind: 'waiver', until: '2026-11-24' }),
      findings: [{ at: 'a value', message: 'over', says: 'The waiver', witness: { first: '2026-11-24' } }],
    },
    {
      why: 'nothing left to answer, and its step is gone',
      procedure,
      facts: facts({ readNow: null, at: { step: 'z', field: 'value' } }),
      findings: [{ at: ' title', message: 'unused', witness: { kind: 'text' } }],
    },
  ],
  missing: [{ procedure, because: 'the answers and waivers were not given' }],
});
