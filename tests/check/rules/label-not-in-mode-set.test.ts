import { labelNotInModeSet } from '../../../lib/check/rules/label-not-in-mode-set.ts';
import { testRule } from '../../kit/rule-tester.ts';

testRule(labelNotInModeSet, {
  valid: [
    {
      steps: [
        {
          cue: 'vertical = LEVEL',
          expect: { thrust: 'GOVERN', lateral: ['ROUTE', 'HEADING'], vertical: 'LEVEL', armed: [] },
        },
      ],
    },
    {
      steps: [
        {
          cue: 'no ALT armed',
          who: 'PF',
          verb: 'press',
          object: 'ASCENT',
          expect: { thrust: 'same', armed: { add: ['ALT'] } },
        },
      ],
    },
    { steps: [{ cue: 'then', who: 'PF', verb: 'press', object: 'GO-AROUND switch' }] },
    { steps: [{ cue: 'then', who: 'PF', verb: 'press', object: 'DESCENT or ASCENT button' }] },
  ],
  invalid: [
    {
      procedure: { steps: [{ cue: 'then', expect: { vertical: 'HOLD' } }] },
      findings: [{ at: 's1 expect.vertical', message: 'unknown', says: 'HOLD', witness: { quote: 'HOLD' } }],
    },
    {
      procedure: { steps: [{ cue: 'vertical = Level' }] },
      findings: [
        {
          at: 's1 cue',
          message: 'unknown',
          says: 'The word is LEVEL',
          witness: { quote: 'Level' },
          fix: 'vertical = LEVEL',
        },
      ],
    },
    {
      procedure: { steps: [{ cue: 'then', expect: { lateral: 'ASCENT' } }] },
      findings: [
        { at: 's1 expect.lateral', message: 'axis', says: 'belongs to vertical', witness: { quote: 'ASCENT' } },
      ],
    },
    {
      procedure: { exit: { armed: ['ALTITUDE'] } },
      findings: [{ at: ' exit.armed', message: 'unknown', witness: { quote: 'ALTITUDE' } }],
    },
    {
      procedure: { steps: [{ cue: 'then', who: 'PF', verb: 'press', object: 'HOLD' }] },
      findings: [{ at: 's1 object', message: 'button', witness: { quote: 'HOLD' } }],
    },
  ],
});
