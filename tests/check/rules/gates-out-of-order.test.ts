import { gatesOutOfOrder } from '../../../lib/check/rules/gates-out-of-order.ts';
import { testRule } from '../../kit/rule-tester.ts';

const at = (cue: string, more: object = {}) => ({ cue, who: 'PM', verb: 'call', object: 'height', ...more }) as const;

testRule(gatesOutOfOrder, {
  valid: [
    {
      why: 'the card decides which comes first',
      procedure: {
        steps: [
          at('height >= acceleration altitude'),
          at('height >= 2 000 ft AAL'),
          at('height >= climb-thrust altitude'),
        ],
      },
    },
    { steps: [at('height <= 1 000 ft AAL'), at('height <= 500 ft AAL')] },
    { steps: [at('height >= 400 ft AAL'), at('height >= 400 ft AAL'), at('height >= 600 ft AAL')] },
    { steps: [at('distance to QOSTEL <= 10 NM'), at('distance to QALBOR <= 20 NM'), at('distance to QOSTEL <= 5 NM')] },
    {
      why: 'up, then down',
      procedure: { steps: [at('height >= 1 500 ft AAL'), at('height <= 1 000 ft AAL'), at('height <= 500 ft AAL')] },
    },
    {
      why: 'another reference is another scale',
      procedure: { steps: [at('altitude >= 3 000 ft MSL'), at('height >= 1 500 ft AAL')] },
    },
    {
      why: 'the words were said before',
      procedure: { steps: [at('speed >= VR', { say: 'rotate' }), at('heard "rotate"')] },
    },
    { why: 'said by nobody here: by the controller', procedure: { steps: [at('heard "cleared"')] } },
    {
      why: 'a branch has its own path',
      procedure: {
        steps: [at('height >= 1 500 ft AAL')],
        branches: [{ when: 'vertical = CAPTURE', steps: [at('height >= 400 ft AAL')] }],
      },
    },
  ],
  invalid: [
    {
      why: 'no aerodrome has its acceleration altitude below 400 ft',
      procedure: { steps: [at('height >= acceleration altitude'), at('height >= 400 ft AAL')] },
      findings: [
        {
          at: 's2 cue',
          message: 'order',
          says: '400 ft AAL stands after acceleration altitude',
          witness: { kind: 'order' },
        },
      ],
    },
    {
      procedure: { steps: [at('height <= 500 ft AAL'), at('height <= 1 000 ft AAL')] },
      findings: [
        {
          at: 's2 cue',
          message: 'order',
          says: '1 000 ft AAL stands after 500 ft AAL',
          witness: { kind: 'order', first: 's1', second: 's2' },
        },
      ],
    },
    {
      procedure: {
        steps: [
          at('height >= 600 ft AAL'),
          at('height >= 400 ft AAL and lateral = CENTRELINE'),
          at('height >= 1 500 ft AAL'),
        ],
      },
      findings: [{ at: 's2 cue', message: 'order', witness: { kind: 'order' } }],
    },
    {
      procedure: { steps: [at('after XX-02', { label: 'XX-01' }), at('event "cleared"', { label: 'XX-02' })] },
      findings: [{ at: 'XX-01 cue', message: 'later-step', says: 'XX-02', witness: { quote: 'after XX-02' } }],
    },
    {
      procedure: { steps: [at('heard "rotate"'), at('speed >= VR', { say: 'rotate' })] },
      findings: [{ at: 's1 cue', message: 'later-word', says: '"rotate"', witness: { quote: 'heard "rotate"' } }],
    },
    {
      procedure: { entry: { flaps: ['F6'] }, steps: [at('speed >= VMM F12 and flaps F18 indicated')] },
      findings: [{ at: 's1 cue', message: 'never-there', says: 'F18', witness: { kind: 'text' } }],
    },
    {
      procedure: { steps: [at('distance to QOSTEL <= 5 NM'), at('distance to QOSTEL <= 10 NM')] },
      findings: [{ at: 's2 cue', message: 'order', says: '10 NM', witness: { kind: 'order' } }],
    },
  ],
});
