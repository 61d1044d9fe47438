import { undefinedAbbreviation } from '../../../lib/check/rules/undefined-abbreviation.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { houseFacts } from '../../kit/world.ts';

const step = (more: object) => ({
  steps: [{ cue: 'then', who: 'PM', verb: 'check', object: 'mode line', ...more } as const],
});
const library = houseFacts.library!;
const psr = { term: 'PSR', meaning: 'Pressure selector.', allowed: [], forbidden: [] };
const withPsr = { library: { ...library, terms: [...library.terms, psr] } };

testRule(undefinedAbbreviation, {
  valid: [
    step({ value: 'ALT armed, 400 ft AAL, V2 and VSR of F18' }),
    step({ value: 'the card of QVDS, next QUVEXA' }),
    step({ say: 'APU and PSR on', note: 'said "APU on"' }),
    step({ object: 'gear lever', value: 'DOWN' }),
    { procedure: step({ object: 'pressure selector (PSR)', note: 'PSR again' }), facts: withPsr },
  ],
  invalid: [
    {
      procedure: step({ object: 'PSR', note: 'PSR on' }),
      why: 'once, where it stands first',
      findings: [{ at: 's1 object', message: 'undefined', says: '"PSR"', witness: { quote: 'PSR' } }],
    },
    {
      procedure: step({ value: 'hdg and spd' }),
      findings: [
        { at: 's1 value', message: 'undefined', witness: { quote: 'hdg' } },
        { at: 's1 value', message: 'undefined', witness: { quote: 'spd' } },
      ],
    },
    {
      procedure: step({ object: 'PSR' }),
      facts: withPsr,
      why: 'a term, but not written out',
      findings: [{ at: 's1 object', message: 'unexpanded', says: 'Pressure selector.', witness: { quote: 'PSR' } }],
    },
    {
      procedure: { ...step({ cue: 'event "APU available"' }), weightLimit: 'as in the RTOW' },
      why: 'in a cue and in the head',
      findings: [
        { at: ' weightLimit', message: 'undefined', witness: { quote: 'RTOW' } },
        { at: 's1 cue', message: 'undefined', witness: { quote: 'APU' } },
      ],
    },
  ],
});
