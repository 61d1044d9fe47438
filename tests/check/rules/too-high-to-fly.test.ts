import { tooHighToFly } from '../../../lib/check/rules/too-high-to-fly.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { housePolicy } from '../../kit/world.ts';

const select = (value: string) =>
  ({ cue: 'then', who: 'PF', verb: 'set', object: 'altitude selector', value }) as const;
const climb = (value: string, weight = 78_600, more: object = {}) => ({
  phases: ['climb'] as const,
  entry: { speed: 'M 0.77' },
  envelope: { temperature: { from: 0, to: 0 }, weight: { from: 46_000, to: weight } },
  steps: [select(value)],
  ...more,
});

testRule(tooHighToFly, {
  valid: [
    climb('FL 350', 62_000),
    climb('FL 300'),
    {
      why: 'the tables hold the level',
      procedure: climb('FL 370', 78_600, {
        weightLimit: 'ceiling of the weight with 300 ft/min left, from the cruise tables',
      }),
    },
    { why: 'a word is no level', procedure: climb('cleared level') },
    { why: 'low enough for anything', procedure: climb('5 000 ft MSL') },
  ],
  invalid: [
    {
      why: '78.6 t at FL 350: 250 ft/min',
      procedure: climb('FL 350'),
      findings: [
        {
          at: 's1 value',
          message: 'short',
          says: 'At 78.6 t 247 ft/min are left at FL 350 of 300 wanted',
          witness: { kind: 'envelope' },
        },
      ],
    },
    {
      why: 'the levels that the procedure is for',
      procedure: {
        ...climb('cleared level'),
        envelope: { level: { from: 10_000, to: 37_000 }, temperature: { from: 0, to: 0 } },
      },
      findings: [{ at: ' envelope.level', message: 'short', says: 'FL 370', witness: { kind: 'envelope' } }],
    },
    {
      procedure: climb('FL 410', 50_000),
      findings: [{ at: 's1 value', message: 'ceiling', says: 'FL 390', witness: { kind: 'envelope' } }],
    },
    {
      why: 'the least rate is the policy’s',
      procedure: climb('FL 350', 62_000),
      facts: { policy: { ...housePolicy, climb: { ...housePolicy.climb, leastRate: 900 } } },
      findings: [{ at: 's1 value', message: 'short', says: 'of 900 wanted', witness: { kind: 'envelope' } }],
    },
  ],
  missing: [{ procedure: climb('FL 350', 78_600, { entry: { speed: '' } }), because: 'no climb speed is stated' }],
});
