import { type Difference, type DifferenceRow, governanceOn } from '../../../lib/check/governance.ts';
import { differsFromManufacturer } from '../../../lib/check/rules/differs-from-manufacturer.ts';
import type { StepParts } from '../../../lib/procedure/build.ts';
import { testRule } from '../../kit/rule-tester.ts';

const read: StepParts = { id: 'a', cue: 'then', who: 'PM', verb: 'read', object: 'mode line' };
const critical: StepParts = { ...read, flags: ['critical'] };
const differs: Difference = {
  step: 'a',
  what: 'order',
  source: 'TN-182 data B',
  theirs: 'before the gear',
  limit: false,
};
const row: DifferenceRow = { step: 'a', family: '', reason: 'heard better', risk: 'read 2 s later', acceptedBy: 'p3' };
const facts = (found: readonly Difference[], register: readonly DifferenceRow[] = []) => ({
  governance: governanceOn('2026-11-25', { differences: { found, register } }),
});

testRule(differsFromManufacturer, {
  valid: [
    { why: 'no difference', procedure: { steps: [critical] }, facts: facts([]) },
    { why: 'a row for the step', procedure: { steps: [critical] }, facts: facts([differs], [row]) },
    {
      why: 'a row for the family',
      procedure: { steps: [{ ...critical, family: 'mode-read' }] },
      facts: facts([differs], [{ ...row, step: '', family: 'mode-read' }]),
    },
    { why: 'a row that is not needed', procedure: { steps: [critical] }, facts: facts([], [row]) },
  ],
  invalid: [
    {
      why: 'a critical step',
      procedure: { steps: [critical] },
      facts: facts([differs]),
      findings: [{ at: 'a object', message: 'unregistered', says: 'before the gear', witness: { kind: 'order' } }],
    },
    {
      why: 'a limit of a step that is not critical',
      procedure: { steps: [read] },
      facts: facts([{ ...differs, what: 'value', limit: true }]),
      findings: [
        { at: 'a value', message: 'unregistered', witness: { says: 'value: TN-182 data B says "before the gear"' } },
      ],
    },
    {
      why: 'a step left out',
      procedure: { steps: [read] },
      facts: facts([{ ...differs, step: '', what: 'omitted' }]),
      findings: [{ at: ' title', message: 'unregistered', witness: { kind: 'order' } }],
    },
    {
      why: 'once for a family',
      procedure: {
        steps: [
          { ...read, family: 'mode-read' },
          { ...read, id: 'b', family: 'mode-read' },
        ],
      },
      facts: facts([differs, { ...differs, step: 'b' }]),
      findings: [{ at: 'a object', message: 'family', witness: { first: 'a' } }],
    },
    {
      why: 'a row that nobody accepted',
      procedure: { steps: [critical] },
      facts: facts([differs], [{ ...row, risk: '', acceptedBy: '' }]),
      findings: [
        { at: 'a object', message: 'thin-row', says: 'the risk note and who accepted it', witness: { first: 'a' } },
      ],
    },
  ],
  missing: [{ procedure: { steps: [critical] }, because: 'the difference register were not given' }],
});
