import { stepNeverReached } from '../../../lib/check/rules/step-never-reached.ts';
import { approach, EN_ROUTE, FLAP_FIRST, flap, GEAR_FIRST, gear, takeOff } from '../../kit/flown-parts.ts';
import { testRule } from '../../kit/rule-tester.ts';

const from220 = { entry: { speed: '220 kt' } };
testRule(stepNeverReached, {
  valid: [
    { why: 'gear first', procedure: approach(GEAR_FIRST) },
    { why: 'gear first from 220 kt', procedure: approach(GEAR_FIRST, from220) },
    {
      why: 'what a controller or a mode brings about',
      procedure: approach([
        ...GEAR_FIRST,
        { cue: 'event "cleared"', who: 'PM', verb: 'check' },
        { cue: 'vertical = LEVEL', who: 'PM', verb: 'read' },
      ]),
    },
    { why: 'what exists only sometimes', procedure: takeOff([{ ...flap('F6', 'speed >= 400 kt'), only: 'icing' }]) },
  ],
  invalid: [
    {
      why: 'from 220 kt the speed never falls to F12',
      procedure: approach(FLAP_FIRST, from220),
      findings: [
        { at: 's1 cue', message: 'never', says: 'the speed falls to 21', witness: { kind: 'flight' } as object },
      ],
    },
    {
      why: 'light weights come to it, heavier ones do not',
      procedure: approach(FLAP_FIRST, { ...from220, envelope: { weight: { from: 46_000, to: 50_000 } } }),
      findings: [{ at: 's1 cue', message: 'sometimes', says: '3 of 5 flights', witness: {} }],
    },
    {
      procedure: takeOff([flap('F6', 'speed >= 400 kt')]),
      findings: [{ at: 's1 cue', message: 'never', says: 'comes in none of 1 flights', witness: {} }],
    },
    {
      procedure: approach([gear('DOWN', 'height <= -200 ft AAL')]),
      findings: [{ at: 's1 cue', message: 'never', witness: {} }],
    },
  ],
  missing: [EN_ROUTE],
});
