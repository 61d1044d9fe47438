import { expect } from 'vitest';
import { knobKillsCapture } from '../../../lib/check/rules/knob-kills-capture.ts';
import { testRule } from '../../kit/rule-tester.ts';

const climb = { thrust: ['CLIMB'], lateral: ['ROUTE'], vertical: ['ASCENT'], armed: ['ALT'] };
const turn = {
  cue: 'event "climb clearance"',
  who: 'PF',
  verb: 'set',
  object: 'altitude selector',
  value: 'cleared level',
} as const;
const ascent = {
  cue: 'then',
  who: 'PF',
  verb: 'press',
  object: 'ASCENT',
  expect: { thrust: 'CLIMB', lateral: 'same', vertical: 'ASCENT', armed: ['ALT'] },
} as const;

testRule(knobKillsCapture, {
  valid: [
    {
      phases: ['climb'],
      entry: climb,
      steps: [{ ...turn, cue: 'event "climb clearance" and not vertical = CAPTURE' }],
    },
    // Scenario 4, corrected: press ASCENT at once, read ASCENT and ALT armed.
    { phases: ['climb'], entry: climb, steps: [turn, ascent] },
    { phases: ['climb'], entry: { ...climb, vertical: ['LEVEL'], thrust: ['GOVERN'] }, steps: [turn] },
    { phases: ['climb'], entry: climb, steps: [{ ...turn, checkIfNot: 'ALT not armed: PF presses LEVEL' }] },
  ],
  invalid: [
    {
      why: 'scenario 4: the new altitude set when it is cleared; un-armed more often on standard B',
      procedure: { phases: ['climb'], entry: climb, steps: [turn] },
      findings: [
        {
          at: 's1 object',
          message: 'lost',
          says: '2 of 4 cases on standard A, 4 of 4 cases on standard B',
          witness: {
            kind: 'path',
            says: expect.stringMatching(/T22 inside capture window with ALT armed > T24 step 1 set altitude selector/),
          },
        },
      ],
    },
    {
      why: 'only for tails of standard B',
      procedure: {
        phases: ['climb'],
        effectivity: { type: 'TN-182', standards: ['B'], note: '' },
        entry: climb,
        steps: [turn],
      },
      findings: [
        {
          at: 's1 object',
          message: 'lost',
          says: 'standard B',
          witness: { says: expect.stringContaining('standard B') },
        },
      ],
    },
    {
      why: 'a radio call between the knob and the press',
      procedure: {
        phases: ['climb'],
        entry: climb,
        steps: [turn, { cue: 'then', who: 'PM', verb: 'call', object: 'radio' }, ascent],
      },
      findings: [{ at: 's1 object', message: 'lost', witness: { kind: 'path' } }],
    },
  ],
});
