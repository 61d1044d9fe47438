import { governanceOn, type Signing, type WaiverFact } from '../../../lib/check/governance.ts';
import { samePerson } from '../../../lib/check/rules/same-person.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { housePolicy } from '../../kit/world.ts';

const waiver: WaiverFact = {
  check: 'flap-above-limit',
  by: 'maddock',
  standardsCaptain: true,
  reason: 'a placard stands until the new gauge is in',
  until: '2026-12-31',
  shownToSigner: true,
};
const good: Signing = {
  drafters: ['reth', 'wenning'],
  recommendedBy: 'maddock',
  signedBy: 'harrow',
  waivers: [],
  signedHash: 'a',
  publishedHash: 'a',
  recorded: { sheet: 'A', checkSet: 'c', policy: '1' },
  issue: 4,
};
const facts = (signing: Partial<Signing>) => ({
  governance: governanceOn('2026-11-25', { signing: { ...good, ...signing } }),
});
const waived = (...changed: Partial<WaiverFact>[]) => facts({ waivers: changed.map((one) => ({ ...waiver, ...one })) });
const small = { ...housePolicy, signOff: { ...housePolicy.signOff, people: 2 } };
const at = ' title';

testRule(samePerson, {
  valid: [
    { why: 'three people', procedure: {}, facts: facts({}) },
    { why: 'a waiver as it should be', procedure: {}, facts: waived({}) },
    { why: 'a waiver of today', procedure: {}, facts: waived({ until: '2026-11-25' }) },
    {
      why: 'a small operator: two people',
      procedure: {},
      facts: { ...facts({ recommendedBy: 'harrow' }), policy: small },
    },
  ],
  invalid: [
    {
      why: 'who drafted signs, however small the operator',
      procedure: {},
      facts: { ...facts({ signedBy: 'wenning' }), policy: small },
      findings: [{ at, message: 'drafter-signs', witness: { first: 'wenning' } }],
    },
    {
      why: 'who drafted recommends',
      procedure: {},
      facts: facts({ recommendedBy: 'reth' }),
      findings: [{ at, message: 'drafter-recommends', witness: { kind: 'order' } }],
    },
    {
      why: 'who recommends signs',
      procedure: {},
      facts: facts({ recommendedBy: 'harrow' }),
      findings: [
        {
          at,
          message: 'recommender-signs',
          witness: { says: 'drafted by reth, wenning; recommended by harrow; signed by harrow' },
        },
      ],
    },
    {
      why: 'nobody recommends',
      procedure: {},
      facts: facts({ recommendedBy: null }),
      findings: [{ at, message: 'unreviewed', witness: { kind: 'order' } }],
    },
    {
      why: 'the own STOP waived',
      procedure: {},
      facts: waived({ by: 'reth', standardsCaptain: false }),
      findings: [{ at, message: 'own-waiver', says: 'flap-above-limit', witness: { first: 'reth' } }],
    },
    {
      why: 'waived by the signer',
      procedure: {},
      facts: waived({ by: 'harrow' }),
      findings: [{ at, message: 'own-waiver', witness: { second: 'harrow' } }],
    },
    {
      why: 'waived by no captain, without reason and end',
      procedure: {},
      facts: waived({ by: 'osk', standardsCaptain: false, reason: ' ', until: null }),
      findings: [
        { at, message: 'no-captain', witness: { first: 'osk' } },
        { at, message: 'bare', says: 'no reason and no expiry', witness: { first: 'osk' } },
      ],
    },
    {
      why: 'a waiver that is over and was hidden',
      procedure: {},
      facts: waived({ until: '2026-11-24', shownToSigner: false }),
      findings: [
        { at, message: 'over', says: '2026-11-24', witness: { first: 'maddock' } },
        { at, message: 'hidden', witness: { first: 'maddock' } },
      ],
    },
  ],
  missing: [{ procedure: {}, because: 'the sign-offs of this text were not given' }],
});
