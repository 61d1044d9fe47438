import { altitudeReferenceMissing } from '../../../lib/check/rules/altitude-reference-missing.ts';
import { testRule } from '../../kit/rule-tester.ts';

const value = (object: string, text: string) => ({
  steps: [{ cue: 'then', who: 'PM', verb: 'set', object, value: text } as const],
});

testRule(altitudeReferenceMissing, {
  valid: [
    {
      steps: [
        { cue: 'height >= 400 ft AAL' },
        { cue: 'radio height >= 35 ft' },
        { cue: 'altitude >= selected altitude - 1 000 ft' },
      ],
    },
    value('altitude selector', '3 000 ft MSL'),
    value('altitude selector', 'FL 190'),
    value('altitude', '1 000 ft before selected altitude'),
    value('altitude selector', '300 ft: track 000 to 179 left down, right up'),
    {
      why: 'a difference',
      procedure: { steps: [{ cue: 'then', checkSees: 'both altimeters within 80 ft of each other' }] },
    },
    {
      why: 'a slope',
      procedure: {
        steps: [{ cue: 'then', object: 'descent', value: '3 NM for each 1 000 ft plus 1 NM for each 10 kt' }],
      },
    },
    { why: 'spoken', procedure: { steps: [{ cue: 'then', say: 'passing 3 000 ft' }] } },
    value('visibility', '2 150 m'),
  ],
  invalid: [
    {
      procedure: { steps: [{ cue: 'height >= 1 000' }] },
      findings: [
        { at: 's1 cue', message: 'missing', says: '1 000', witness: { quote: '1 000' }, fix: 'height >= 1 000 ft AAL' },
      ],
    },
    {
      procedure: { steps: [{ cue: 'height >= 400 ft' }] },
      findings: [
        { at: 's1 cue', message: 'in-cue', witness: { kind: 'text', field: 'cue' }, fix: 'height >= 400 ft AAL' },
      ],
    },
    {
      procedure: value('altitude selector', '3 000 ft'),
      findings: [{ at: 's1 value', message: 'missing', witness: { quote: '3 000 ft' }, fix: '3 000 ft MSL' }],
    },
    {
      procedure: value('minima', '560'),
      findings: [{ at: 's1 value', message: 'missing', witness: { quote: '560' }, fix: null }],
    },
    {
      procedure: { steps: [{ cue: 'then', object: 'gate', checkSees: 'passing 1 000 ft with landing flap' }] },
      findings: [{ at: 's1 checkSees', message: 'missing', witness: { quote: '1 000 ft' } }],
    },
  ],
});
