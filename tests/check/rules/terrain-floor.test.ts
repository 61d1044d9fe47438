import { terrainFloor } from '../../../lib/check/rules/terrain-floor.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { houseFacts } from '../../kit/world.ts';

const set = (value: string, cue = 'event "cleared approach"', more: object = {}) =>
  ({ cue, who: 'PF', verb: 'set', object: 'altitude selector', value, ...more }) as const;
const approach = (title: string, ...steps: readonly ReturnType<typeof set>[]) => ({
  phases: ['approach'] as const,
  title,
  entry: { lateral: ['HEADING'] },
  steps,
});
const library = houseFacts.library!;
const bare = { ...library, aerodromes: library.aerodromes.map((card) => ({ ...card, sectorMinimum: null })) };

testRule(terrainFloor, {
  valid: [
    approach('Approach at QHLM', set('2 500 ft MSL')),
    { why: 'on the course', procedure: approach('Approach at QHLM', set('2 000 ft MSL', 'lateral = COURSE')) },
    { why: 'past the fix', procedure: approach('Approach at QHLM', set('2 000 ft MSL', 'event "established"')) },
    { why: 'a word is no altitude', procedure: approach('Approach at QHLM', set('cleared altitude')) },
    { why: 'for no aerodrome', procedure: approach('Approach', set('2 000 ft MSL')) },
    { why: 'the missed approach is charted', procedure: approach('Approach at QHLM', set('missed-approach altitude')) },
  ],
  invalid: [
    {
      procedure: approach('Approach at QHLM', set('2 000 ft MSL')),
      findings: [
        { at: 's1 value', message: 'low', says: 'of QHLM is 2 500 ft MSL', witness: { quote: '2 000 ft MSL' } },
      ],
    },
    {
      why: 'by its name on the card',
      procedure: approach('Approach at QVDS', set('altitude of the final approach fix')),
      findings: [{ at: 's1 value', message: 'low', says: '1 500 ft MSL', witness: { kind: 'text' } }],
    },
    {
      why: 'the minimum that the procedure states',
      procedure: {
        ...approach('Approach', set('2 000 ft MSL')),
        entry: { lateral: ['HEADING'], also: 'MSA 3 500 ft MSL' },
      },
      findings: [{ at: 's1 value', message: 'low', says: '3 500', witness: { kind: 'text' } }],
    },
    {
      why: 'a step for one aerodrome only',
      procedure: approach('Approach', set('1 800 ft MSL', 'then', { only: 'at QAMB' })),
      findings: [{ at: 's1 value', message: 'low', says: 'of QAMB', witness: { kind: 'text' } }],
    },
  ],
  missing: [
    {
      procedure: approach('Approach at QHLM', set('2 000 ft MSL')),
      facts: { library: bare },
      because: 'the card of QHLM gives no sector minimum',
    },
  ],
});
