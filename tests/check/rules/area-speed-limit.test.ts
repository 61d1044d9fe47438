import { areaSpeedLimit } from '../../../lib/check/rules/area-speed-limit.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { housePolicy } from '../../kit/world.ts';

const turn = (cue: string, value: string) =>
  ({ cue, who: 'PF', verb: 'set', object: 'speed selector', value }) as const;
const slow = { ...housePolicy, speeds: { ...housePolicy.speeds, areaLimit: { speed: 200, below: 10_000 } } };

testRule(areaSpeedLimit, {
  valid: [
    { phases: ['climb'], steps: [turn('altitude >= 10 000 ft MSL', '290 kt')] },
    { phases: ['climb'], steps: [turn('flight-level >= FL 110', '290 kt')] },
    { phases: ['climb'], steps: [turn('altitude >= 8 000 ft MSL', '250 kt')] },
    {
      why: 'a level that is high throughout',
      procedure: { envelope: { level: { from: 20_000, to: 39_000 } }, steps: [turn('then', '290 kt')] },
    },
    { why: 'a formula that stays below', procedure: { phases: ['approach'], steps: [turn('then', 'clean speed')] } },
    {
      why: 'slowed down before',
      procedure: {
        phases: ['descent'],
        steps: [turn('altitude >= 11 000 ft MSL', '300 kt'), turn('altitude >= 10 000 ft MSL', '250 kt')],
      },
    },
  ],
  invalid: [
    {
      procedure: { phases: ['climb'], steps: [turn('altitude >= 8 000 ft MSL', '290 kt')] },
      findings: [
        {
          at: 's1 value',
          message: 'fast',
          says: '290 kt is above 250 kt below 10 000 ft MSL',
          witness: { kind: 'envelope' },
        },
      ],
    },
    {
      why: 'kept too long in the descent',
      procedure: {
        phases: ['descent'],
        steps: [
          turn('altitude >= 12 000 ft MSL', '300 kt'),
          { cue: 'altitude <= 9 000 ft MSL', who: 'PM', verb: 'call', object: 'altitude' },
        ],
      },
      findings: [{ at: 's2 cue', message: 'fast', witness: { kind: 'envelope' } }],
    },
    {
      why: 'in a take-off nothing is high yet',
      procedure: {
        phases: ['take-off'],
        entry: { flaps: ['F6'] },
        steps: [turn('height >= acceleration altitude', '280 kt')],
      },
      findings: [{ at: 's1 value', message: 'fast', witness: { kind: 'envelope' } }],
    },
    {
      why: 'the clean floor of a heavy aircraft',
      procedure: { phases: ['approach'], steps: [] },
      facts: { policy: slow },
      findings: [
        {
          at: ' envelope.weight',
          message: 'floor',
          says: 'VMM F0 is above 200 kt above 75',
          witness: { kind: 'envelope' },
        },
      ],
    },
  ],
  missing: [
    {
      procedure: { phases: ['climb'], steps: [turn('then', '290 kt')] },
      because: 'nothing says on which side of 10 000 ft MSL 290 kt is flown',
    },
  ],
});
