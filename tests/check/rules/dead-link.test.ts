import { deadLink } from '../../../lib/check/rules/dead-link.ts';
import type { ProcedureParts, StepParts } from '../../../lib/procedure/build.ts';
import { testRule, told } from '../../kit/rule-tester.ts';

const step = (more: StepParts): StepParts => ({
  label: 'XX-01',
  cue: 'then',
  who: 'PM',
  verb: 'check',
  object: 'plan',
  ...more,
});
const one = (more: StepParts, parts: ProcedureParts = {}): ProcedureParts => ({ ...parts, steps: [step(more)] });
const others = { others: told([{ title: 'Go-around, all engines', steps: [{ label: 'GA-07' }] }]) };

testRule(deadLink, {
  valid: [
    one({ checkIfNot: 'back to XX-01', note: 'press GO-AROUND, expect RATE-UP' }),
    {
      procedure: one({ checkIfNot: 'GA-07', note: 'procedure go-around' }, { leavesTo: ['go-around'] }),
      facts: others,
    },
    one({ verb: 'read', object: 'landing checklist', checkIfNot: 'list "Flaps not in agreement"' }),
    { leavesTo: ['windshear escape', 'baulked landing after reverse (not flown)', 'tn-182-data'] },
    one({ note: 'see the card, item 3 of the taxi list; 4.3 t of fuel', value: 'two procedures of the house' }),
    {
      steps: [step({ branch: [{ when: 'judged "x"', to: 'Second try' }] })],
      branches: [{ title: 'Second try', joins: 'XX-01', steps: [{ label: 'XX-S1' }] }],
    },
  ],
  invalid: [
    {
      why: 'labels that are gone',
      procedure: one({ checkIfNot: 'XX-07', note: 'GA-99 and GA-07 again' }),
      facts: others,
      findings: [
        { at: 'XX-01 checkIfNot', message: 'label', says: 'XX-07', witness: { quote: 'XX-07' } },
        { at: 'XX-01 note', message: 'label', says: 'GA-99', witness: { quote: 'GA-99' } },
      ],
    },
    {
      why: 'procedures and lists that nobody has',
      procedure: one(
        {
          verb: 'read',
          object: 'de-icing checklist',
          checkIfNot: 'list "Gear jammed"',
          note: 'then procedure ditching',
        },
        { leavesTo: ['ditching'] },
      ),
      findings: [
        { at: ' leavesTo', message: 'name', says: 'ditching', witness: { quote: 'ditching' } },
        { at: 'XX-01 checkIfNot', message: 'name', says: 'Gear jammed', witness: { quote: 'Gear jammed' } },
        { at: 'XX-01 note', message: 'name', witness: { quote: 'ditching' } },
        { at: 'XX-01 object', message: 'name', says: 'de-icing', witness: {} },
      ],
    },
    {
      why: 'a number that moves',
      procedure: one({ checkIfNot: 'see 4.3', note: 'refer to page 12' }),
      findings: [
        { at: 'XX-01 checkIfNot', message: 'position', witness: { quote: 'see 4.3' } },
        { at: 'XX-01 note', message: 'position', witness: { quote: 'refer to page 12' } },
      ],
    },
    {
      why: 'ways that lead nowhere',
      procedure: {
        steps: [step({ branch: [{ when: 'judged "x"', to: 'ditching' }] })],
        branches: [{ label: 'XX-LOW', joins: 'XX-09', steps: [{ label: 'XX-L1' }] }],
      },
      findings: [
        { at: 'XX-01 branch', message: 'name', witness: { quote: 'ditching' } },
        { at: 'XX-L1 joins', message: 'label', witness: { quote: 'XX-09' } },
      ],
    },
  ],
});
