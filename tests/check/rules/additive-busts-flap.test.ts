import { expect, it } from 'vitest';
import { checkProcedure } from '../../../lib/check/check.ts';
import { additiveBustsFlap } from '../../../lib/check/rules/additive-busts-flap.ts';
import { procedureWith } from '../../../lib/procedure/build.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { houseFacts, housePolicy } from '../../kit/world.ts';

const landing = (detents: readonly string[], to = 78_600, more: object = {}) => ({
  phases: ['landing'] as const,
  envelope: { detents, weight: { from: 46_000, to } },
  entry: { flaps: ['F18'], gear: 'down' as const },
  ...more,
});
const with15 = { ...housePolicy, speeds: { ...housePolicy.speeds, additionMargin: 15 } };

testRule(additiveBustsFlap, {
  valid: [
    landing(['F35'], 66_800),
    landing(['F26']),
    {
      why: 'a smaller additive is stated',
      procedure: landing(['F35'], 78_600, { entry: { flaps: ['F18'], also: 'additive up to 15 kt' } }),
    },
    { why: 'no landing detent is named', procedure: landing(['F18']) },
    landing(['F35'], 76_100),
  ],
  invalid: [
    {
      why: 'scenario 7: 161.2 kt against 164 kt',
      procedure: landing(['F35']),
      findings: [
        {
          at: ' envelope.detents',
          message: 'busts',
          says: 'are 161.2 kt at 78.6 t against VFE 164 kt: the margin is under 5 kt above 76.2 t',
          witness: { kind: 'envelope', at: { weight: 78_600 } },
        },
      ],
    },
    {
      why: 'the stated additive counts',
      procedure: landing(['F26'], 78_600, { entry: { flaps: ['F18'], also: 'additives of 5 to 30 kt' } }),
      findings: [{ at: ' envelope.detents', message: 'busts', says: 'VREF and 30 kt', witness: { kind: 'envelope' } }],
    },
    {
      why: 'the margin is the policy’s',
      procedure: landing(['F26']),
      facts: { policy: with15 },
      findings: [{ at: ' envelope.detents', message: 'busts', says: 'under 15 kt', witness: { kind: 'envelope' } }],
    },
    {
      why: 'the detent that a step selects',
      procedure: {
        ...landing([]),
        steps: [{ cue: 'speed <= 159 kt', who: 'PM', verb: 'select', object: 'flap lever', value: 'F35' }],
      },
      findings: [{ at: 's1 value', message: 'busts', witness: { kind: 'envelope' } }],
    },
  ],
});

it('F26 at 78.6 t leaves 11.5 kt, so a margin of 11 kt passes and 12 kt does not', () => {
  const found = (additionMargin: number) => {
    const policy = { ...housePolicy, speeds: { ...housePolicy.speeds, additionMargin } };
    return checkProcedure(procedureWith(landing(['F26'])), { ...houseFacts, policy }, [additiveBustsFlap]).findings;
  };
  expect(found(11)).toEqual([]);
  expect(found(12)[0]?.message).toContain('166.5 kt');
});
