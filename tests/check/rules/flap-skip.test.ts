import { flapSkip } from '../../../lib/check/rules/flap-skip.ts';
import { testRule } from '../../kit/rule-tester.ts';

const select = (detent: string) =>
  ({ cue: 'then', who: 'PM', verb: 'select', object: 'flap lever', value: detent }) as const;

testRule(flapSkip, {
  valid: [
    {
      phases: ['approach'],
      entry: { flaps: ['F6'] },
      steps: [select('F12'), select('F18'), select('F26'), select('F35')],
    },
    {
      why: 'declared for a go-around, with its time',
      procedure: {
        phases: ['go-around'],
        entry: { flaps: ['F26', 'F35'] },
        steps: [{ ...select('F18'), checkWithin: '15 s from F35 or 9 s from F26' }],
      },
    },
    {
      why: 'one text for three take-off detents',
      procedure: {
        phases: ['take-off'],
        entry: { flaps: ['F6', 'F12', 'F18'] },
        steps: [
          { ...select('F12'), cue: 'flaps F18 indicated', only: 'take-off detent F18' },
          { ...select('F6'), cue: 'flaps F12 indicated', only: 'take-off detent F12 or F18' },
          { ...select('F0'), cue: 'flaps F6 indicated' },
        ],
      },
    },
    { why: 'the lever is there already', procedure: { entry: { flaps: ['F6'] }, steps: [select('F6')] } },
    { why: 'nothing says what the flap is', procedure: { entry: { flaps: [] }, steps: [select('F18')] } },
  ],
  invalid: [
    {
      procedure: { phases: ['approach'], entry: { flaps: ['F6'] }, steps: [select('F18')] },
      findings: [
        { at: 's1 value', message: 'skip', says: 'passes F12', witness: { kind: 'order', first: 'F6', second: 'F18' } },
      ],
    },
    {
      why: 'declared for the go-around only',
      procedure: {
        phases: ['approach'],
        entry: { flaps: ['F35'] },
        steps: [{ ...select('F18'), checkWithin: '15 s' }],
      },
      findings: [{ at: 's1 value', message: 'skip', says: 'select F26 first', witness: { kind: 'order' } }],
    },
    {
      why: 'one of the possible take-off detents skips',
      procedure: { phases: ['take-off'], entry: { flaps: ['F6', 'F12'] }, steps: [select('F0')] },
      findings: [{ at: 's1 value', message: 'skip', witness: { first: 'F12', second: 'F0' } }],
    },
    {
      procedure: { entry: { flaps: ['F6'] }, steps: [select('F10')] },
      findings: [{ at: 's1 value', message: 'unknown', says: 'F0, F6, F12, F18, F26, F35', witness: { quote: 'F10' } }],
    },
    {
      procedure: { entry: { flaps: ['F6'] }, steps: [select('as briefed')] },
      findings: [{ at: 's1 value', message: 'unsaid', witness: { kind: 'absent' } }],
    },
    {
      procedure: { phases: ['go-around'], entry: { flaps: ['F35'] }, steps: [select('F18')] },
      findings: [
        { at: 's1 checkWithin', message: 'no-time', says: '12 s', witness: { kind: 'absent', field: 'checkWithin' } },
      ],
    },
    {
      procedure: {
        phases: ['go-around'],
        entry: { flaps: ['F35'] },
        steps: [{ ...select('F18'), checkWithin: '8 s' }],
      },
      findings: [{ at: 's1 checkWithin', message: 'too-short', says: 'needs 12 s', witness: { quote: '8 s' } }],
    },
  ],
});
