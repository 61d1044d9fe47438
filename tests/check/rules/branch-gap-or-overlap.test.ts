import { branchGapOrOverlap } from '../../../lib/check/rules/branch-gap-or-overlap.ts';
import { testRule } from '../../kit/rule-tester.ts';

const decide = (...ways: readonly (readonly [string, string])[]) => ({
  steps: [
    {
      cue: 'then',
      who: 'PF',
      verb: 'decide',
      object: 'way',
      branch: ways.map(([when, to]) => ({ when, to })),
    } as const,
  ],
});

testRule(branchGapOrOverlap, {
  valid: [
    decide(['weight >= 60 t', 'a'], ['weight < 60 t', 'b']),
    decide(['weight < 60 000 kg', 'a'], ['weight between 60 t and 70 t', 'b'], ['weight > 70 t', 'c']),
    decide(['weight > 60 t', 'a'], ['otherwise', 'b']),
    decide(['lateral = ROUTE', 'a'], ['lateral = HEADING', 'b']),
    decide(['weight > 60 t', 'a']),
  ],
  invalid: [
    {
      procedure: decide(['weight > 60 t', 'a'], ['weight < 60 t', 'b']),
      findings: [
        { at: 's1 branch', message: 'gap', says: 'at exactly 60 000 kg', witness: { kind: 'text', field: 'branch' } },
      ],
    },
    {
      procedure: decide(['weight >= 60 t', 'a'], ['weight <= 60 t', 'b']),
      findings: [{ at: 's1 branch', message: 'overlap', says: 'at exactly', witness: { kind: 'text' } }],
    },
    {
      procedure: decide(['weight >= 65 t', 'a'], ['weight < 60 t', 'b']),
      findings: [
        { at: 's1 branch', message: 'gap', says: 'between 60 000 kg and 65 000 kg', witness: { kind: 'text' } },
      ],
    },
    {
      procedure: decide(['lateral = ROUTE / HEADING', 'a'], ['lateral = HEADING', 'b']),
      findings: [
        { at: 's1 branch', message: 'twice', says: 'HEADING leads both to a and to b', witness: { kind: 'text' } },
      ],
    },
    {
      procedure: decide(['weight between 50 t and 60 t', 'a'], ['weight > 60 t', 'b']),
      findings: [{ at: 's1 branch', message: 'gap', says: 'below 50 000 kg', witness: { kind: 'text' } }],
    },
  ],
  missing: [{ procedure: decide(['spoilers in', 'a'], ['spoilers out', 'b']), because: 'conditions in words' }],
});
