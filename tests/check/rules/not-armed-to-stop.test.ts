import { expect } from 'vitest';
import { notArmedToStop } from '../../../lib/check/rules/not-armed-to-stop.ts';
import { testRule } from '../../kit/rule-tester.ts';

const level = { thrust: ['GOVERN'], lateral: ['ROUTE'], vertical: ['LEVEL'], armed: [] };
const press = (object: string) => ({ cue: 'event "cleared"', who: 'PF', verb: 'press', object }) as const;
const reads = { thrust: 'GOVERN', lateral: 'same', vertical: 'RATE-UP', armed: ['ALT'] } as const;

testRule(notArmedToStop, {
  valid: [
    { phases: ['climb'], entry: level, steps: [{ ...press('RATE'), expect: reads }] },
    { phases: ['climb'], entry: level, steps: [{ ...press('RATE'), checkIfNot: 'ALT not armed: PF presses LEVEL' }] },
    { phases: ['climb'], entry: level, steps: [press('HEADING')] },
    {
      phases: ['climb'],
      entry: level,
      steps: [
        press('RATE'),
        { cue: 'altitude increasing and not armed ALT', who: 'PF', verb: 'press', object: 'LEVEL' },
      ],
    },
  ],
  invalid: [
    {
      why: 'RATE away from the selected altitude',
      procedure: { phases: ['climb'], entry: level, steps: [press('RATE')] },
      findings: [
        {
          at: 's1 expect.armed',
          message: 'unarmed',
          says: 'RATE-UP, nothing armed',
          witness: { kind: 'path', says: expect.stringContaining('T17 step 1 press RATE') },
        },
      ],
    },
    {
      why: 'ASCENT with the altitude below',
      procedure: { phases: ['climb'], entry: level, steps: [press('ASCENT')] },
      findings: [{ at: 's1 expect.armed', message: 'unarmed', witness: { says: expect.stringContaining('T15') } }],
    },
    {
      why: 'DESCENT with the altitude above',
      procedure: { phases: ['descent'], entry: level, steps: [press('DESCENT')] },
      findings: [{ at: 's1 expect.armed', message: 'unarmed', witness: { says: expect.stringContaining('T16') } }],
    },
  ],
});
