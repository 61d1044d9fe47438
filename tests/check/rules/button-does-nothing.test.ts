import { expect } from 'vitest';
import { buttonDoesNothing } from '../../../lib/check/rules/button-does-nothing.ts';
import { testRule } from '../../kit/rule-tester.ts';

const climb = { thrust: ['CLIMB'], lateral: ['ROUTE'], vertical: ['ASCENT'], armed: ['ALT'] };
const press = (object: string, cue = 'event "now"') => ({ cue, who: 'PF', verb: 'press', object }) as const;

testRule(buttonDoesNothing, {
  valid: [
    { phases: ['climb'], entry: climb, steps: [press('LEVEL')] },
    { phases: ['climb'], entry: climb, steps: [press('ASCENT', 'vertical = ASCENT')] },
    { phases: ['climb'], entry: climb, steps: [press('RATE', 'vertical = ASCENT'), press('ASCENT', 'then')] },
    { phases: ['climb'], entry: climb, steps: [press('landing lights')] },
  ],
  invalid: [
    {
      why: 'a go-around switch that is dead once the ground spoilers are out',
      procedure: {
        phases: ['landing'],
        entry: { thrust: ['IDLE'], lateral: ['COURSE'], vertical: ['FLARE'], armed: [] },
        steps: [press('GO-AROUND switch')],
      },
      findings: [
        {
          at: 's1 object',
          message: 'ignored',
          says: 'GO-AROUND switch does nothing in IDLE · COURSE · FLARE',
          witness: { kind: 'path', says: expect.stringContaining('T14 step 1 press GO-AROUND switch') },
        },
      ],
    },
    {
      why: 'ASCENT inside the capture window',
      procedure: { phases: ['climb'], entry: climb, steps: [press('ASCENT', 'vertical = CAPTURE')] },
      findings: [
        {
          at: 's1 object',
          message: 'ignored',
          witness: { says: expect.stringContaining('T22 inside capture window with ALT armed > step 1 press ASCENT') },
        },
      ],
    },
    {
      why: 'CONTOUR without ROUTE',
      procedure: {
        phases: ['descent'],
        entry: { thrust: ['IDLE'], lateral: ['HEADING'], vertical: ['DESCENT'], armed: ['ALT'] },
        steps: [press('CONTOUR')],
      },
      findings: [
        { at: 's1 object', message: 'ignored', witness: { says: expect.stringContaining('standards A and B') } },
      ],
    },
  ],
});
