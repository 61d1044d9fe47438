import { governanceOn, type TemporaryRevision } from '../../../lib/check/governance.ts';
import { trExpiredOrClashing } from '../../../lib/check/rules/tr-expired-or-clashing.ts';
import { testRule } from '../../kit/rule-tester.ts';

const procedure = {
  steps: [
    { label: 'GA-07', cue: 'then' },
    { label: 'GA-08', cue: 'then' },
  ],
};
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

testRule(trExpiredOrClashing, {
  valid: [
    { why: 'none', procedure, facts: facts() },
    { why: 'one, live', procedure, facts: facts({}) },
    { why: 'two on two steps', procedure, facts: facts({}, { name: '13', step: 'GA-08' }) },
    { why: 'looked at again for this issue', procedure, facts: facts({ parentIssue: 7 }) },
    { why: 'ends today', procedure, facts: facts({ expires: '2026-11-25' }) },
  ],
  invalid: [
    {
      why: 'over',
      procedure,
      facts: facts({ expires: '2026-11-24' }),
      findings: [{ at: 'GA-07 object', message: 'expired', says: '2026-11-24', witness: { first: '2026-11-24' } }],
    },
    {
      why: 'without end and parent',
      procedure,
      facts: facts({ expires: null, parentIssue: null }),
      findings: [
        { at: 'GA-07 object', message: 'orphan', witness: { kind: 'absent' } },
        { at: 'GA-07 object', message: 'endless', witness: { kind: 'absent' } },
      ],
    },
    {
      why: 'made for an older issue',
      procedure,
      facts: facts({ parentIssue: 7, validatedFor: 7 }),
      findings: [{ at: 'GA-07 object', message: 'stale', says: 'issue 7', witness: { first: '7', second: '8' } }],
    },
    {
      why: 'two on one step',
      procedure,
      facts: facts({}, { name: '13' }),
      findings: [{ at: 'GA-07 object', message: 'clash', says: 'TR 12 and TR 13', witness: { first: '12' } }],
    },
    {
      why: 'its step is gone',
      procedure,
      facts: facts({ step: 'GA-99', expires: '2026-01-01' }),
      findings: [{ at: ' title', message: 'expired', witness: { kind: 'order' } }],
    },
  ],
  missing: [{ procedure, because: 'the table of temporary revisions was not given' }],
});
