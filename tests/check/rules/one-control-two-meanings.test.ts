import { expect } from 'vitest';
import { oneControlTwoMeanings } from '../../../lib/check/rules/one-control-two-meanings.ts';
import { testRule } from '../../kit/rule-tester.ts';

const both = { thrust: ['IDLE', 'CLIMB'], lateral: ['ROUTE'], vertical: ['DESCENT', 'ASCENT'], armed: ['ALT'] };
const press = (object: string, cue = 'event "rate assigned"') => ({ cue, who: 'PF', verb: 'press', object }) as const;

testRule(oneControlTwoMeanings, {
  valid: [
    { phases: ['descent'], entry: both, steps: [press('RATE', 'event "rate assigned" and vertical = DESCENT')] },
    { phases: ['descent'], entry: both, steps: [{ ...press('RATE'), expect: { vertical: ['RATE-UP', 'RATE-DN'] } }] },
    { phases: ['descent'], entry: { ...both, vertical: ['DESCENT'], thrust: ['IDLE'] }, steps: [press('LEVEL')] },
    { phases: ['descent'], entry: both, steps: [{ ...press('RATE'), only: 'vertical = DESCENT' }] },
  ],
  invalid: [
    {
      why: 'RATE gives minus from DESCENT, plus from ASCENT',
      procedure: { phases: ['descent'], entry: both, steps: [press('RATE')] },
      findings: [
        {
          at: 's1 cue',
          message: 'both',
          says: 'RATE',
          witness: { kind: 'path', says: expect.stringContaining('T17') },
        },
      ],
    },
    {
      why: 'a judgement says nothing of the mode line',
      procedure: { phases: ['descent'], entry: both, steps: [press('RATE', 'judged "closing fast"')] },
      findings: [{ at: 's1 cue', message: 'both', witness: { kind: 'path' } }],
    },
    {
      why: 'one of the two results read',
      procedure: {
        phases: ['descent'],
        entry: { ...both, vertical: ['CONTOUR', 'ASCENT'], thrust: ['GOVERN', 'CLIMB'] },
        steps: [press('RATE')],
      },
      findings: [{ at: 's1 cue', message: 'both', witness: { kind: 'path' } }],
    },
  ],
});
