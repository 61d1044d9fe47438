import { vSpeedsOrder } from '../../../lib/check/rules/v-speeds-order.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { tn182 } from '../../kit/world.ts';

const takeOff = (...detents: string[]) => ({
  phases: ['take-off' as const],
  envelope: { detents },
  entry: { flaps: detents },
});
/** A schedule whose speed is always the same. */
const constant = (name: 'V1' | 'VR' | 'V2', value: number) => ({
  ...tn182,
  speeds: tn182.speeds.map((rule) =>
    rule.name === name ? { ...rule, rule: { kind: 'constant' as const, value } } : rule,
  ),
});

testRule(vSpeedsOrder, {
  valid: [takeOff('F6', 'F12', 'F18'), takeOff('F6'), { ...takeOff(), entry: { flaps: ['F18'] } }],
  invalid: [
    {
      why: 'the sample of the catalogue: V1 above VR',
      procedure: takeOff('F6'),
      facts: { sheet: constant('V1', 142) },
      findings: [
        {
          at: ' envelope.detents',
          message: 'order',
          says: 'With F6, V1 is above VR below',
          witness: { kind: 'envelope' },
        },
      ],
    },
    {
      why: 'V1 below its floor, dry and wet',
      procedure: takeOff('F18'),
      facts: { sheet: constant('V1', 104) },
      findings: [
        {
          at: ' envelope.detents',
          message: 'order',
          says: 'V1 is below the V1 floor 106 kt',
          witness: { kind: 'envelope' },
        },
        { at: ' envelope.detents', message: 'order', says: 'V1 wet is below', witness: { kind: 'envelope' } },
      ],
    },
    {
      why: 'V2 too near the stall',
      procedure: takeOff('F12'),
      facts: { sheet: constant('V2', 140) },
      findings: [
        {
          at: ' envelope.detents',
          message: 'order',
          says: 'V2 is below 1.13 VSR above',
          witness: { kind: 'envelope' },
        },
      ],
    },
    {
      why: 'V2 too near VMCA, V2 below VR',
      procedure: takeOff('F6'),
      facts: { sheet: constant('V2', 110) },
      findings: [
        {
          at: ' envelope.detents',
          message: 'order',
          says: 'V2 is below 1.10 VMCA at every weight',
          witness: { kind: 'envelope' },
        },
        { at: ' envelope.detents', message: 'order', says: 'V2 is below 1.13 VSR', witness: { kind: 'envelope' } },
        { at: ' envelope.detents', message: 'order', says: 'VR is above V2', witness: { kind: 'envelope' } },
      ],
    },
  ],
  missing: [
    { procedure: { ...takeOff(), entry: { flaps: [] } }, because: 'no take-off detent is named' },
    { procedure: takeOff('F35'), because: 'gives no V1 for F35' },
  ],
});
