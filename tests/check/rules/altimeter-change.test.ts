import { altimeterChange } from '../../../lib/check/rules/altimeter-change.ts';
import { testRule } from '../../kit/rule-tester.ts';

const call = (cue: string) => ({ cue, who: 'PM', verb: 'call', object: 'altitude' }) as const;
const set = {
  cue: 'altitude >= transition altitude',
  who: 'each',
  verb: 'set',
  object: 'own altimeter setting',
  value: 'standard',
  checkBy: 'the other pilot',
  checkSees: 'both altimeters within 80 ft of each other',
} as const;
const local = { ...set, cue: 'flight level <= transition level', value: 'local setting' };

testRule(altimeterChange, {
  valid: [
    { why: 'a climb through it', procedure: { phases: ['climb'], steps: [call('altitude >= 3 000 ft MSL'), set] } },
    { why: 'a descent through it', procedure: { phases: ['descent', 'approach'], steps: [local] } },
    { why: 'all of it below', procedure: { phases: ['climb'], steps: [call('altitude >= 3 000 ft MSL')] } },
    { why: 'all of it above', procedure: { phases: ['climb'], steps: [call('flight level >= FL 150')] } },
    {
      why: 'each pilot by a step of the own',
      procedure: {
        phases: ['climb'],
        steps: [
          { ...set, who: 'PF' },
          { ...set, who: 'PM', cue: 'then' },
        ],
      },
    },
    {
      why: 'an engine-out climb ends where it ends',
      procedure: { class: 'engine-out', phases: ['initial climb', 'climb'] },
    },
  ],
  invalid: [
    {
      why: 'missing at the transition',
      procedure: { phases: ['climb'], steps: [call('altitude >= transition altitude')] },
      findings: [{ at: 's1 cue', message: 'missing', says: 'standard', witness: { kind: 'absent' } }],
    },
    {
      why: 'missing between two scales, on the way down',
      procedure: { phases: ['descent'], steps: [call('flight level <= FL 100'), call('altitude <= 4 000 ft MSL')] },
      findings: [{ at: 's2 cue', message: 'missing', says: 'the local setting', witness: { kind: 'absent' } }],
    },
    {
      why: 'missing from the descent to the approach',
      procedure: { phases: ['descent', 'approach'], steps: [call('then')] },
      findings: [{ at: ' title', message: 'missing', witness: { kind: 'absent' } }],
    },
    {
      why: 'one side, not compared',
      procedure: { phases: ['climb'], steps: [{ ...set, who: 'PM', checkBy: '', checkSees: '' }] },
      findings: [
        { at: 's1 checkSees', message: 'not-compared', witness: { kind: 'absent' } },
        { at: 's1 who', message: 'one-side', says: 'PM', witness: { first: 's1' } },
      ],
    },
    {
      why: 'after a height that counts on it',
      procedure: {
        phases: ['climb'],
        steps: [call('altitude >= 3 000 ft MSL'), call('flight level >= FL 120'), { ...set, cue: 'then' }],
      },
      findings: [{ at: 's3 cue', message: 'late', says: 'FL 120', witness: { first: 's2', second: 's3' } }],
    },
  ],
});
