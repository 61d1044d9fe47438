import { speedReferenceMissing } from '../../../lib/check/rules/speed-reference-missing.ts';
import { testRule } from '../../kit/rule-tester.ts';

const value = (text: string) => ({
  steps: [{ cue: 'then', who: 'PF', verb: 'set', object: 'speed selector', value: text } as const],
});

testRule(speedReferenceMissing, {
  valid: [
    value('VREF F35 + 5 kt'),
    value('V2 + 15 kt'),
    value('VAPP'),
    {
      steps: [
        {
          cue: 'speed >= VMM F12 and flaps F18 indicated',
          checkIfNot: 'speed held between VMM F18 and VFE F18 - 5 kt',
        },
      ],
    },
    { steps: [{ cue: 'then', checkSees: 'figure at most VFE of the detent indicated - 5 kt' }] },
    value('VREF F35 icing + 5 kt'),
    { why: 'spoken', procedure: { steps: [{ cue: 'then', checkIfNot: 'PM "VREF"' }] } },
  ],
  invalid: [
    {
      procedure: value('VREF + 5 kt'),
      findings: [
        { at: 's1 value', message: 'detent', says: 'VREF', witness: { quote: 'VREF', span: { from: 0, to: 4 } } },
      ],
    },
    {
      procedure: { steps: [{ cue: 'speed >= VMM and flaps F18 indicated' }] },
      findings: [{ at: 's1 cue', message: 'detent', witness: { quote: 'VMM' } }],
    },
    {
      procedure: { steps: [{ cue: 'speed <= max(VREF + 10 kt, 120 kt)' }] },
      findings: [{ at: 's1 cue', message: 'detent', witness: { quote: 'VREF' } }],
    },
    {
      procedure: { exit: { speed: 'VMM + 10 kt' } },
      findings: [{ at: ' exit.speed', message: 'detent', witness: { quote: 'VMM' } }],
    },
  ],
});
