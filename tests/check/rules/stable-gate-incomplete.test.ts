import { stableGateIncomplete } from '../../../lib/check/rules/stable-gate-incomplete.ts';
import type { StepParts } from '../../../lib/procedure/build.ts';
import { testRule, told } from '../../kit/rule-tester.ts';

const WHOLE =
  'VAPP - 5 kt to VAPP + 10 kt; sink at most 1 000 ft/min; course and glide within half a dot; planned detent and gear indicated; thrust above idle; landing checklist complete';
const gate = (value = WHOLE, more: StepParts = {}): StepParts => ({
  cue: 'height <= 1 000 ft AAL',
  who: 'PM',
  verb: 'check',
  object: 'stable gate',
  value,
  checkIfNot: 'PM "not stable, go around"',
  ...more,
});
const approach = (...steps: readonly StepParts[]) => ({ phases: ['approach', 'landing'] as const, steps });
const at = 's1 value';

testRule(stableGateIncomplete, {
  valid: [
    approach(gate()),
    approach(gate(WHOLE.replace('VAPP - 5 kt to VAPP + 10 kt', 'VAPP −5 to +10 kt'))),
    approach(gate(WHOLE, { checkIfNot: '', branch: [{ when: 'judged "not stable"', to: 'go-around' }] })),
    { why: 'a supplement has the gate of its approach', procedure: { ...approach(), class: 'supplementary normal' } },
    {
      why: 'the figures of the policy',
      procedure: approach(gate()),
      facts: { others: told([approach(gate(WHOLE.replace('1 000 ft/min', '800 ft/min')))]) },
    },
  ],
  invalid: [
    {
      why: 'no thrust, no gear',
      procedure: approach(gate(WHOLE.replace('thrust above idle; ', '').replace(' and gear', ''))),
      findings: [{ at, message: 'missing', says: 'gear, thrust', witness: { kind: 'text' } }],
    },
    {
      why: 'the speed alone, then another window',
      procedure: approach(
        gate(WHOLE.replace('VAPP - 5 kt to VAPP + 10 kt', 'speed good')),
        gate(WHOLE.replace('+ 10', '+ 20')),
      ),
      findings: [
        { at, message: 'window', says: '-5 kt to +10 kt', witness: { kind: 'text' } },
        { at: 's2 value', message: 'other-window', witness: { first: '-5 kt to +20 kt' } },
      ],
    },
    {
      why: 'a sink of 1 200 ft/min and no words',
      procedure: approach(gate(WHOLE.replace('1 000 ft/min', '1 200 ft/min'), { checkIfNot: '' })),
      findings: [
        { at: 's1 checkIfNot', message: 'no-words', witness: { kind: 'absent' } },
        { at, message: 'sink', says: '1200 ft/min', witness: { second: '1000 ft/min' } },
      ],
    },
    {
      why: 'an approach without a gate',
      procedure: approach({ cue: 'then', who: 'PM', verb: 'read', object: 'mode line' }),
      findings: [{ at: ' steps', message: 'no-gate', witness: { kind: 'absent' } }],
    },
    {
      why: 'stricter than the others: one fleet has one gate',
      procedure: approach(gate(WHOLE.replace('1 000 ft/min', '800 ft/min'))),
      facts: { others: told([{ title: 'Visual approach', ...approach(gate()) }]) },
      findings: [{ at, message: 'differs', says: 'Visual approach', witness: { kind: 'order' } }],
    },
  ],
});
