import { nobodyDoesIt } from '../../../lib/check/rules/nobody-does-it.ts';
import { testRule } from '../../kit/rule-tester.ts';

const press = { cue: 'then', verb: 'press', object: 'HEADING' } as const;

testRule(nobodyDoesIt, {
  valid: [
    { steps: [{ cue: 'then', who: 'each', verb: 'set', object: 'own altimeter setting', value: 'standard' }] },
    { entry: { autopilot: 'on' }, steps: [{ ...press, who: 'PF' }] },
    { entry: { autopilot: 'off' }, steps: [{ ...press, who: 'PM', orderBy: 'PF', orderWords: 'heading' }] },
    { entry: { autopilot: 'on or off' }, steps: [{ ...press, who: 'PM' }] },
    {
      why: 'going around, PM works the panel until the flap is in, whatever the autopilot does',
      procedure: {
        phases: ['approach', 'go-around'],
        entry: { autopilot: 'on', flaps: ['F35'] },
        steps: [
          { cue: 'heard "go around"', who: 'PF', verb: 'press', object: 'GO-AROUND switch' },
          { cue: 'then', who: 'PM', verb: 'press', object: 'ROUTE' },
        ],
      },
    },
    {
      why: 'the autopilot switch is not the panel',
      procedure: {
        entry: { autopilot: 'off' },
        steps: [{ cue: 'then', who: 'PM', verb: 'engage', object: 'autopilot switch' }],
      },
    },
    { why: 'an empty step says nothing yet', procedure: { steps: [{ cue: 'then', note: 'to come' }] } },
  ],
  invalid: [
    {
      procedure: { steps: [{ cue: 'then', verb: 'move', object: 'gear lever', value: 'UP' }] },
      findings: [
        { at: 's1 who', message: 'nobody', says: 'move gear lever UP', witness: { kind: 'absent', field: 'who' } },
      ],
    },
    {
      procedure: { steps: [{ cue: 'then', who: 'PM', verb: 'move', object: 'gear lever', orderWords: 'gear up' }] },
      findings: [{ at: 's1 orderBy', message: 'nobody-orders', witness: { kind: 'absent', field: 'orderBy' } }],
    },
    {
      procedure: { entry: { autopilot: 'on' }, steps: [{ ...press, who: 'PM' }] },
      findings: [
        { at: 's1 who', message: 'wrong-hand', says: "autopilot on the panel is PF's", witness: { quote: 'PM' } },
      ],
    },
    {
      why: 'hand-flown, the one who flies turns the selector',
      procedure: {
        entry: { autopilot: 'off' },
        steps: [{ cue: 'then', who: 'PF', verb: 'set', object: 'altitude selector', value: 'cleared altitude' }],
      },
      findings: [
        { at: 's1 who', message: 'wrong-hand', says: "hand-flown the panel is PM's", witness: { quote: 'PF' } },
      ],
    },
    {
      why: 'only the GO-AROUND switch is PF’s',
      procedure: {
        phases: ['go-around'],
        entry: { flaps: ['F35'] },
        steps: [
          { cue: 'heard "go around"', who: 'PM', verb: 'press', object: 'GO-AROUND switch' },
          { cue: 'then', who: 'PF', verb: 'press', object: 'ROUTE' },
        ],
      },
      findings: [
        { at: 's1 who', message: 'wrong-hand', witness: { quote: 'PM' } },
        { at: 's2 who', message: 'wrong-hand', says: 'going around', witness: { quote: 'PF' } },
      ],
    },
    {
      why: 'the autopilot was engaged on the way',
      procedure: {
        entry: { autopilot: 'off' },
        steps: [
          { cue: 'height >= 600 ft AAL', who: 'PM', verb: 'engage', object: 'autopilot switch', value: 'on' },
          { ...press, who: 'PM' },
        ],
      },
      findings: [{ at: 's2 who', message: 'wrong-hand', witness: { kind: 'text', field: 'who' } }],
    },
  ],
});
