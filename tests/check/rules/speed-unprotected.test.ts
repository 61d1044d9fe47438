import { expect } from 'vitest';
import { speedUnprotected } from '../../../lib/check/rules/speed-unprotected.ts';
import { testRule } from '../../kit/rule-tester.ts';

import { tn182 } from '../../kit/world.ts';

const descent = { thrust: ['IDLE'], lateral: ['ROUTE'], vertical: ['DESCENT'], armed: ['ALT'] };
const brake = { cue: 'speed >= 280 kt', who: 'PF', verb: 'set', object: 'speedbrake', value: 'out' } as const;
const { unprotected: _, ...silent } = tn182.modes;

testRule(speedUnprotected, {
  valid: [
    { phases: ['descent'], entry: descent, steps: [{ ...brake, checkIfNot: 'PF thrust by hand' }] },
    {
      phases: ['descent'],
      entry: descent,
      steps: [
        brake,
        { cue: 'then', who: 'PF', verb: 'disengage', object: 'autothrust', note: 'autothrust off and on' },
      ],
    },
    { phases: ['descent'], entry: descent, steps: [{ ...brake, value: 'in' }] },
    { phases: ['descent'], entry: { ...descent, thrust: ['MANUAL'] }, steps: [brake] },
  ],
  invalid: [
    {
      why: 'speedbrake out in DESCENT latches the levers at idle',
      procedure: { phases: ['descent'], entry: descent, steps: [brake] },
      findings: [
        {
          at: 's1 checkIfNot',
          message: 'nobody',
          says: 'LATCHED · ROUTE · DESCENT',
          witness: { kind: 'path', says: expect.stringContaining('T28 step 1 set speedbrake') },
        },
      ],
    },
    {
      why: 'on a heading',
      procedure: { phases: ['descent'], entry: { ...descent, lateral: ['HEADING'] }, steps: [brake] },
      findings: [{ at: 's1 checkIfNot', message: 'nobody', witness: { kind: 'path' } }],
    },
    {
      why: 'the next step speaks of something else',
      procedure: {
        phases: ['descent'],
        entry: descent,
        steps: [brake, { cue: 'then', who: 'PM', verb: 'call', object: 'radio' }],
      },
      findings: [{ at: 's1 checkIfNot', message: 'nobody', witness: { kind: 'path' } }],
    },
  ],
  missing: [
    {
      procedure: { phases: ['descent'], entry: descent, steps: [brake] },
      facts: { sheet: { ...tn182, modes: silent } },
      because: 'names no thrust words',
    },
  ],
});
