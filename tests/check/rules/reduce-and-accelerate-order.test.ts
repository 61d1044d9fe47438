import { expect, it } from 'vitest';
import { reduceAndAccelerateOrder } from '../../../lib/check/rules/reduce-and-accelerate-order.ts';
import { published } from '../../kit/published.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { housePolicy } from '../../kit/world.ts';

const read = (height: string, expect: object) =>
  ({ cue: `height >= ${height}`, who: 'PM', verb: 'read', object: 'mode line', expect }) as const;
const REDUCE = { thrust: 'CLIMB' };
const ACCELERATE = { vertical: 'ASCENT' };
const departure = (title: string, ...steps: readonly ReturnType<typeof read>[]) => ({
  title,
  phases: ['take-off'] as const,
  entry: { flaps: ['F12'], gear: 'down' as const, thrust: ['LATCHED'], vertical: ['DEPART'] },
  steps,
});

testRule(reduceAndAccelerateOrder, {
  valid: [
    departure('Departure at QHLM', read('1 500 ft AAL', REDUCE), read('3 000 ft AAL', ACCELERATE)),
    {
      why: 'distant: acceleration first',
      procedure: departure('Departure at QAMB', read('1 000 ft AAL', ACCELERATE), read('1 500 ft AAL', REDUCE)),
    },
    {
      why: 'by the names of the card',
      procedure: departure(
        'Departure at QKAR',
        read('climb-thrust altitude', REDUCE),
        read('acceleration altitude', ACCELERATE),
      ),
    },
    {
      why: 'no class, any order',
      procedure: departure('Departure at QSTR', read('1 000 ft AAL', ACCELERATE), read('1 500 ft AAL', REDUCE)),
    },
    {
      why: 'an engine is out',
      procedure: { ...departure('Departure at QHLM', read('500 ft AAL', ACCELERATE)), class: 'engine-out' },
    },
  ],
  invalid: [
    {
      why: 'scenario 3: accelerate 1 000, reduce 1 500',
      procedure: departure('Departure at QHLM', read('1 000 ft AAL', ACCELERATE), read('1 500 ft AAL', REDUCE)),
      findings: [
        {
          at: 's1 cue',
          message: 'order',
          says: 'QHLM is close-in: 1 000 ft AAL for acceleration comes before 1 500 ft AAL for thrust reduction',
          witness: { first: 's1', second: 's2' },
        },
      ],
    },
    {
      why: 'distant, the other way round',
      procedure: departure('Departure at QAMB', read('1 000 ft AAL', REDUCE), read('2 000 ft AAL', ACCELERATE)),
      findings: [{ at: 's1 cue', message: 'order', says: 'distant', witness: { kind: 'order' } }],
    },
    {
      why: 'too low for any class',
      procedure: departure('Departure', read('600 ft AAL', REDUCE)),
      findings: [{ at: 's1 cue', message: 'low', says: '800 ft AAL', witness: { kind: 'text' } }],
    },
    {
      why: 'too late for any class',
      procedure: departure('Departure', read('3 500 ft AAL', ACCELERATE)),
      findings: [{ at: 's1 cue', message: 'late', says: '3 000 ft AAL', witness: { kind: 'text' } }],
    },
  ],
});

it('the policy holds the published heights', () => {
  const { lowest, latest } = housePolicy.gates.noise;
  expect([lowest, latest]).toEqual(published('nadp-eu').slice(0, 2));
  expect(lowest).toBe(published('nadp-min')[0]);
});
