import { highAerodrome } from '../../../lib/check/rules/high-aerodrome.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { housePolicy } from '../../kit/world.ts';

const SAID = 'cabin altitude set; true speed and turn radius briefed; gradient from the landing calculation';
const set = (value: string, more: object = {}) =>
  ({ cue: 'then', who: 'PM', verb: 'set', object: 'altitude bug', value, ...more }) as const;
const at = (title: string, also: string, ...steps: readonly ReturnType<typeof set>[]) => ({
  phases: ['approach'] as const,
  title,
  entry: { also },
  steps,
});
const low = { ...housePolicy, gates: { ...housePolicy.gates, highAerodrome: 100 } };

testRule(highAerodrome, {
  valid: [
    at('Approach at QSTR', SAID, set('6 430 ft MSL')),
    { why: 'a low aerodrome', procedure: at('Approach at QHLM', '', set('1 000 ft AAL')) },
    { why: 'for no aerodrome in particular', procedure: at('Approach', '', set('1 000 ft AAL')) },
    { why: 'a call is no setting', procedure: at('Approach at QSTR', SAID, set('1 000 ft AAL', { verb: 'call' })) },
  ],
  invalid: [
    {
      procedure: at('Approach at QSTR', SAID, set('1 000 ft AAL')),
      findings: [
        {
          at: 's1 value',
          message: 'reference',
          says: '6 430 ft MSL',
          witness: { quote: '1 000 ft' },
          fix: '6 430 ft MSL',
        },
      ],
    },
    {
      why: 'an altitude underground',
      procedure: at('Approach at QSTR', SAID, set('2 000 ft MSL')),
      findings: [{ at: 's1 value', message: 'under', says: '5 430', witness: { quote: '2 000 ft' } }],
    },
    {
      why: 'nothing is looked at again',
      procedure: at('Stannick Ridge supplement', ''),
      findings: [
        { at: ' entry.also', message: 'silent', says: 'climb gradient', witness: { kind: 'absent' } },
        { at: ' entry.also', message: 'silent', says: 'pressurisation', witness: { kind: 'absent' } },
        { at: ' entry.also', message: 'silent', says: 'turn radius', witness: { kind: 'absent' } },
      ],
    },
    {
      why: 'which aerodrome is high is policy; a step may be for one aerodrome only',
      procedure: at('Approach', '', set('1 000 ft AAL', { only: 'at QVDS' })),
      facts: { policy: low },
      findings: [{ at: 's1 value', message: 'reference', says: '1 120 ft MSL', witness: { kind: 'text' } }],
    },
  ],
});
