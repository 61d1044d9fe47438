import { describe, expect, it } from 'vitest';
import { soundAlikeCalls } from '../../../lib/check/rules/sound-alike-calls.ts';
import { soundAlike } from '../../../lib/check/sound.ts';
import type { StepParts } from '../../../lib/procedure/build.ts';
import { testRule, told } from '../../kit/rule-tester.ts';

const order = (words: string, object: string, value = '', more: StepParts = {}): StepParts => ({
  cue: 'then',
  orderBy: 'PF',
  orderWords: words,
  who: 'PM',
  verb: 'select',
  object,
  value,
  ...more,
});

testRule(soundAlikeCalls, {
  valid: [
    { steps: [order('flap six', 'flap lever', 'F6'), order('flap twelve', 'flap lever', 'F12')] },
    { steps: [order('gear up', 'gear lever', 'UP'), order('gear down', 'gear lever', 'DOWN')] },
    { steps: [order('flap six', 'flap lever', 'F6'), order('flap six', 'flap lever', 'F6')] },
    {
      why: 'another phase',
      procedure: { phases: ['approach'], steps: [order('flap six', 'flap lever', 'F6')] },
      facts: { others: told([{ phases: ['taxi'], steps: [order('flap twenty-six', 'flap lever', 'F26')] }]) },
    },
  ],
  invalid: [
    {
      procedure: { steps: [order('flap six', 'flap lever', 'F6'), order('flap twenty-six', 'flap lever', 'F26')] },
      findings: [{ at: 's1 orderWords', message: 'alike', witness: { first: 'flap six', second: 'flap twenty-six' } }],
    },
    {
      procedure: { steps: [order('heading fifteen', 'heading selector'), order('heading fifty', 'rate selector')] },
      findings: [{ at: 's1 orderWords', message: 'alike', witness: { kind: 'order' } }],
    },
    {
      why: 'in another text of the phase',
      procedure: { phases: ['approach'], steps: [order('flap six', 'flap lever', 'F6')] },
      facts: {
        others: told([
          { title: 'Visual', phases: ['approach'], steps: [order('flap twenty-six', 'flap lever', 'F26')] },
        ]),
      },
      findings: [{ at: 's1 orderWords', message: 'alike', says: 'Visual', witness: { second: 'flap twenty-six' } }],
    },
    {
      why: 'an alert and a phrase of the controller',
      procedure: {
        steps: [order('windshear', 'thrust levers'), { ...order('', 'brakes'), cue: 'heard "hold position"' }],
      },
      findings: [
        { at: 's1 orderWords', message: 'reserved', says: 'an alert', witness: { first: 'windshear' } },
        { at: 's2 orderWords', message: 'reserved', says: 'the controller', witness: { first: 'hold position' } },
      ],
    },
  ],
});

describe('soundAlike', () => {
  it.each([
    ['sixteen', 'sixty', true],
    ['stop', 'step', true],
    ['flap two-six', 'flap six', false],
    ['thrust set', 'thrust not set', false],
    ['glide', 'climb', false],
    ['route', 'route', false],
  ])('%s, %s: %s', (a, b, alike) => {
    expect(soundAlike(a, b)).toBe(alike);
    expect(soundAlike(b, a)).toBe(alike);
  });
});
