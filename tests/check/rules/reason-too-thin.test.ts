import { governanceOn, type Mark } from '../../../lib/check/governance.ts';
import { reasonTooThin } from '../../../lib/check/rules/reason-too-thin.ts';
import { procedureWith, type StepParts } from '../../../lib/procedure/build.ts';
import { testRule } from '../../kit/rule-tester.ts';

const slow: StepParts = { id: 'a', cue: 'then', who: 'PF', verb: 'set', object: 'speed selector', value: '195 kt' };
const other: StepParts = { id: 'b', cue: 'then', who: 'PM', verb: 'call', object: 'speed', say: 'speed' };
const base = { issue: 3, procedure: procedureWith({ steps: [slow, other] }) };
const because = (...marks: Partial<Mark>[]) => ({
  governance: governanceOn('2026-11-25', {
    change: { base, marks: marks.map((mark) => ({ step: '', field: '', reason: '', source: '', risk: '', ...mark })) },
  }),
});
const now = {
  steps: [
    { ...slow, value: '190 kt' },
    { ...other, say: 'speed high' },
  ],
};

testRule(reasonTooThin, {
  valid: [
    { why: 'the hazard', procedure: now, facts: because({ reason: 'Crews retracted too late at high weight' }) },
    { why: 'the data', procedure: now, facts: because({ reason: 'VFE F6 lowered, sheet B' }) },
    {
      why: 'the risk note',
      procedure: now,
      facts: because({ reason: 'Shorter call', risk: 'PF hears it over the radio' }),
    },
    { why: 'the source beside it', procedure: now, facts: because({ reason: 'Shorter call', source: 'Line checks' }) },
    {
      why: 'nothing changed',
      procedure: { steps: [slow, other] },
      facts: because({ reason: 'amended' }),
    },
    {
      why: 'a first issue',
      procedure: now,
      facts: { governance: governanceOn('2026-11-25', { change: { base: null, marks: [] } }) },
    },
  ],
  invalid: [
    {
      why: 'amended, asked once for both changes',
      procedure: now,
      facts: because({ reason: 'amended', source: 'sheet B' }),
      findings: [{ at: ' rationale', message: 'thin', witness: { quote: 'amended' } }],
    },
    {
      why: 'update of the text',
      procedure: now,
      facts: because({ reason: 'Update of the text, as agreed', source: 'sheet B' }),
      findings: [{ at: ' rationale', message: 'thin', witness: { kind: 'text' } }],
    },
    {
      why: 'no reason at all',
      procedure: now,
      facts: because({}),
      findings: [{ at: ' rationale', message: 'empty', says: '190 kt', witness: { kind: 'absent' } }],
    },
    {
      why: 'what is wanted, but neither hazard nor source',
      procedure: now,
      facts: because({ reason: 'The captain likes shorter calls' }),
      findings: [{ at: ' rationale', message: 'unfounded', witness: { quote: 'The captain likes shorter calls' } }],
    },
    {
      why: 'the mark of one field',
      procedure: now,
      facts: because({ reason: 'Line checks: heard badly' }, { step: 'b', field: 'say', reason: 'changed' }),
      findings: [{ at: 'b say', message: 'thin', witness: { quote: 'changed' } }],
    },
  ],
  missing: [{ procedure: now, because: 'the reasons for the change were not given' }],
});
