import { twoTriggersOneMoment } from '../../../lib/check/rules/two-triggers-one-moment.ts';
import { testRule } from '../../kit/rule-tester.ts';

const at = (cue: string, more: object = {}) =>
  ({ cue, who: 'PM', verb: 'read', object: 'mode line', ...more }) as const;

testRule(twoTriggersOneMoment, {
  valid: [
    { steps: [at('height >= 400 ft AAL'), at('then')] },
    { steps: [at('height >= 400 ft AAL'), at('height >= 400 ft AAL', { who: 'PF' })] },
    {
      steps: [
        at('height >= 400 ft AAL', { only: 'ROUTE was armed' }),
        at('height >= 400 ft AAL', { only: 'heading assigned' }),
      ],
    },
    {
      why: 'the words are said twice',
      procedure: {
        steps: [at('heard "checked"'), at('then', { say: 'thrust set', reply: 'checked' }), at('heard "checked"')],
      },
    },
    {
      why: 'a branch is another line',
      procedure: { steps: [at('vertical = CAPTURE')], branches: [{ steps: [at('vertical = CAPTURE')] }] },
    },
  ],
  invalid: [
    {
      procedure: { steps: [at('height >= 400 ft AAL'), at('height >= 400 ft AAL')] },
      findings: [
        {
          at: 's2 cue',
          message: 'same',
          says: 'height >= 400 ft AAL',
          witness: { kind: 'order', first: 's1', second: 's2' },
          fix: 'then',
        },
      ],
    },
    {
      why: 'written differently, the same moment',
      procedure: {
        steps: [at('height >= 1 500 ft AAL and gear up indicated'), at('height>=1500 ft AAL and gear up indicated')],
      },
      findings: [{ at: 's2 cue', message: 'same', witness: { kind: 'order' } }],
    },
    {
      procedure: { steps: [at('event "cleared"'), at('then', { who: 'PF' }), at('event "cleared"')] },
      findings: [{ at: 's3 cue', message: 'same', witness: { first: 's1', second: 's3' } }],
    },
  ],
});
