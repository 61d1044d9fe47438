import { expect, it } from 'vitest';
import { checkProcedure } from '../../../lib/check/check.ts';
import { coldAltitudes } from '../../../lib/check/rules/cold-altitudes.ts';
import { procedureWith, type StepParts } from '../../../lib/procedure/build.ts';
import { published } from '../../kit/published.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { houseFacts, housePolicy } from '../../kit/world.ts';

const read = (value: string): StepParts => ({ cue: 'then', who: 'PM', verb: 'check', object: 'altitude', value });
const TOLD: StepParts = { cue: 'then', who: 'PM', verb: 'call', object: 'radio', value: 'corrected altitudes' };
const TABLE: StepParts = {
  cue: 'then',
  who: 'PM',
  verb: 'brief',
  object: 'corrections',
  value: 'from the cold temperature table',
};
const cold = (title: string, ...steps: readonly StepParts[]) => ({
  phases: ['approach'] as const,
  class: 'cold-weather' as const,
  title,
  steps: [TOLD, TABLE, ...steps],
});
const RIGHT = ['1 800', '1 100', '480', '3 600'].map((figure) => read(`${figure} ft MSL`));
const warm = { ...housePolicy, gates: { ...housePolicy.gates, cold: { below: -30, selector: 100, minima: 10 } } };
const witness = { kind: 'text' };

testRule(coldAltitudes, {
  valid: [
    cold('Approach at QVDS, −28 °C', ...RIGHT),
    {
      why: 'the stable gate is no charted altitude',
      procedure: cold('Approach at QVDS, −28 °C', ...RIGHT, read('1 000 ft AAL')),
    },
    { why: 'warm enough', procedure: { ...cold('Approach at QVDS', read('1 500 ft MSL')), class: 'normal' } },
    {
      why: 'vectors are corrected by the controller',
      procedure: cold('Approach at QVDS, −28 °C', ...RIGHT, read('1 500 ft MSL assigned by radar')),
    },
    {
      why: 'a departure is not corrected',
      procedure: { ...cold('Departure at QVDS, −28 °C', read('3 000 ft MSL')), phases: ['take-off'] },
    },
    {
      why: 'the flown figure beside the one that is set',
      procedure: cold('Approach at QVDS, −28 °C', ...RIGHT, read('1 742 ft MSL')),
    },
    {
      why: 'not cold by the policy',
      procedure: cold('Approach at QVDS, −28 °C', read('1 500 ft MSL')),
      facts: { policy: warm },
    },
  ],
  invalid: [
    {
      why: 'scenario 5: all as charted',
      procedure: cold(
        'Approach at QVDS, −28 °C',
        ...['1 500', '900', '420', '3 000'].map((figure) => read(`${figure} ft MSL`)),
      ),
      findings: [
        {
          at: 's3 value',
          message: 'uncorrected',
          says: '1 742 ft is to be flown, set 1 800 ft',
          witness: { quote: '1 500 ft' },
          fix: '1 800 ft MSL',
        },
        {
          at: 's4 value',
          message: 'uncorrected',
          says: '1 037 ft is to be flown, set 1 100 ft',
          witness,
          fix: '1 100 ft MSL',
        },
        {
          at: 's5 value',
          message: 'uncorrected',
          says: '472 ft is to be flown, set 480 ft',
          witness,
          fix: '480 ft MSL',
        },
        {
          at: 's6 value',
          message: 'uncorrected',
          says: '3 508 ft is to be flown, set 3 600 ft',
          witness,
          fix: '3 600 ft MSL',
        },
      ],
    },
    {
      why: 'corrected by too little',
      procedure: cold('Approach at QVDS, −28 °C', ...RIGHT.slice(1), read('final approach fix 1 600 ft MSL')),
      findings: [{ at: 's6 value', message: 'wrong', says: 'not 1 600 ft', witness: { quote: '1 600 ft' } }],
    },
    {
      why: 'one has no figure',
      procedure: cold('Approach at QVDS, −28 °C', ...RIGHT.slice(0, 3)),
      findings: [{ at: ' steps', message: 'unstated', says: 'set 3 600 ft', witness: { kind: 'absent' } }],
    },
    {
      why: 'nobody is told, and no table is named; the card says how cold',
      procedure: { ...cold('Cold approach at QVDS'), steps: RIGHT },
      findings: [
        { at: ' steps', message: 'advise', witness: { kind: 'absent' } },
        { at: ' steps', message: 'source', witness: { kind: 'absent' } },
      ],
    },
  ],
});

/** What the rule corrects a height to, over sea level, ft. */
function corrected(height: number, temperature: number): number {
  const card = { ...houseFacts.library!.aerodromes[2]!, elevation: 0, finalApproachFix: height, stepDowns: [] };
  const library = { ...houseFacts.library!, aerodromes: [card] };
  const procedure = procedureWith(cold(`Approach at QVDS, ${temperature} °C`, read(`${height} ft MSL`)));
  const found = checkProcedure(procedure, { ...houseFacts, library }, [coldAltitudes]).findings;
  const said = found
    .map(({ message }) => /final approach fix.*?: ([\d ]+) ft is to be flown/.exec(message)?.[1])
    .find(Boolean);
  return Number(said?.replaceAll(' ', ''));
}

it.each([
  ['cold--10', -10],
  ['cold--20', -20],
  ['cold--40', -40],
  ['cold--50', -50],
])('the published table, rounded up to 10 ft, is met (%s)', (id, temperature) => {
  const heights = [200, 300, 400, 500, 600, 700, 800, 900, 1000, 1500, 2000, 3000, 4000, 5000];
  const cells = published(id);
  for (const [index, height] of heights.entries()) {
    if ([420, 3000].includes(height)) continue;
    const correction = corrected(height, temperature) - height;
    expect(Math.abs(Math.ceil(correction / 10) * 10 - cells[index]!)).toBeLessThanOrEqual(10);
  }
});
