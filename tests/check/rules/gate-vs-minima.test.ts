import { gateVsMinima } from '../../../lib/check/rules/gate-vs-minima.ts';
import { testRule } from '../../kit/rule-tester.ts';

const gate = (height: string, more: object = {}) =>
  ({ cue: `height <= ${height}`, who: 'PM', verb: 'check', object: 'stable gate', ...more }) as const;
const decide = (cue: string) =>
  ({ cue, who: 'PF', verb: 'decide', object: 'runway', value: 'landing; else going around' }) as const;
const approach = (title: string, ...steps: readonly (ReturnType<typeof gate> | ReturnType<typeof decide>)[]) => ({
  phases: ['approach'] as const,
  title,
  steps,
});

testRule(gateVsMinima, {
  valid: [
    approach('Approach at QAMB', gate('1 000 ft AAL')),
    approach('Approach at QHLM', gate('500 ft AAL')),
    {
      why: 'any aerodrome, above the highest minima',
      procedure: approach('Approach', gate('1 000 ft AAL'), decide('altitude <= minima')),
    },
    { why: 'circling with its own gate', procedure: approach('Approach', gate('1 000 ft AAL', { only: 'circling' })) },
    { why: 'above the minima a call is early', procedure: approach('Approach', decide('altitude <= minima + 100 ft')) },
  ],
  invalid: [
    {
      procedure: approach('Approach at QAMB', gate('500 ft AAL')),
      findings: [
        {
          at: 's1 cue',
          message: 'low',
          says: 'MDA of QAMB, 535 ft AAL',
          witness: { kind: 'envelope', at: { gate: 500, minima: 535 } },
        },
      ],
    },
    {
      why: 'for all aerodromes, below the highest minima',
      procedure: approach('Approach', gate('500 ft AAL')),
      findings: [{ at: 's1 cue', message: 'low', says: 'QAMB', witness: { kind: 'envelope' } }],
    },
    {
      why: 'decided below',
      procedure: approach('Approach', decide('altitude <= minima - 50 ft')),
      findings: [
        { at: 's1 cue', message: 'late', says: '50 ft below', witness: { quote: 'altitude <= minima - 50 ft' } },
      ],
    },
    {
      why: 'circling without a gate',
      procedure: approach('Circling approach', gate('1 000 ft AAL')),
      findings: [{ at: ' title', message: 'circling', witness: { kind: 'absent' } }],
    },
  ],
});
