import { sameWordsDifferentValue } from '../../../lib/check/rules/same-words-different-value.ts';
import type { StepParts } from '../../../lib/procedure/build.ts';
import { testRule, told } from '../../kit/rule-tester.ts';

const set = (value: string, more: StepParts = {}): StepParts => ({
  family: 'set-missed',
  cue: 'height <= 1 000 ft AAL',
  who: 'PM',
  verb: 'set',
  object: 'altitude selector',
  value,
  ...more,
});
const others = (...steps: readonly StepParts[]) => ({ others: told(steps.map((step) => ({ steps: [step] }))) });

testRule(sameWordsDifferentValue, {
  valid: [
    { procedure: { steps: [set('3 000 ft MSL')] }, facts: others(set('3 000 ft  MSL'), set('3 000 ft MSL')) },
    {
      why: 'two fields differ',
      procedure: { steps: [set('4 000 ft MSL', { cue: 'height <= 500 ft AAL' })] },
      facts: others(set('3 000 ft MSL')),
    },
    {
      why: 'more say it as here: the other one is asked',
      procedure: { steps: [set('3 000 ft MSL')] },
      facts: others(set('3 000 ft MSL'), set('4 000 ft MSL')),
    },
    {
      why: 'another family',
      procedure: { steps: [set('4 000 ft MSL', { family: 'other' })] },
      facts: others(set('3 000 ft MSL')),
    },
    {
      why: 'the other one has a reason',
      procedure: { steps: [set('3 000 ft MSL')] },
      facts: others(set('4 000 ft MSL', { why: 'higher ground' })),
    },
  ],
  invalid: [
    {
      why: 'one of seven',
      procedure: { steps: [set('4 000 ft MSL')] },
      facts: others(...Array.from({ length: 6 }, () => set('3 000 ft MSL'))),
      findings: [{ at: 's1 value', message: 'differs', witness: { first: '4 000 ft msl', second: '3 000 ft msl' } }],
    },
    {
      why: 'the verb',
      procedure: { steps: [set('3 000 ft MSL', { verb: 'check' })] },
      facts: others(set('3 000 ft MSL')),
      findings: [{ at: 's1 verb', message: 'differs', witness: { first: 'check', second: 'set' } }],
    },
    {
      why: 'the order, in two steps of one text',
      procedure: {
        steps: [
          set('3 000 ft MSL', { orderBy: 'PF', orderWords: 'three thousand' }),
          set('3 000 ft MSL', { orderBy: 'PF', orderWords: 'missed approach' }),
        ],
      },
      findings: [
        { at: 's1 orderWords', message: 'differs', witness: { second: 'pf missed approach' } },
        { at: 's2 orderWords', message: 'differs', witness: { second: 'pf three thousand' } },
      ],
    },
    {
      why: 'a copy, by the id of its source',
      procedure: { steps: [set('4 000 ft MSL', { family: 'st_abc' })] },
      facts: others(set('3 000 ft MSL', { id: 'st_abc', family: '' })),
      findings: [{ at: 's1 value', message: 'differs', says: 'say why', witness: { kind: 'order' } }],
    },
  ],
});
