import { gearLimits } from '../../../lib/check/rules/gear-limits.ts';
import { approach, EN_ROUTE, GEAR_FIRST, gear, takeOff } from '../../kit/flown-parts.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { tn182 } from '../../kit/world.ts';

testRule(gearLimits, {
  valid: [
    { why: 'up at once', procedure: takeOff([gear('UP', 'altitude increasing')]) },
    { why: 'down from 200 kt', procedure: approach(GEAR_FIRST) },
    {
      why: 'a look at the gear',
      procedure: takeOff([{ cue: 'speed >= 300 kt', who: 'PM', verb: 'check', object: 'gear lights' }]),
    },
  ],
  invalid: [
    {
      why: 'the cue waits for more than the limit',
      procedure: takeOff([gear('UP', 'altitude increasing'), gear('UP', 'speed >= 235 kt')]),
      findings: [
        { at: 's2 cue', message: 'cue', says: 'VLO for retraction, 225 kt', witness: { quote: 'speed >= 235 kt' } },
      ],
    },
    {
      why: 'down at more than 245 kt',
      procedure: approach([gear('DOWN', 'height <= 2 900 ft AAL')], { entry: { speed: '260 kt', flaps: ['F0'] } }),
      findings: [{ at: 's1 cue', message: 'over', says: 'above VLO for extension, 245 kt', witness: {} }],
    },
    {
      why: 'a lower limit of the sheet',
      procedure: approach(GEAR_FIRST),
      facts: {
        sheet: {
          ...tn182,
          limits: {
            ...tn182.limits,
            gear: { ...tn182.limits.gear, vloExtend: { ...tn182.limits.gear.vloExtend, value: 180 } },
          },
        },
      },
      findings: [{ at: 's1 cue', message: 'over', says: '180 kt', witness: {} }],
    },
  ],
  missing: [EN_ROUTE],
});
