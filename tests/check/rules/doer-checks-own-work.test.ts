import { doerChecksOwnWork } from '../../../lib/check/rules/doer-checks-own-work.ts';
import { testRule } from '../../kit/rule-tester.ts';

const set = {
  cue: 'then',
  who: 'PM',
  verb: 'set',
  object: 'altitude selector',
  value: 'missed-approach altitude',
  flags: ['critical'],
} as const;
const flap = {
  cue: 'speed >= VMM F6',
  who: 'PM',
  verb: 'select',
  object: 'flap lever',
  value: 'F6',
  orderBy: 'PF',
  orderWords: 'flap six',
  say: 'speed checked … six',
  checkBy: 'PF',
  checkSees: 'flaps F6 indicated',
} as const;

testRule(doerChecksOwnWork, {
  valid: [
    { steps: [{ ...set, checkBy: 'PF', checkSees: 'the figure' }] },
    { steps: [flap] },
    { why: 'not critical', procedure: { steps: [{ ...set, flags: [], checkBy: 'PM' }] } },
    {
      why: 'each on the own side, the other looks',
      procedure: { steps: [{ ...set, who: 'each', object: 'own altimeter', checkBy: 'each' }] },
    },
    { why: 'the cue is the look at the speed', procedure: { steps: [{ ...flap, say: 'six' }] } },
    {
      why: 'a look at the lever is no movement',
      procedure: { steps: [{ cue: 'then', who: 'PM', verb: 'check', object: 'flap lever' }] },
    },
  ],
  invalid: [
    {
      procedure: { steps: [set] },
      findings: [{ at: 's1 checkBy', message: 'nobody', witness: { kind: 'absent', field: 'checkBy' } }],
    },
    {
      procedure: { steps: [{ ...set, checkBy: 'PM' }] },
      findings: [{ at: 's1 checkBy', message: 'himself', witness: { quote: 'PM' } }],
    },
    {
      procedure: { steps: [{ ...flap, orderWords: '' }] },
      findings: [{ at: 's1 orderWords', message: 'no-order', says: 'flap lever', witness: { kind: 'absent' } }],
    },
    {
      procedure: { steps: [{ ...flap, cue: 'heard "flap six"', say: 'six' }] },
      findings: [{ at: 's1 say', message: 'no-look', witness: { kind: 'absent' } }],
    },
    {
      procedure: { steps: [{ ...flap, object: 'gear lever', value: 'UP', checkSees: '' }] },
      findings: [{ at: 's1 checkSees', message: 'no-indication', says: 'gear lever', witness: { kind: 'absent' } }],
    },
  ],
});
