import { twoActionsOneStep } from '../../../lib/check/rules/two-actions-one-step.ts';
import { testRule } from '../../kit/rule-tester.ts';

const step = (object: string, value = '') => ({
  steps: [{ cue: 'then', who: 'PF', verb: 'set', object, value } as const],
});

testRule(twoActionsOneStep, {
  valid: [
    step('altitude selector', 'cleared altitude'),
    step('weather radar', 'range 160 NM, tilt for the cell, then range 80 NM'),
    step('radio and cabin', 'back on route; cabin released'),
    step('mode line', 'PM says "set and check the altitude"'),
  ],
  invalid: [
    {
      procedure: step('altitude and arm approach'),
      findings: [{ at: 's1 object', message: 'second', says: 'arm approach', witness: { quote: 'arm approach' } }],
    },
    {
      procedure: step('flap lever', 'F6, then check the speed'),
      findings: [{ at: 's1 value', message: 'second', witness: { quote: 'check the speed' } }],
    },
    {
      procedure: step('heading', '060; press HEADING'),
      findings: [{ at: 's1 value', message: 'second', witness: { quote: 'press HEADING' } }],
    },
  ],
});
