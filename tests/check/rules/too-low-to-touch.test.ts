import { tooLowToTouch } from '../../../lib/check/rules/too-low-to-touch.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { housePolicy } from '../../kit/world.ts';

const press = (cue: string, more: object = {}) =>
  ({ cue, who: 'PM', verb: 'press', object: 'HEADING', ...more }) as const;
const takeOff = { phases: ['take-off'] as const, entry: { flaps: ['F6'] } };

testRule(tooLowToTouch, {
  valid: [
    { ...takeOff, steps: [press('height >= 400 ft AAL')] },
    {
      why: 'gear',
      procedure: {
        ...takeOff,
        steps: [press('height >= 50 ft AAL', { verb: 'move', object: 'gear lever', value: 'UP' })],
      },
    },
    { why: 'a memory item', procedure: { ...takeOff, steps: [press('height >= 50 ft AAL', { flags: ['memory'] })] } },
    {
      why: 'a look',
      procedure: { ...takeOff, steps: [press('height >= 100 ft AAL', { verb: 'read', object: 'heading' })] },
    },
    {
      why: 'first go-around flap',
      procedure: {
        phases: ['go-around'],
        entry: { flaps: ['F35'] },
        steps: [
          { cue: 'height >= 100 ft AAL', who: 'PF', verb: 'press', object: 'GO-AROUND switch' },
          { cue: 'then', who: 'PM', verb: 'select', object: 'flap lever', value: 'F18' },
        ],
      },
    },
    { why: 'above another gate', procedure: { ...takeOff, steps: [press('height >= 600 ft AAL'), press('then')] } },
  ],
  invalid: [
    {
      procedure: { ...takeOff, steps: [press('height >= 200 ft AAL')] },
      findings: [{ at: 's1 cue', message: 'low', says: 'below 400 ft', witness: { quote: 'height >= 200 ft AAL' } }],
    },
    {
      why: 'what follows is as low',
      procedure: {
        ...takeOff,
        steps: [press('height >= 100 ft AAL', { verb: 'read', object: 'mode line' }), press('then')],
      },
      findings: [{ at: 's2 cue', message: 'low', says: 'at 100 ft', witness: { quote: 'then' } }],
    },
    {
      procedure: {
        ...takeOff,
        steps: [press('height >= 300 ft AAL', { verb: 'read', object: 'chart', flags: ['eyes-down'] })],
      },
      findings: [{ at: 's1 cue', message: 'low', witness: { kind: 'text' } }],
    },
    {
      why: 'the floor is the policy’s',
      procedure: { ...takeOff, steps: [press('height >= 400 ft AAL')] },
      facts: { policy: { ...housePolicy, gates: { ...housePolicy.gates, houseFloor: 500 } } },
      findings: [{ at: 's1 cue', message: 'low', says: '500 ft', witness: { kind: 'text' } }],
    },
  ],
});
