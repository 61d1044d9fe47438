import { elasticWords } from '../../../lib/check/rules/elastic-words.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { housePolicy } from '../../kit/world.ts';

const step = (value: string, more: object = {}) => ({
  steps: [{ cue: 'then', who: 'PF', verb: 'set', object: 'speed selector', value, ...more } as const],
});

testRule(elasticWords, {
  valid: [
    step('180 kt'),
    { why: 'a name', procedure: step('normal take-off') },
    { why: 'a link says how much', procedure: step('as required by the holding table') },
    { why: 'spoken', procedure: step('180 kt', { checkSees: 'PF says "about right"' }) },
    { why: 'notes are not read', procedure: step('180 kt', { note: 'about a minute later' }) },
  ],
  invalid: [
    {
      procedure: step('slow as required'),
      findings: [{ at: 's1 value', message: 'elastic', says: 'as required', witness: { quote: 'as required' } }],
    },
    {
      procedure: step('about 180 kt'),
      findings: [{ at: 's1 value', message: 'elastic', witness: { quote: 'about' } }],
    },
    {
      procedure: step('180 kt', { checkSees: 'adequate margin' }),
      findings: [{ at: 's1 checkSees', message: 'elastic', witness: { quote: 'adequate' } }],
    },
    {
      why: 'the list is the policy’s',
      procedure: step('with feeling'),
      facts: { policy: { ...housePolicy, words: { ...housePolicy.words, elastic: ['with feeling'] } } },
      findings: [{ at: 's1 value', message: 'elastic', witness: { quote: 'with feeling' } }],
    },
  ],
});
