import { oneFleetTwoNumbers } from '../../../lib/check/rules/one-fleet-two-numbers.ts';
import type { ProcedureParts, StepParts } from '../../../lib/procedure/build.ts';
import { testRule, told } from '../../kit/rule-tester.ts';

const step = (more: StepParts): StepParts => ({ cue: 'then', who: 'PM', verb: 'check', object: 'plan', ...more });
const one = (more: StepParts, parts: ProcedureParts = {}): ProcedureParts => ({ ...parts, steps: [step(more)] });
const brake = (value: string, only = 'code 3', why = '') =>
  one({ verb: 'select', object: 'autobrake selector', value, only, why });
const facts = (...others: readonly ProcedureParts[]) => ({
  others: told(others.map((each) => ({ title: 'Fleet card', ...each }))),
});

testRule(oneFleetTwoNumbers, {
  valid: [
    { procedure: brake('medium'), facts: facts(brake('medium')) },
    { why: 'another code', procedure: brake('low', 'code 5'), facts: facts(brake('medium')) },
    { why: 'a recorded reason', procedure: brake('low', 'code 3', 'dry-out trial'), facts: facts(brake('medium')) },
    {
      why: 'a figure that occurs is no limit',
      procedure: one({ note: 'with 12 kt of tail wind the path steepens' }),
      facts: facts(one({ note: 'tailwind limit 10 kt' })),
    },
    { why: 'as the card', procedure: one({ note: 'At QHLM acceleration altitude 3 000 ft AAL.' }) },
    {
      why: 'a case that is thought of',
      procedure: one({ note: 'At QHLM with acceleration altitude 1 500 ft AAL it comes early.' }),
    },
    { why: 'each aerodrome has its own', procedure: one({ note: 'transition altitude 13 000 ft MSL at QSTR' }) },
  ],
  invalid: [
    {
      why: 'low and medium for code 3',
      procedure: brake('low'),
      facts: facts(brake('medium')),
      findings: [{ at: 's1 value', message: 'differs', says: 'medium in Fleet card', witness: { first: 'low' } }],
    },
    {
      why: 'another wind',
      procedure: one({ value: 'tailwind at most 10 kt' }),
      facts: facts(one({ note: 'maximum tailwind 15 kt' })),
      findings: [{ at: 's1 value', message: 'differs', says: '15 kt', witness: { first: '10 kt', second: '15 kt' } }],
    },
    {
      why: 'not as the card',
      procedure: one({ note: 'At QHLM acceleration altitude 1 500 ft AAL.' }),
      findings: [{ at: 's1 note', message: 'differs', says: 'the card of QHLM', witness: { second: '3000 ft AAL' } }],
    },
    {
      why: 'another gate than the terms say',
      procedure: one({ note: 'after the stable gate at 500 ft AAL' }),
      findings: [{ at: 's1 note', message: 'differs', says: 'the list of terms', witness: { first: '500 ft AAL' } }],
    },
    {
      why: 'twice in one text',
      procedure: { steps: [step({ note: 'crosswind limit 20 kt' }), step({ note: 'crosswind limit 25 kt' })] },
      findings: [{ at: 's2 note', message: 'differs', says: 'an earlier place here', witness: { second: '20 kt' } }],
    },
  ],
});
