import { governanceOn, type Mark } from '../../../lib/check/governance.ts';
import { changedWithoutMark } from '../../../lib/check/rules/changed-without-mark.ts';
import { procedureWith, type StepParts } from '../../../lib/procedure/build.ts';
import { testRule } from '../../kit/rule-tester.ts';

const slow: StepParts = { id: 'a', label: 'TX-01', cue: 'then', who: 'PF', verb: 'set', object: 'speed selector' };
const call: StepParts = { id: 'b', label: 'TX-02', cue: 'then', who: 'PM', verb: 'call', object: 'speed' };
const before = [{ ...slow, value: '195 kt' }, call];
const whole: Mark = { step: '', field: '', reason: 'VFE F6 lowered', source: 'sheet C', risk: '' };

const since = (steps: readonly StepParts[], marks: readonly Mark[]) => ({
  governance: governanceOn('2026-11-25', {
    change: { base: { issue: 3, procedure: procedureWith({ steps }) }, marks },
  }),
});
const now = { steps: [{ ...slow, value: '190 kt' }, call] };

testRule(changedWithoutMark, {
  valid: [
    { why: 'nothing changed', procedure: { steps: before }, facts: since(before, []) },
    { why: 'one reason for all', procedure: now, facts: since(before, [whole]) },
    {
      why: 'a mark of its own, and the source stands in the step',
      procedure: { steps: [{ ...slow, value: '190 kt', source: 'sheet C, 4' }, call] },
      facts: since(before, [
        { ...whole, step: 'a', field: 'value', source: '' },
        { ...whole, step: 'a', field: 'source' },
      ]),
    },
    {
      why: 'only the words of a note changed',
      procedure: { steps: [{ ...slow, value: '195 kt', note: 'shorter now' }, call] },
      facts: since(before, []),
    },
    {
      why: 'a first issue is compared with nothing',
      procedure: now,
      facts: { governance: governanceOn('2026-11-25', { change: { base: null, marks: [] } }) },
    },
  ],
  invalid: [
    {
      why: 'a value',
      procedure: now,
      facts: since(before, []),
      findings: [
        {
          at: 'a value',
          message: 'unmarked',
          says: '“195 kt” is now “190 kt”',
          witness: { says: 'against issue 3: TX-01, value: “195 kt” is now “190 kt”' },
        },
      ],
    },
    {
      why: 'an actor, without a reason',
      procedure: { steps: [{ ...slow, who: 'PM', value: '195 kt' }, call] },
      facts: since(before, [{ ...whole, reason: ' ' }]),
      findings: [{ at: 'a who', message: 'no-reason', witness: { first: 'a' } }],
    },
    {
      why: 'the order, without a source',
      procedure: { steps: [call, { ...slow, value: '195 kt' }] },
      facts: since(before, [{ ...whole, source: '' }]),
      findings: [{ at: 'b object', message: 'no-source', says: 'Moved', witness: { first: 'b' } }],
    },
    {
      why: 'an old source of the step does not speak for a new value',
      procedure: { steps: [{ ...slow, value: '190 kt', source: 'sheet A' }] },
      facts: since([{ ...slow, value: '195 kt', source: 'sheet A' }], [{ ...whole, source: '' }]),
      findings: [{ at: 'a value', message: 'no-source', witness: { first: 'a' } }],
    },
    {
      why: 'a step gone: the whole is named',
      procedure: { steps: [{ ...slow, value: '195 kt' }] },
      facts: since(before, []),
      findings: [{ at: ' title', message: 'unmarked', says: 'Step removed', witness: { first: '' } }],
    },
  ],
  missing: [{ procedure: now, because: 'the issue before and the reasons for the change were not given' }],
});
