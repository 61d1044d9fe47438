import { expect } from 'vitest';
import { wrongWordsExpected } from '../../../lib/check/rules/wrong-words-expected.ts';
import { testRule } from '../../kit/rule-tester.ts';

const climb = { thrust: ['CLIMB'], lateral: ['ROUTE'], vertical: ['ASCENT'], armed: ['ALT'] };
const read = (expect: object, cue = 'vertical = CAPTURE') =>
  ({ cue, who: 'PM', verb: 'read', object: 'mode line', expect }) as const;
const turn = { cue: 'vertical = CAPTURE', who: 'PF', verb: 'set', object: 'altitude selector' } as const;

testRule(wrongWordsExpected, {
  valid: [
    { phases: ['climb'], entry: climb, steps: [read({ thrust: 'GOVERN', vertical: 'CAPTURE', armed: [] })] },
    { phases: ['climb'], entry: climb, steps: [read({ vertical: ['CAPTURE', 'LEVEL'] })] },
    { phases: ['climb'], entry: climb, steps: [{ ...turn, expect: { vertical: 'RATE-UP' } }] },
    {
      phases: ['climb'],
      entry: climb,
      steps: [read({ thrust: 'same', lateral: 'same', vertical: 'same', armed: 'same' })],
    },
  ],
  invalid: [
    {
      why: 'LEVEL where the machine shows CAPTURE first, and ALT armed where nothing is',
      procedure: { phases: ['climb'], entry: climb, steps: [read({ vertical: 'LEVEL', armed: ['ALT'] })] },
      findings: [
        {
          at: 's1 expect.vertical',
          message: 'never',
          says: 'GOVERN · ROUTE · CAPTURE, nothing armed',
          witness: { kind: 'path', says: expect.stringContaining('T22 inside capture window') },
        },
      ],
    },
    {
      why: 'armed after the knob in CAPTURE: so on standard A, never on B',
      procedure: {
        phases: ['climb'],
        entry: climb,
        steps: [{ ...turn, expect: { vertical: 'RATE-UP', armed: ['ALT'] } }],
      },
      findings: [
        {
          at: 's1 expect.armed',
          message: 'never',
          says: 'on standard B',
          witness: { says: expect.stringContaining('T24') },
        },
      ],
    },
    {
      why: 'another thrust word than the press brings',
      procedure: {
        phases: ['climb'],
        entry: climb,
        steps: [
          {
            cue: 'event "now"',
            who: 'PF',
            verb: 'press',
            object: 'RATE',
            expect: { thrust: 'CLIMB', vertical: 'RATE-UP' },
          },
        ],
      },
      findings: [{ at: 's1 expect.thrust', message: 'never', witness: { says: expect.stringContaining('T17') } }],
    },
  ],
});
