import { expect } from 'vitest';
import { handOverGap } from '../../../lib/check/rules/hand-over-gap.ts';
import { testRule } from '../../kit/rule-tester.ts';

const climb = { thrust: ['CLIMB'], lateral: ['ROUTE'], vertical: ['ASCENT'], armed: ['ALT'] };
const read = { cue: 'altitude >= 5 000 ft MSL', who: 'PM', verb: 'read', object: 'mode line' } as const;
const level = { thrust: ['GOVERN'], lateral: ['ROUTE'], vertical: ['LEVEL'], armed: [] };

testRule(handOverGap, {
  valid: [
    { phases: ['climb'], entry: climb, exit: level, steps: [read] },
    { phases: ['climb'], entry: climb, exit: climb, steps: [read] },
    { phases: ['climb'], entry: level, exit: level, steps: [read] },
  ],
  invalid: [
    {
      why: 'it ends in the climb, and the exit promises a glidepath',
      procedure: { phases: ['climb'], entry: climb, exit: { vertical: ['GLIDE'] }, steps: [read] },
      findings: [
        { at: ' exit.vertical', message: 'exit', says: 'standard A', witness: { kind: 'path' } },
        {
          at: ' exit.vertical',
          message: 'exit',
          says: 'standard B',
          witness: { kind: 'path', says: expect.stringContaining('step 1 read mode line') },
        },
      ],
    },
    {
      why: 'LEVEL with the levers latched: no such state on either standard',
      procedure: { phases: ['climb'], entry: { ...level, thrust: ['LATCHED'] }, exit: level, steps: [read] },
      findings: [
        { at: ' entry.vertical', message: 'entry', says: 'standard A', witness: { kind: 'absent' } },
        { at: ' entry.vertical', message: 'entry', says: 'standard B', witness: { kind: 'absent' } },
      ],
    },
    {
      why: 'one standard',
      procedure: {
        phases: ['climb'],
        effectivity: { type: 'TN-182', standards: ['B'], note: '' },
        entry: climb,
        exit: { vertical: ['FLARE'] },
        steps: [read],
      },
      findings: [{ at: ' exit.vertical', message: 'exit', says: 'standard B', witness: { kind: 'path' } }],
    },
  ],
  missing: [
    {
      procedure: { phases: ['climb'], entry: climb, exit: level, leavesTo: ['holding'], steps: [read] },
      because: 'holding',
    },
  ],
});
