import { expect } from 'vitest';
import { silentReversion } from '../../../lib/check/rules/silent-reversion.ts';
import { testRule } from '../../kit/rule-tester.ts';

import { tn182 } from '../../kit/world.ts';

const contour = { thrust: ['GOVERN'], lateral: ['ROUTE'], vertical: ['CONTOUR'], armed: ['ALT'] };
const press = (object: string) => ({ cue: 'event "heading assigned"', who: 'PF', verb: 'press', object }) as const;
const { reversions: _, ...silent } = tn182.modes;

testRule(silentReversion, {
  valid: [
    { phases: ['descent'], entry: contour, steps: [{ ...press('HEADING'), expectNote: 'RATE-DN follows' }] },
    {
      phases: ['descent'],
      entry: contour,
      steps: [press('HEADING'), { cue: 'vertical = RATE-DN', who: 'PM', verb: 'read', object: 'mode line' }],
    },
    { phases: ['descent'], entry: { ...contour, vertical: ['LEVEL'], armed: [] }, steps: [press('HEADING')] },
  ],
  invalid: [
    {
      why: 'HEADING pressed in CONTOUR',
      procedure: { phases: ['descent'], entry: contour, steps: [press('HEADING')] },
      findings: [
        {
          at: 's1 expectNote',
          message: 'unnamed',
          says: 'RATE-DN by itself on standards A and B (lateral leaves ROUTE)',
          witness: { kind: 'path', says: expect.stringContaining('> lateral leaves ROUTE: RATE-DN') },
        },
      ],
    },
    {
      why: 'RATE, which gives the speed away',
      procedure: {
        phases: ['climb'],
        entry: { thrust: ['GOVERN'], lateral: ['ROUTE'], vertical: ['LEVEL'], armed: [] },
        steps: [press('RATE')],
      },
      findings: [{ at: 's1 expectNote', message: 'unnamed', says: 'ASCENT', witness: { kind: 'path' } }],
    },
    {
      why: 'CONTOUR pressed: above the limit the guidance goes to DESCENT',
      procedure: {
        phases: ['descent'],
        entry: { thrust: ['GOVERN'], lateral: ['ROUTE'], vertical: ['LEVEL'], armed: [] },
        steps: [press('CONTOUR')],
      },
      findings: [{ at: 's1 expectNote', message: 'unnamed', says: 'DESCENT', witness: { kind: 'path' } }],
    },
  ],
  missing: [
    {
      procedure: { phases: ['descent'], entry: contour, steps: [press('HEADING')] },
      facts: { sheet: { ...tn182, modes: silent } },
      because: 'which rules are reversions',
    },
  ],
});
