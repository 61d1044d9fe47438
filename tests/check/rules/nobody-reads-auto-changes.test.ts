import { expect } from 'vitest';
import { nobodyReadsAutoChanges } from '../../../lib/check/rules/nobody-reads-auto-changes.ts';
import { testRule } from '../../kit/rule-tester.ts';

const climb = { thrust: ['CLIMB'], lateral: ['ROUTE'], vertical: ['ASCENT'], armed: ['ALT'] };
const read = (cue: string, say = '') => ({ cue, who: 'PM', verb: 'read', object: 'mode line', say }) as const;
const fuel = { cue: 'event "top of climb"', who: 'PM', verb: 'check', object: 'fuel' } as const;

testRule(nobodyReadsAutoChanges, {
  valid: [
    {
      phases: ['climb'],
      entry: climb,
      steps: [read('vertical = CAPTURE', 'capture'), read('vertical = LEVEL', 'level')],
    },
    {
      phases: ['climb'],
      entry: climb,
      steps: [
        { ...fuel, say: 'govern, capture' },
        { ...fuel, reply: 'level', replyBy: 'PF' },
      ],
    },
    { phases: ['climb'], entry: { ...climb, vertical: ['LEVEL'], thrust: ['GOVERN'] }, steps: [fuel] },
  ],
  invalid: [
    {
      why: 'a level-off that nobody reads',
      procedure: { phases: ['climb'], entry: climb, steps: [fuel] },
      findings: [
        {
          at: 's1 expect.vertical',
          message: 'unread',
          says: 'CAPTURE',
          witness: { kind: 'path', says: expect.stringContaining('T22') },
        },
        {
          at: 's1 expect.vertical',
          message: 'unread',
          says: 'LEVEL',
          witness: { kind: 'path', says: expect.stringContaining('T23') },
        },
      ],
    },
    {
      why: 'only the second change is read',
      procedure: { phases: ['climb'], entry: climb, steps: [fuel, read('vertical = LEVEL')] },
      findings: [{ at: 's1 expect.vertical', message: 'unread', says: 'CAPTURE', witness: { kind: 'path' } }],
    },
    {
      why: 'the glidepath captured, and the flare',
      procedure: {
        phases: ['approach'],
        entry: { thrust: ['GOVERN'], lateral: ['COURSE'], vertical: ['LEVEL'], armed: ['GLIDE'] },
        steps: [{ ...fuel, say: 'flare' }],
      },
      findings: [{ at: 's1 expect.vertical', message: 'unread', says: 'GLIDE', witness: { kind: 'path' } }],
    },
  ],
});
