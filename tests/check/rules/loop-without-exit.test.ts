import { loopWithoutExit } from '../../../lib/check/rules/loop-without-exit.ts';
import { testRule } from '../../kit/rule-tester.ts';

const first = { label: 'X1', cue: 'event "start"', who: 'PM', verb: 'move', object: 'starter' } as const;
const second = (ways: { when: string; to: string }[], note = '') =>
  ({ label: 'X2', cue: 'then', who: 'PM', verb: 'decide', object: 'light-off', branch: ways, note }) as const;
const again = { when: 'event "no light-off"', to: 'X1' };
const on = { when: 'event "light-off"', to: 'X3' };
const third = { label: 'X3', cue: 'then', who: 'PM', verb: 'check', object: 'engine' } as const;

testRule(loopWithoutExit, {
  valid: [
    { steps: [{ ...first, value: 'repeat start, maximum 2 attempts' }] },
    { steps: [first, second([again, on], 'at most 2 attempts'), third] },
    { steps: [first, second([on]), third] },
    { steps: [{ ...first, note: 'the second time: list complete' }, second([again, on]), third] },
  ],
  invalid: [
    {
      procedure: { steps: [{ ...first, value: 'repeat start until light-off' }] },
      findings: [{ at: 'X1 value', message: 'repeat', witness: { quote: 'repeat' } }],
    },
    {
      procedure: { steps: [first, second([again]), third] },
      findings: [{ at: 'X2 branch', message: 'no-exit', says: 'back to X1', witness: { first: 'X1', second: 'X2' } }],
    },
    {
      procedure: { steps: [first, second([again, on]), third] },
      findings: [{ at: 'X2 branch', message: 'no-limit', witness: { first: 'X1', second: 'X2' } }],
    },
  ],
});
