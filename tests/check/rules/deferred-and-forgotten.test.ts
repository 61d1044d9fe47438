import { deferredAndForgotten } from '../../../lib/check/rules/deferred-and-forgotten.ts';
import { testRule } from '../../kit/rule-tester.ts';

const later = {
  cue: 'then',
  who: 'PM',
  verb: 'select',
  object: 'flap lever',
  value: 'F12, may be delayed in icing',
} as const;
const cabin = {
  cue: 'then',
  who: 'PM',
  verb: 'check',
  object: 'cabin',
  note: 'may be deferred until the taxi',
} as const;
const rotate = { cue: 'speed >= V1', who: 'PM', verb: 'call', object: 'indicated speed', say: 'V one' } as const;
const look = (object: string) => ({ cue: 'then', who: 'PM', verb: 'check', object }) as const;

testRule(deferredAndForgotten, {
  valid: [
    { why: 'the line-up list of the house asks for it', procedure: { phases: ['taxi'], steps: [later] } },
    { why: 'a later look', procedure: { phases: ['taxi', 'take-off'], steps: [later, look('flaps'), rotate] } },
    {
      why: 'a list read in time',
      procedure: {
        phases: ['taxi', 'take-off'],
        steps: [later, { cue: 'then', who: 'PM', verb: 'read', object: 'before take-off checklist' }, rotate],
      },
    },
    { why: 'nothing is deferred', procedure: { steps: [{ ...later, value: 'F12 without delay' }, rotate] } },
  ],
  invalid: [
    {
      why: 'the look comes after V1',
      procedure: { phases: ['taxi', 'take-off'], steps: [later, rotate, look('flaps')] },
      findings: [{ at: 's1 value', message: 'forgotten', says: 'flap', witness: { quote: 'may be delayed' } }],
    },
    {
      why: 'no list asks for the cabin',
      procedure: { phases: ['taxi'], steps: [cabin] },
      findings: [{ at: 's1 note', message: 'forgotten', says: 'cabin', witness: { quote: 'may be deferred' } }],
    },
    {
      why: 'a procedure of the cruise has no last list',
      procedure: { phases: ['cruise'], steps: [later] },
      findings: [{ at: 's1 value', message: 'forgotten', witness: { field: 'value' } }],
    },
  ],
});
