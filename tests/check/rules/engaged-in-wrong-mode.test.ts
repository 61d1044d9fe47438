import { engagedInWrongMode } from '../../../lib/check/rules/engaged-in-wrong-mode.ts';
import { testRule } from '../../kit/rule-tester.ts';

const engage = {
  cue: 'height >= 600 ft AAL',
  orderBy: 'PF',
  orderWords: 'govern, route, level: autopilot on',
  who: 'PM',
  verb: 'engage',
  object: 'autopilot switch',
  value: 'on',
  note: 'PF works the panel from here',
} as const;
const off = { autopilot: 'off' } as const;
const witness = { quote: 'autopilot switch' };

testRule(engagedInWrongMode, {
  valid: [
    { entry: off, steps: [engage] },
    {
      entry: off,
      steps: [
        { cue: 'height >= 500 ft AAL', who: 'PM', verb: 'read', object: 'mode line', say: 'govern, route, level' },
        { ...engage, orderWords: 'autopilot on' },
      ],
    },
    { entry: off, steps: [{ ...engage, verb: 'check', orderWords: '' }] },
  ],
  invalid: [
    {
      procedure: { entry: off, steps: [{ ...engage, orderBy: '' }] },
      findings: [{ at: 's1 orderBy', message: 'unordered', witness }],
    },
    {
      why: 'two axes read, the third not',
      procedure: { entry: off, steps: [{ ...engage, orderWords: 'route, level: autopilot on' }] },
      findings: [{ at: 's1 orderWords', message: 'unread', says: 'The thrust mode', witness }],
    },
    {
      why: 'the flying pilot engages it',
      procedure: { entry: off, steps: [{ ...engage, who: 'PF' }] },
      findings: [{ at: 's1 who', message: 'hand', says: "PM's here", witness }],
    },
    {
      procedure: { entry: off, steps: [{ ...engage, note: '' }] },
      findings: [{ at: 's1 note', message: 'panel', witness }],
    },
  ],
});
