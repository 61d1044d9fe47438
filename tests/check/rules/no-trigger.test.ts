import { noTrigger } from '../../../lib/check/rules/no-trigger.ts';
import { testRule } from '../../kit/rule-tester.ts';

const flap = { who: 'PM', verb: 'select', object: 'flap lever', value: 'F12' } as const;

testRule(noTrigger, {
  valid: [
    {
      steps: [
        { ...flap, cue: 'speed <= VFE F12 - 5 kt' },
        { cue: 'then', who: 'PF', verb: 'check', object: 'flaps' },
      ],
    },
    {
      steps: [
        { ...flap, label: 'XX-01', cue: 'heard "flap twelve"' },
        { ...flap, cue: '60 s after XX-01' },
      ],
    },
    {
      why: 'a branch begins when its own condition holds',
      procedure: {
        steps: [{ ...flap, cue: 'event "cleared"' }],
        branches: [{ when: 'vertical = CAPTURE', steps: [{ ...flap, cue: 'then' }] }],
      },
    },
    { why: 'a missing unit is said by its own check', procedure: { steps: [{ ...flap, cue: 'speed <= 180' }] } },
  ],
  invalid: [
    {
      why: 'the same problem is said once',
      procedure: { steps: [{ ...flap, cue: '(((speed <= 180 kt' }] },
      findings: [{ at: 's1 cue', message: 'unreadable', says: 'bracket', witness: { kind: 'text' } }],
    },
    {
      procedure: { steps: [{ ...flap, cue: '' }] },
      findings: [{ at: 's1 cue', message: 'none', witness: { kind: 'absent', field: 'cue' } }],
    },
    {
      procedure: { steps: [{ ...flap, cue: 'when it feels right' }] },
      findings: [{ at: 's1 cue', message: 'unreadable', witness: { kind: 'text', field: 'cue' } }],
    },
    {
      why: 'the misspelt word is shown and mended',
      procedure: { steps: [{ ...flap, cue: 'sped <= 180 kt' }] },
      findings: [{ at: 's1 cue', message: 'unreadable', witness: { quote: 'sped' }, fix: 'speed <= 180 kt' }],
    },
    {
      procedure: { steps: [{ ...flap, cue: 'then' }] },
      findings: [{ at: 's1 cue', message: 'nothing-before', witness: { quote: 'then' } }],
    },
    {
      procedure: { steps: [{ ...flap, cue: 'after XX-09' }] },
      findings: [{ at: 's1 cue', message: 'unknown-step', says: 'XX-09', witness: { quote: 'after XX-09' } }],
    },
    {
      why: 'blanks are no condition',
      procedure: { steps: [{ ...flap, cue: '   ' }] },
      findings: [{ at: 's1 cue', message: 'none', witness: { kind: 'absent' } }],
    },
  ],
});
