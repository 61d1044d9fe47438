import { speedbrakeWithFlap } from '../../../lib/check/rules/speedbrake-with-flap.ts';
import { testRule } from '../../kit/rule-tester.ts';

const brake = (value: string, more: object = {}) =>
  ({ cue: 'then', who: 'PF', verb: 'move', object: 'speedbrake lever', value, ...more }) as const;
const flap = (value: string) => ({ cue: 'then', who: 'PM', verb: 'select', object: 'flap lever', value }) as const;
const witness = { kind: 'text' };

testRule(speedbrakeWithFlap, {
  valid: [
    { steps: [brake('half'), brake('stowed')] },
    { steps: [brake('out'), brake('', { verb: 'arm' })] },
    { why: 'only talked about', procedure: { steps: [brake('half', { verb: 'request' })] } },
    {
      why: 'out in a branch, stowed where it joins',
      procedure: { steps: [brake('stowed')], branches: [{ steps: [brake('full')], joins: 's1' }] },
    },
    {
      why: 'stowed before the landing flap',
      procedure: { entry: { flaps: ['F18'] }, steps: [brake('half'), brake('in'), flap('F26')] },
    },
  ],
  invalid: [
    {
      procedure: { steps: [brake('half')] },
      findings: [{ at: 's1 value', message: 'left', witness: { quote: 'half' } }],
    },
    {
      why: 'stowed only before it is out',
      procedure: { steps: [brake('stowed'), brake('full')] },
      findings: [{ at: 's2 value', message: 'left', witness }],
    },
    {
      why: 'still out with the landing flap',
      procedure: { entry: { flaps: ['F18'] }, steps: [brake('half'), flap('F26'), brake('stowed')] },
      findings: [{ at: 's1 value', message: 'flap', says: 'F26', witness }],
    },
    {
      why: 'both',
      procedure: { entry: { flaps: ['F26'] }, steps: [brake('out')] },
      findings: [
        { at: 's1 value', message: 'left', witness },
        { at: 's1 value', message: 'flap', witness },
      ].sort((a, b) => (a.message < b.message ? 1 : -1)),
    },
  ],
});
