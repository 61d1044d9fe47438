import { expect } from 'vitest';
import { goAroundBelowAltitude } from '../../../lib/check/rules/go-around-below-altitude.ts';
import { testRule } from '../../kit/rule-tester.ts';

import { tn182 } from '../../kit/world.ts';

const glide = {
  thrust: ['GOVERN'],
  lateral: ['COURSE'],
  vertical: ['GLIDE'],
  armed: [],
  selectedAltitude: '2 000 ft MSL',
};
const gate = { cue: 'height <= 1 000 ft AAL', who: 'PM', verb: 'call', object: 'gate' } as const;
const set = {
  cue: 'vertical = GLIDE',
  who: 'PF',
  verb: 'set',
  object: 'altitude selector',
  value: 'missed-approach altitude',
} as const;
const press = { cue: 'heard "go around"', who: 'PF', verb: 'press', object: 'GO-AROUND switch' } as const;
const missed = { ...glide, selectedAltitude: 'missed-approach altitude' };
const unset = {
  message: 'unset',
  says: 'LIFT, nothing armed on standards A and B',
  witness: { kind: 'path', says: expect.stringContaining('LIFT, nothing armed') },
} as const;

testRule(goAroundBelowAltitude, {
  valid: [
    { phases: ['approach'], entry: missed, steps: [gate] },
    { phases: ['approach'], entry: glide, steps: [set, gate] },
    { phases: ['go-around'], entry: missed, steps: [{ ...press, expect: { vertical: 'LIFT', armed: ['ALT'] } }] },
    { phases: ['go-around'], entry: missed, steps: [{ ...press, checkIfNot: 'not armed: PM sets the altitude' }] },
  ],
  invalid: [
    {
      why: 'the missed-approach altitude is never set',
      procedure: { phases: ['approach'], entry: glide, steps: [gate] },
      findings: [{ at: 's1 cue', ...unset }],
    },
    {
      why: 'another altitude is set, and one finding is enough',
      procedure: { phases: ['approach'], entry: glide, steps: [gate, { ...set, value: 'cleared altitude' }, gate] },
      findings: [{ at: 's1 cue', ...unset }],
    },
    {
      why: 'pressed, and nobody reads what is armed',
      procedure: { phases: ['go-around'], entry: missed, steps: [press] },
      findings: [
        {
          at: 's1 object',
          message: 'pressed',
          says: 'LIFT',
          witness: { kind: 'path', says: expect.stringContaining('T13') },
        },
      ],
    },
  ],
  missing: [
    {
      procedure: { phases: ['approach'], entry: glide, steps: [gate] },
      facts: { sheet: { ...tn182, modes: { ...tn182.modes, environment: [] } } },
      because: 'which rule a go-around is',
    },
  ],
});
