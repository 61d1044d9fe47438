import { unitMissing } from '../../../lib/check/rules/unit-missing.ts';
import { testRule } from '../../kit/rule-tester.ts';

const value = (object: string, text: string) => ({
  steps: [{ cue: 'then', who: 'PM', verb: 'set', object, value: text } as const],
});

testRule(unitMissing, {
  valid: [
    value('speed selector', '180 kt'),
    value('flap lever', 'F12'),
    value('runway', 'runway 24, painted designator'),
    value('altitude selector', 'FL 190'),
    value('heading selector', 'heading 060, then 30° to 45° to the leg'),
    value('radio', '121.5 MHz and 123.45 MHz'),
    value('weather radar', 'range 160 NM, then 80 NM'),
    value('speed', '190 to 195 kt'),
    value('altitude selector', '3 000 ft MSL'),
    value('start', '2 attempts, then step 9'),
    value('day', 'ISA+15 or GA-07, T12, V2 + 15 kt'),
    { why: 'spoken words', procedure: { steps: [{ cue: 'then', say: 'speed 180', checkIfNot: 'PM "speed 225"' }] } },
    { why: 'heard words are spoken', procedure: { steps: [{ cue: 'heard "speed 225"' }] } },
    { why: 'times of a check', procedure: { steps: [{ cue: 'then', checkWithin: '15 s from F35 or 9 s from F26' }] } },
  ],
  invalid: [
    {
      why: 'a judgement in words is a field too',
      procedure: { steps: [{ cue: 'judged "weather within 100 of the track" and speed <= 180 kt' }] },
      findings: [{ at: 's1 cue', message: 'bare', witness: { quote: '100' }, fix: null }],
    },
    {
      procedure: value('speed selector', '180'),
      findings: [
        { at: 's1 value', message: 'bare', witness: { quote: '180', span: { from: 0, to: 3 } }, fix: '180 kt' },
      ],
    },
    {
      procedure: value('fuel', '2 400'),
      findings: [{ at: 's1 value', message: 'bare', witness: { quote: '2 400' }, fix: null }],
    },
    {
      procedure: value('minimum fuel', '5 300 lb'),
      findings: [{ at: 's1 value', message: 'foreign', says: 'write kg', witness: { quote: '5 300 lb' } }],
    },
    {
      procedure: { steps: [{ cue: 'speed <= 180 and flaps F12 indicated' }] },
      findings: [
        { at: 's1 cue', message: 'in-cue', witness: { quote: '180' }, fix: 'speed <= 180 kt and flaps F12 indicated' },
      ],
    },
    {
      procedure: { steps: [{ cue: 'then', checkSees: 'speed held at 210 or less', checkWithin: '8' }] },
      findings: [
        { at: 's1 checkSees', message: 'bare', witness: { quote: '210' } },
        { at: 's1 checkWithin', message: 'bare', witness: { quote: '8' } },
      ],
    },
    {
      procedure: { exit: { speed: '250' } },
      findings: [{ at: ' exit.speed', message: 'bare', witness: { quote: '250' }, fix: '250 kt' }],
    },
    {
      procedure: value('speed selector', 'VREF F35 + 5'),
      findings: [{ at: 's1 value', message: 'bare', witness: { quote: '5' } }],
    },
  ],
});
