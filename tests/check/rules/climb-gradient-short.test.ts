import { expect, it } from 'vitest';
import { climbGradientShort } from '../../../lib/check/rules/climb-gradient-short.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { housePolicy } from '../../kit/world.ts';

const hot = { temperature: { from: 25, to: 25 } };
const takeOff = (title: string, detents: readonly string[], more: object = {}) => ({
  title,
  phases: ['take-off'] as const,
  entry: { flaps: detents, gear: 'down' as const },
  envelope: { detents, ...hot },
  ...more,
});
const goAround = (more: object = {}) => ({
  title: 'Engine-out go-around at QSTR',
  phases: ['go-around'] as const,
  class: 'engine-out' as const,
  entry: { flaps: ['F35'], gear: 'down' as const },
  envelope: { detents: ['F35'], ...hot, weight: { from: 46_000, to: 66_800 } },
  ...more,
});
const short = (says: string, kind = 'envelope') => ({ at: ' weightLimit', message: 'short', says, witness: { kind } });

testRule(climbGradientShort, {
  valid: [
    takeOff('Take-off at QSTR', ['F18'], { weightLimit: 'F18 at most 63.3 t' }),
    takeOff('Take-off at QSTR', ['F6', 'F12'], { weightLimit: 'F12 67.3 t, F6 71.4 t' }),
    {
      why: 'left to a calculation',
      procedure: takeOff('Take-off', ['F18'], { weightLimit: 'climb limit from the approved take-off calculation' }),
    },
    {
      why: 'light enough by its envelope',
      procedure: goAround({ envelope: { detents: ['F35'], ...hot, weight: { from: 46_000, to: 63_600 } } }),
    },
    {
      why: 'the obstacle limits F18 and not F12',
      procedure: takeOff('Take-off at QVDS', ['F12'], {
        envelope: { detents: ['F12'], temperature: { from: 0, to: 0 } },
      }),
    },
    goAround({
      weightLimit: 'approach climb, missed-approach gradient and landing climb from the landing calculation',
    }),
  ],
  invalid: [
    {
      why: 'scenario 6: F18 to 63.3 t, F12 to 67.3 t, F6 to 71.4 t',
      procedure: takeOff('Take-off at QSTR', ['F18', 'F12', 'F6']),
      findings: [
        short('With F12 the second segment needs 2.4 % gross'),
        short('it holds up to 63.3 t, 2.42 % gross there, 1.62 % net against 1.38 % for the obstacle'),
        short('it holds up to 71.4 t'),
      ],
    },
    {
      why: 'scenario 6: the missed approach, charted 2.5 % and 3.0 %',
      procedure: goAround(),
      findings: [
        short('needs 2.5 % gross and has 2.39 % at 66.8 t at QSTR: it holds up to 66.2 t'),
        short('needs 3 % gross and has 2.39 % at 66.8 t at QSTR: it holds up to 63.7 t'),
      ],
    },
    {
      why: 'the obstacle of QVDS limits F18 to 76.8 t',
      procedure: takeOff('Take-off at QVDS', ['F18'], {
        envelope: { detents: ['F18'], temperature: { from: 0, to: 0 } },
      }),
      findings: [short('the obstacle needs 2.03 % net and has 1.7')],
    },
    {
      why: 'a gradient without its kind',
      procedure: takeOff('Take-off', ['F6'], {
        weightLimit: 'second-segment gradient of 2.4 % from the take-off calculation',
      }),
      findings: [{ at: ' weightLimit', message: 'unmarked', says: '"2.4 %"', witness: { quote: '2.4 %' } }],
    },
  ],
});

/** By the ids of the project's table of published figures; each is that for two engines. */
it.each([
  ['reg-25.121b', '14 CFR 25.121(b)(1)', 'second', 2.4],
  ['reg-25.121c', '14 CFR 25.121(c)(1)', 'final', 1.2],
  ['reg-25.121d', '14 CFR 25.121(d)(1)', 'approach', 2.1],
  ['reg-25.119-grad', '14 CFR 25.119', 'landing', 3.2],
  ['reg-25.115-net', '14 CFR 25.115(b)', 'netReduction', 0.8],
] as const)('the policy holds the published figure (%s, %s)', (_id, _source, name, figure) => {
  expect(housePolicy.climb[name]).toBe(figure);
});
