import { expect } from 'vitest';
import { fasterThanTheFlapMoves } from '../../../lib/check/rules/faster-than-the-flap-moves.ts';
import { approach, EN_ROUTE, flap, GEAR_FIRST, takeOff } from '../../kit/flown-parts.ts';
import { testRule } from '../../kit/rule-tester.ts';

const UP = 'height >= 3 000 ft AAL and speed >=';
testRule(fasterThanTheFlapMoves, {
  valid: [
    {
      why: 'waits for the indication',
      procedure: takeOff([flap('F6', `${UP} VMM F6`), flap('F0', `${UP} VMM F0 and flaps F6 indicated`)]),
    },
    {
      why: 'far enough apart by itself',
      procedure: takeOff([flap('F6', 'speed >= VMM F6'), flap('F0', 'speed >= VMM F0 + 30 kt')]),
    },
    { why: 'an approach', procedure: approach(GEAR_FIRST) },
  ],
  invalid: [
    {
      why: 'both speeds are there when the height comes',
      procedure: takeOff([flap('F6', `${UP} VMM F6`), flap('F0', `${UP} VMM F0`)]),
      findings: [{ at: 's2 cue', message: 'fast', says: 'falls due 0.0 s after flap lever F6', witness: {} }],
    },
    {
      why: 'F18 to F12 to F6',
      procedure: takeOff([flap('F12', `${UP} VMM F12`), flap('F6', `${UP} VMM F6`)], {
        entry: { flaps: ['F18'] },
        envelope: { detents: ['F18'] },
      }),
      findings: [{ at: 's2 cue', message: 'fast', says: 'the flap takes 5 s', witness: {} }],
    },
    {
      why: 'the worst of several weights',
      procedure: takeOff([flap('F6', `${UP} VMM F6`), flap('F0', `${UP} VMM F0`)], {
        envelope: { weight: { from: 46_000, to: 50_000 } },
      }),
      findings: [{ at: 's2 cue', message: 'fast', witness: { says: expect.stringContaining('all 5 flights') } }],
    },
  ],
  missing: [EN_ROUTE],
});
