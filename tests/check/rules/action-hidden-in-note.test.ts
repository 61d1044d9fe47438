import { actionHiddenInNote } from '../../../lib/check/rules/action-hidden-in-note.ts';
import { testRule } from '../../kit/rule-tester.ts';

const before = (kind: 'note' | 'caution' | 'warning', text: string) => ({
  steps: [{ cue: 'then', before: [{ kind, text }] }],
});

testRule(actionHiddenInNote, {
  valid: [
    before('note', 'With pumps off the gauge reads low.'),
    before('warning', 'Do not exceed 178 kt with F26.'),
    before('caution', 'Start of the descent is later with a tail wind.'),
    before('note', 'Uneven thrust is hard to hold; the set value comes late.'),
    { steps: [{ cue: 'then', note: 'PM says "select pumps on" aloud' }] },
  ],
  invalid: [
    {
      procedure: before('note', 'Select pumps on before the check.'),
      findings: [
        {
          at: 's1 before.0',
          message: 'action',
          says: 'Select pumps on before the check',
          witness: { quote: 'Select pumps on before the check' },
        },
      ],
    },
    {
      procedure: { steps: [{ cue: 'then', note: 'The gauge reads low: switch the pumps on.' }] },
      findings: [
        { at: 's1 note', message: 'action', says: 'switch the pumps on', witness: { quote: 'switch the pumps on' } },
      ],
    },
    {
      procedure: {
        steps: [{ cue: 'then' }],
        branches: [
          { before: [{ kind: 'caution', text: 'Ice is likely. Check the wing.' }], steps: [{ id: 'b', cue: 'then' }] },
        ],
      },
      findings: [
        { at: 'b branches.b1.before.0', message: 'action', says: 'caution', witness: { quote: 'Check the wing' } },
      ],
    },
  ],
});
