import { expect } from 'vitest';
import { selectedAltitudeVsClearance } from '../../../lib/check/rules/selected-altitude-vs-clearance.ts';
import { testRule } from '../../kit/rule-tester.ts';

const level = { thrust: ['GOVERN'], lateral: ['ROUTE'], vertical: ['LEVEL'], armed: [], selectedAltitude: '' };
const press = (object: string) => ({ cue: 'event "cleared"', who: 'PF', verb: 'press', object }) as const;
const set = (value: string, cue = 'then') =>
  ({ cue, who: 'PF', verb: 'set', object: 'altitude selector', value }) as const;

testRule(selectedAltitudeVsClearance, {
  valid: [
    {
      phases: ['climb'],
      entry: level,
      steps: [set('cleared level', 'event "cleared"'), { ...press('ASCENT'), cue: 'then' }],
    },
    { phases: ['climb'], entry: { ...level, selectedAltitude: 'last cleared level' }, steps: [press('ASCENT')] },
    { phases: ['climb'], entry: level, steps: [press('HEADING')] },
    {
      phases: ['climb'],
      entry: level,
      steps: [{ cue: 'event "line-up"', who: 'PM', verb: 'read', object: 'altitude selector' }, press('ASCENT')],
    },
  ],
  invalid: [
    {
      why: 'a climb begun toward what nobody has read',
      procedure: { phases: ['climb'], entry: level, steps: [press('ASCENT')] },
      findings: [
        {
          at: 's1 object',
          message: 'unset',
          witness: { kind: 'path', says: expect.stringContaining('T15 step 1 press ASCENT') },
        },
      ],
    },
    {
      why: 'the selector set behind the press',
      procedure: {
        phases: ['descent'],
        entry: { ...level, selectedAltitude: 'last cleared level' },
        steps: [press('DESCENT'), set('cleared level')],
      },
      findings: [{ at: 's1 object', message: 'late', says: 'behind DESCENT', witness: { kind: 'path' } }],
    },
    {
      why: 'zero in the entry line and in a step',
      procedure: {
        phases: ['climb'],
        entry: { ...level, selectedAltitude: '0 ft' },
        steps: [set('0 ft MSL', 'event "cleared"')],
      },
      findings: [
        { at: ' entry.selectedAltitude', message: 'zero', witness: { quote: '0 ft' } },
        { at: 's1 value', message: 'zero', witness: { quote: '0 ft MSL' } },
      ],
    },
  ],
});
