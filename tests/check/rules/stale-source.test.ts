import { governanceOn, type SourceFact } from '../../../lib/check/governance.ts';
import { staleSource } from '../../../lib/check/rules/stale-source.ts';
import type { StepParts } from '../../../lib/procedure/build.ts';
import { testRule } from '../../kit/rule-tester.ts';

const step: StepParts = {
  id: 'a',
  cue: 'speed <= 190 kt',
  who: 'PM',
  verb: 'select',
  object: 'flap lever',
  value: 'F6',
};
const procedure = { steps: [step, { ...step, id: 'b' }] };
const newer = { revision: 'B', temporary: false };
const use = { step: 'a', value: 'VFE F6', now: 'same', newValue: '' } as const;
const source: SourceFact = { id: 'data', title: 'TN-182 data', cited: 'A', newer, uses: [use] };
const facts = (...sources: SourceFact[]) => ({ governance: governanceOn('2026-11-25', { sources }) });

testRule(staleSource, {
  valid: [
    { why: 'the newest is cited', procedure, facts: facts({ ...source, newer: null }) },
    { why: 'no source at all', procedure, facts: facts() },
    {
      why: 'a temporary revision is exempt',
      procedure,
      facts: facts({ ...source, newer: { ...newer, temporary: true }, uses: [{ ...use, now: 'not compared' }] }),
    },
  ],
  invalid: [
    {
      why: 'another value, in two steps',
      procedure,
      facts: facts({
        ...source,
        uses: [
          { ...use, now: 'changed', newValue: '185 kt' },
          { ...use, step: 'b', now: 'changed', newValue: '185 kt' },
        ],
      }),
      findings: [
        { at: 'a source', message: 'changed', says: 'VFE F6 is 185 kt there', witness: { first: 'A', second: 'B' } },
        { at: 'b source', message: 'changed', witness: { first: 'A' } },
      ],
    },
    {
      why: 'not compared: once for the source',
      procedure,
      facts: facts({
        ...source,
        cited: '',
        uses: [
          { ...use, now: 'not compared' },
          { ...use, step: 'b', now: 'not compared' },
        ],
      }),
      findings: [
        {
          at: 'a source',
          message: 'not-compared',
          says: 'cites none',
          witness: { says: 'cited: no revision; received: B' },
        },
      ],
    },
    {
      why: 'the same in both',
      procedure,
      facts: facts(source),
      findings: [{ at: 'a source', message: 'same', witness: { second: 'B' } }],
    },
    {
      why: 'cited by the procedure as a whole',
      procedure,
      facts: facts({ ...source, uses: [{ ...use, step: '', now: 'not compared' }] }),
      findings: [{ at: ' title', message: 'not-compared', witness: { first: 'A' } }],
    },
  ],
  missing: [{ procedure, because: 'the table of sources was not given' }],
});
