import { governanceOn, type TemporaryRevision } from '../../../lib/check/governance.ts';
import { trLost } from '../../../lib/check/rules/tr-lost.ts';
import { testRule } from '../../kit/rule-tester.ts';

const procedure = { steps: [{ label: 'GA-07', cue: 'then' }] };
const tr: TemporaryRevision = {
  name: '12',
  step: 'GA-07',
  parentIssue: 8,
  expires: '2026-12-31',
  validatedFor: 8,
  fate: null,
};
const facts = (...list: Partial<TemporaryRevision>[]) => ({
  governance: governanceOn('2026-11-25', { revisions: { issue: 8, list: list.map((one) => ({ ...tr, ...one })) } }),
});

testRule(trLost, {
  valid: [
    { why: 'none', procedure, facts: facts() },
    { why: 'absorbed', procedure, facts: facts({ fate: { how: 'absorbed', says: 'in GA-07' } }) },
    { why: 'kept', procedure, facts: facts({ fate: { how: 'kept', says: 'on GA-07 as before' } }) },
    { why: 'cancelled', procedure, facts: facts({ fate: { how: 'cancelled', says: 'the gauge is mended' } }) },
    { why: 'over already', procedure, facts: facts({ expires: '2026-11-24' }) },
  ],
  invalid: [
    {
      why: 'dropped in silence',
      procedure,
      facts: facts({}),
      findings: [{ at: 'GA-07 object', message: 'dropped', says: 'TR 12', witness: { kind: 'absent' } }],
    },
    {
      why: 'one of two dropped, and one without end',
      procedure,
      facts: facts({ fate: { how: 'kept', says: 'as before' } }, { name: '13', expires: null }),
      findings: [{ at: 'GA-07 object', message: 'dropped', says: 'no day', witness: { kind: 'absent' } }],
    },
    {
      why: 'absorbed, but where',
      procedure,
      facts: facts({ fate: { how: 'absorbed', says: ' ' } }),
      findings: [{ at: 'GA-07 object', message: 'unsaid', says: 'not where', witness: { kind: 'absent' } }],
    },
    {
      why: 'kept on a step that is gone',
      procedure,
      facts: facts({ step: 'GA-99', fate: { how: 'kept', says: 'as before' } }),
      findings: [{ at: ' title', message: 'no-step', witness: { first: 'GA-99' } }],
    },
  ],
  missing: [{ procedure, because: 'the table of temporary revisions was not given' }],
});
