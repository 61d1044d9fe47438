import { wetAndContaminated } from '../../../lib/check/rules/wet-and-contaminated.ts';
import { testRule } from '../../kit/rule-tester.ts';

const STATED = 'landing distance takes max reverse with credit and a tail wind of at most 5 kt';
const landing = (also: string, more: object = {}) => ({
  phases: ['landing'] as const,
  title: 'Landing with code 3',
  entry: { flaps: ['F35'], also },
  ...more,
});
const brake = (value: string, only = '') =>
  ({ cue: 'then', who: 'PM', verb: 'set', object: 'autobrake selector', value, only }) as const;

testRule(wetAndContaminated, {
  valid: [
    landing(STATED),
    landing(STATED, { steps: [brake('medium')] }),
    { why: 'more brake than asked', procedure: landing(STATED, { steps: [brake('full')] }) },
    {
      why: 'a dry runway',
      procedure: { phases: ['landing'], title: 'Landing', entry: { flaps: ['F35'] }, steps: [brake('low')] },
    },
    {
      why: 'a branch by its code',
      procedure: landing(STATED, { steps: [brake('full', 'runway wet, code 2 or less: code 2')] }),
    },
  ],
  invalid: [
    {
      why: 'scenario 7: reverse credit and tail wind not stated',
      procedure: { phases: ['landing'], title: 'Landing at QAMB', entry: { flaps: ['F35'] } },
      findings: [
        { at: ' entry.also', message: 'assumption', says: 'reverse credit', witness: { kind: 'absent' } },
        { at: ' entry.also', message: 'assumption', says: 'tail wind limit', witness: { kind: 'absent' } },
      ],
    },
    {
      why: 'a brake too weak for the code',
      procedure: landing(STATED, { steps: [brake('low')] }),
      findings: [
        { at: 's1 value', message: 'setting', says: 'autobrake low does not fit code 3', witness: { quote: 'low' } },
      ],
    },
    {
      why: 'a crosswind beyond the table',
      procedure: landing(`${STATED}; crosswind at most 25 kt`),
      findings: [{ at: ' entry.also', message: 'setting', says: 'gives 15', witness: { kind: 'text' } }],
    },
    {
      why: 'words where the code belongs',
      procedure: landing(STATED, { steps: [brake('medium', 'wet runway')] }),
      findings: [{ at: 's1 only', message: 'code', witness: { quote: 'wet runway' } }],
    },
    {
      why: 'V1 for a dry runway',
      procedure: {
        phases: ['take-off'],
        title: 'Take-off with code 3',
        entry: { flaps: ['F6'] },
        steps: [{ cue: 'then', who: 'PM', verb: 'check', object: 'take-off data', value: 'V1 for a dry runway' }],
      },
      findings: [{ at: 's1 value', message: 'v1', witness: { kind: 'text' } }],
    },
  ],
});
