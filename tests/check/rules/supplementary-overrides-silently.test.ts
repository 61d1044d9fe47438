import { supplementaryOverridesSilently } from '../../../lib/check/rules/supplementary-overrides-silently.ts';
import type { ProcedureParts, StepParts } from '../../../lib/procedure/build.ts';
import { testRule, told } from '../../kit/rule-tester.ts';

const flap = (more: StepParts = {}): StepParts => ({
  family: 'flap-out',
  cue: 'event "taxi clearance read back"',
  who: 'PM',
  verb: 'select',
  object: 'flap lever',
  value: 'F12',
  ...more,
});
const cold = (...steps: readonly StepParts[]): ProcedureParts => ({ class: 'cold-weather', phases: ['taxi'], steps });
const taxi = {
  others: told([{ title: 'Taxi', class: 'normal', phases: ['taxi'], steps: [flap({ label: 'TX-03' })] }]),
};
const late = (more: StepParts): StepParts => flap({ cue: 'event "line-up clearance read back"', ...more });

testRule(supplementaryOverridesSilently, {
  valid: [
    { procedure: cold(late({ note: 'replaces TX-03 until line-up' })), facts: taxi },
    { why: 'the same as the normal step', procedure: cold(flap()), facts: taxi },
    { why: 'another phase', procedure: { ...cold(late({})), phases: ['approach'] }, facts: taxi },
    { why: 'a normal text', procedure: { ...cold(late({ value: 'later' })), class: 'normal' }, facts: taxi },
    cold(flap({ value: 'later', note: 'replaces item 3 of the taxi list until line-up' })),
  ],
  invalid: [
    {
      why: 'later than the normal step, which is not named',
      procedure: cold(late({})),
      facts: taxi,
      findings: [{ at: 's1 only', message: 'unnamed', says: 'TX-03', witness: { second: 'TX-03' } }],
    },
    {
      why: 'named, but without an end',
      procedure: cold(late({ note: 'replaces TX-03' })),
      facts: taxi,
      findings: [{ at: 's1 only', message: 'endless', says: 'TX-03', witness: { kind: 'order' } }],
    },
    {
      why: 'put off in words',
      procedure: cold(flap({ value: 'delayed in slush' }), flap({ value: 'left out', note: 'replaces TX-03' })),
      findings: [
        { at: 's1 value', message: 'put-off', says: 'delayed', witness: { quote: 'delayed' } },
        { at: 's2 value', message: 'endless', says: 'TX-03', witness: { quote: 'left out' } },
      ],
    },
  ],
});
