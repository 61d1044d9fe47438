import { windLimitsAgree } from '../../../lib/check/rules/wind-limits-agree.ts';
import type { ProcedureParts, StepParts } from '../../../lib/procedure/build.ts';
import { testRule, told } from '../../kit/rule-tester.ts';
import { otherSheet } from '../../kit/sheets.ts';

const one = (more: StepParts, parts: ProcedureParts = {}): ProcedureParts => ({
  phases: ['landing'],
  ...parts,
  steps: [{ cue: 'then', who: 'PM', verb: 'check', object: 'wind', ...more }],
});
const facts = (...others: readonly ProcedureParts[]) => ({
  others: told(others.map((each) => ({ title: 'Fleet card', ...each }))),
});
const wind = (from: number, to: number) => ({ envelope: { wind: { from, to } } });

testRule(windLimitsAgree, {
  valid: [
    one({ value: 'tailwind at most 10 kt, crosswind at most 33 kt' }, wind(-10, 40)),
    one({ only: 'code 3', value: 'crosswind at most 15 kt' }),
    { procedure: one({ value: 'tailwind at most 10 kt' }), facts: facts(one({ note: 'maximum tailwind 10 kt' })) },
    {
      why: 'take-off and landing are two things',
      procedure: one({ value: 'tailwind at most 8 kt at landing' }),
      facts: facts(one({ note: 'tailwind limit for take-off 10 kt' })),
    },
    { why: 'aloft', procedure: { ...one({}), ...wind(-60, 100), phases: ['cruise'] } },
  ],
  invalid: [
    {
      why: 'above the type data, in words and in gate notation',
      procedure: { phases: ['landing'], steps: [{ cue: 'wind >= -15 kt', who: 'PM', verb: 'check', object: 'wind' }] },
      findings: [{ at: 's1 cue', message: 'above', says: '15 kt is above the 10 kt', witness: { first: '15 kt' } }],
    },
    {
      why: 'not as the table of runway states',
      procedure: one({ only: 'code 3', value: 'crosswind at most 20 kt' }),
      findings: [{ at: 's1 value', message: 'table', says: '15 kt', witness: { first: '20 kt', second: '15 kt' } }],
    },
    {
      why: 'two briefings',
      procedure: one({ object: 'tailwind', value: '10 kt' }),
      facts: facts(one({ note: 'maximum tailwind 5 kt' })),
      findings: [{ at: 's1 value', message: 'differs', says: 'Fleet card', witness: { second: '5 kt' } }],
    },
    {
      why: 'not as the aerodrome card',
      procedure: one({ value: 'tailwind at most 5 kt' }, { title: 'Landing at QAMB' }),
      findings: [{ at: 's1 value', message: 'differs', says: 'the card of QAMB', witness: { second: '10 kt' } }],
    },
    {
      why: 'a wind for which there is no landing data',
      procedure: one({}, wind(-15, 40)),
      findings: [{ at: ' envelope.wind', message: 'envelope', says: '15 kt', witness: { kind: 'absent' } }],
    },
    {
      why: 'another type, another table',
      procedure: one({ value: 'crosswind at most 30 kt' }, wind(-15, 35)),
      facts: { sheet: otherSheet() },
      findings: [{ at: 's1 value', message: 'above', says: '28 kt', witness: {} }],
    },
  ],
});
