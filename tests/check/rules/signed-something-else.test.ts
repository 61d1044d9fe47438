import { governanceOn, type Signing } from '../../../lib/check/governance.ts';
import { signedSomethingElse } from '../../../lib/check/rules/signed-something-else.ts';
import { testRule } from '../../kit/rule-tester.ts';

const good: Signing = {
  drafters: ['reth'],
  recommendedBy: 'maddock',
  signedBy: 'harrow',
  waivers: [],
  signedHash: '1f0a',
  publishedHash: '1f0a',
  recorded: { sheet: 'A', checkSet: '84 checks', policy: '3' },
  issue: 4,
};
const facts = (signing: Partial<Signing>) => ({
  governance: governanceOn('2026-11-25', { signing: { ...good, ...signing } }),
});
const at = ' title';

testRule(signedSomethingElse, {
  valid: [
    { why: 'the same bytes', procedure: {}, facts: facts({}) },
    { why: 'a first issue', procedure: {}, facts: facts({ issue: 1 }) },
    { why: 'who signs is no matter of this check', procedure: {}, facts: facts({ signedBy: 'reth' }) },
  ],
  invalid: [
    {
      why: 'mended after the signature',
      procedure: {},
      facts: facts({ publishedHash: '77c2' }),
      findings: [{ at, message: 'other-content', witness: { first: '1f0a', second: '77c2' } }],
    },
    {
      why: 'no sheet and no policy recorded',
      procedure: {},
      facts: facts({ recorded: { ...good.recorded, sheet: null, policy: null } }),
      findings: [
        { at, message: 'not-recorded', says: 'policy', witness: { kind: 'absent' } },
        { at, message: 'not-recorded', says: 'sheet', witness: { kind: 'absent' } },
      ],
    },
    {
      why: 'the number was there before',
      procedure: {},
      facts: facts({ issue: null }),
      findings: [{ at, message: 'no-number', witness: { kind: 'absent' } }],
    },
  ],
  missing: [{ procedure: {}, because: 'the sign-offs of this text were not given' }],
});
