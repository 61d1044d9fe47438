import { tooFastIntoLevel } from '../../../lib/check/rules/too-fast-into-level.ts';
import { EN_ROUTE, goAround, takeOff } from '../../kit/flown-parts.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { housePolicy } from '../../kit/world.ts';

const call = (more: object = {}) =>
  ({
    cue: 'altitude >= selected altitude - 1 000 ft',
    who: 'PM',
    verb: 'call',
    object: 'altitude',
    say: 'one thousand to go',
    ...more,
  }) as const;
const level = { entry: { selectedAltitude: '7 000 ft MSL' } };
testRule(tooFastIntoLevel, {
  valid: [
    { why: 'named in the check', procedure: takeOff([call({ checkSees: 'rate at most 1 500 ft/min' })], level) },
    { why: 'named in a note', procedure: takeOff([call({ note: 'at most 1 500 ft/min' })], level) },
    {
      why: 'the policy lets it be',
      procedure: takeOff([call()], level),
      facts: { policy: { ...housePolicy, gates: { ...housePolicy.gates, levelOff: { rate: 6_000, within: 1_000 } } } },
    },
  ],
  invalid: [
    {
      procedure: takeOff([call()], level),
      findings: [{ at: 's1 checkSees', message: 'fast', says: 'With 1 000 ft to the level-off', witness: {} }],
    },
    {
      why: 'a go-around',
      procedure: goAround([call()]),
      findings: [{ at: 's2 checkSees', message: 'fast', witness: {} }],
    },
    {
      why: 'no step is there at all',
      procedure: goAround([]),
      findings: [{ at: 's1 checkSees', message: 'fast', witness: {} }],
    },
  ],
  missing: [{ ...EN_ROUTE, procedure: { phases: ['climb'] }, because: 'no climb is flown' }],
});
