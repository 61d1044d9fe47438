import { branchGoesNowhere } from '../../../lib/check/rules/branch-goes-nowhere.ts';
import { testRule } from '../../kit/rule-tester.ts';

const main = [{ label: 'XX-01', cue: 'event "x"' }] as const;
const step = { cue: 'then', who: 'PM', verb: 'press', object: 'APU start' } as const;

testRule(branchGoesNowhere, {
  valid: [
    { steps: main, branches: [{ joins: 'XX-01', steps: [step] }] },
    { steps: main, branches: [{ joins: 'procedure direct-to from DT-02', steps: [step] }] },
    { why: 'it says complete', procedure: { steps: main, branches: [{ steps: [{ ...step, say: 'list complete' }] }] } },
    {
      steps: [{ label: 'XX-01', cue: 'then', branch: [{ when: 'low', to: 'XX-LOW' }] }],
      branches: [{ label: 'XX-LOW', joins: 'XX-01', steps: [step] }],
    },
  ],
  invalid: [
    {
      procedure: { steps: main, branches: [{ title: 'Start the APU', steps: [{ ...step, id: 'b' }] }] },
      findings: [
        { at: 'b joins', message: 'open', says: 'Start the APU', witness: { kind: 'absent', field: 'joins' } },
      ],
    },
    {
      procedure: { steps: main, branches: [{ joins: 'XX-09', steps: [{ ...step, id: 'b' }] }] },
      findings: [{ at: 'b joins', message: 'unknown', says: 'XX-09', witness: { quote: 'XX-09' } }],
    },
    {
      procedure: { steps: [{ label: 'XX-01', cue: 'then', branch: [{ when: 'low', to: '' }] }] },
      findings: [{ at: 'XX-01 branch', message: 'to-nowhere', witness: { quote: 'low' } }],
    },
    {
      procedure: { steps: [{ label: 'XX-01', cue: 'then', branch: [{ when: 'low', to: 'XX-LOW' }] }] },
      findings: [{ at: 'XX-01 branch', message: 'unknown', says: 'XX-LOW', witness: { quote: 'XX-LOW' } }],
    },
  ],
});
