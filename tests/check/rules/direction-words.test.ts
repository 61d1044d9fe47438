import { directionWords } from '../../../lib/check/rules/direction-words.ts';
import { testRule } from '../../kit/rule-tester.ts';

const set = (value: string) => ({ cue: 'then', who: 'PF', verb: 'set', object: 'speed selector', value }) as const;

testRule(directionWords, {
  valid: [
    { steps: [set('reduce from 210 kt to 190 kt')] },
    { steps: [set('increase to 250 kt from 210 kt')] },
    { entry: { speed: '250 kt' }, steps: [set('reduce to 210 kt')] },
    {
      why: 'the target before has no figure',
      procedure: { entry: { speed: 'clean speed' }, steps: [set('reduce to 210 kt')] },
    },
    { steps: [set('210 kt')] },
  ],
  invalid: [
    {
      procedure: { steps: [set('reduce to 210 kt from 190 kt')] },
      findings: [
        { at: 's1 value', message: 'figures', says: 'from 190 to 210', witness: { quote: '210 kt from 190 kt' } },
      ],
    },
    {
      procedure: { steps: [set('increase from 250 kt to 210 kt')] },
      findings: [{ at: 's1 value', message: 'figures', witness: { field: 'value' } }],
    },
    {
      procedure: { entry: { speed: '190 kt' }, steps: [set('reduce to 210 kt')] },
      findings: [
        { at: 's1 value', message: 'target', says: 'before this step is 190 kt', witness: { quote: '210 kt' } },
      ],
    },
  ],
});
