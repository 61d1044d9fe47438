import { twoOwners } from '../../../lib/check/rules/two-owners.ts';
import { testRule } from '../../kit/rule-tester.ts';

const gearDown = { cue: 'height <= 2 000 ft AAL', verb: 'move', object: 'gear lever', value: 'DOWN' } as const;

testRule(twoOwners, {
  valid: [
    {
      steps: [
        {
          cue: 'altitude >= transition altitude',
          who: 'each',
          verb: 'set',
          object: 'own altimeter setting',
          value: 'standard',
        },
      ],
    },
    {
      steps: [
        { ...gearDown, who: 'PM' },
        { ...gearDown, who: 'PM', object: 'flap lever' },
      ],
    },
    {
      why: 'looking is no owning',
      procedure: {
        steps: [
          { ...gearDown, who: 'PM' },
          { ...gearDown, who: 'PF', verb: 'check' },
        ],
      },
    },
    {
      why: 'another moment',
      procedure: {
        steps: [
          { ...gearDown, who: 'PM' },
          { ...gearDown, who: 'PF', cue: 'height <= 1 500 ft AAL' },
        ],
      },
    },
    {
      why: 'one for each state of the autopilot',
      procedure: {
        entry: { autopilot: 'on or off' },
        steps: [
          { cue: 'height >= 400 ft AAL and autopilot on', who: 'PF', verb: 'press', object: 'ROUTE' },
          { cue: 'height >= 400 ft AAL and autopilot off', who: 'PM', verb: 'press', object: 'ROUTE' },
        ],
      },
    },
    {
      why: '"then" is a moment of its own',
      procedure: {
        steps: [
          { ...gearDown, cue: 'then', who: 'PM' },
          { ...gearDown, cue: 'then', who: 'PF' },
        ],
      },
    },
  ],
  invalid: [
    {
      procedure: {
        steps: [{ cue: 'then', who: 'each', verb: 'set', object: 'altitude selector', value: 'cleared altitude' }],
      },
      findings: [{ at: 's1 who', message: 'each', says: 'altitude selector', witness: { quote: 'each' } }],
    },
    {
      procedure: {
        steps: [
          { ...gearDown, who: 'PM' },
          { ...gearDown, who: 'PF' },
        ],
      },
      findings: [
        {
          at: 's2 who',
          message: 'split',
          says: 'gear lever is given to PM',
          witness: { kind: 'order', first: 's1', second: 's2' },
        },
      ],
    },
    {
      procedure: { steps: [{ cue: 'then', who: 'PM', verb: 'set', object: 'flap lever (PF and PM)', value: 'F12' }] },
      findings: [{ at: 's1 object', message: 'both', witness: { quote: 'PF and PM' } }],
    },
    {
      procedure: { steps: [{ cue: 'then', who: 'each', verb: 'move', object: 'gear lever', value: 'UP' }] },
      findings: [{ at: 's1 who', message: 'each', witness: { field: 'who' } }],
    },
  ],
});
