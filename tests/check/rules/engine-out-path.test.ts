import { engineOutPath } from '../../../lib/check/rules/engine-out-path.ts';
import type { StepParts } from '../../../lib/procedure/build.ts';
import { testRule } from '../../kit/rule-tester.ts';

const HEAD: StepParts = {
  cue: 'height >= 400 ft AAL',
  who: 'PM',
  verb: 'press',
  object: 'HEADING',
  value: 'heading of the engine-out path',
};
const level = (height: string): StepParts => ({
  cue: `height >= ${height}`,
  who: 'PF',
  verb: 'press',
  object: 'LEVEL',
});
const out = (title: string, ...steps: readonly StepParts[]) => ({
  phases: ['take-off'] as const,
  class: 'engine-out' as const,
  title,
  entry: { flaps: ['F12'] },
  steps,
});

testRule(engineOutPath, {
  valid: [
    out('Engine-out take-off at QVDS', HEAD, level('1 600 ft AAL')),
    out('Engine-out take-off', HEAD, level('engine-out acceleration altitude')),
    { why: 'higher is no less clear', procedure: out('Engine-out take-off at QVDS', HEAD, level('1 800 ft AAL')) },
    { why: 'all engines', procedure: { ...out('Take-off at QVDS', level('1 500 ft AAL')), class: 'normal' } },
    {
      why: 'a figure of another aerodrome',
      procedure: out('Engine-out take-off at QHLM', HEAD, level('1 500 ft AAL')),
    },
  ],
  invalid: [
    {
      procedure: out('Engine-out take-off at QVDS', HEAD, level('1 500 ft AAL')),
      findings: [
        { at: 's2 cue', message: 'low', says: 'at 1 500 ft AAL, QVDS has 1 600 ft AAL', witness: { kind: 'text' } },
      ],
    },
    {
      why: 'said in a text of a normal procedure',
      procedure: {
        ...out('Take-off at QVDS', { ...HEAD, note: 'engine-out acceleration altitude 1 500 ft AAL' }),
        class: 'normal',
      },
      findings: [{ at: 's1 note', message: 'low', witness: { quote: '1 500 ft' } }],
    },
    {
      why: 'the altitude for all engines',
      procedure: out('Engine-out take-off', HEAD, level('acceleration altitude')),
      findings: [{ at: 's2 cue', message: 'allEngines', witness: { kind: 'text' } }],
    },
    {
      why: 'neither way nor height',
      procedure: out('Engine-out take-off', { cue: 'speed >= VR', who: 'PM', verb: 'call', object: 'speed' }),
      findings: [
        { at: ' steps', message: 'path', witness: { kind: 'absent' } },
        { at: ' steps', message: 'vertical', witness: { kind: 'absent' } },
      ]
        .sort((a, b) => (a.message < b.message ? 1 : -1))
        .reverse(),
    },
  ],
});
