import { expect, it } from 'vitest';
import { checkProcedure } from '../../../lib/check/check.ts';
import { crossOverPoint } from '../../../lib/check/rules/cross-over-point.ts';
import { procedureWith } from '../../../lib/procedure/build.ts';
import { published } from '../../kit/published.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { houseFacts } from '../../kit/world.ts';

const turn = (cue: string, value: string, more: object = {}) =>
  ({ cue, who: 'PF', verb: 'set', object: 'speed selector', value, ...more }) as const;
const climb = (...steps: readonly ReturnType<typeof turn>[]) => ({
  phases: ['climb'] as const,
  entry: { speed: '290 kt' },
  steps,
});

testRule(crossOverPoint, {
  valid: [
    climb(turn('mach >= M 0.76', 'M 0.76')),
    { why: '290 kt and M 0.76 meet at 29 6', procedure: climb(turn('flight-level >= FL 298', 'M 0.76')) },
    climb(turn('altitude >= 29 200 ft MSL', 'M 0.76')),
    { why: 'down again', procedure: { entry: { speed: 'M 0.76' }, steps: [turn('flight-level <= FL 296', '290 kt')] } },
    climb(turn('mach >= M 0.76', 'M 0.76', { note: '290 kt and M 0.76 meet at FL 296.' })),
  ],
  invalid: [
    {
      procedure: climb(turn('flight-level >= FL 200', 'M 0.78')),
      findings: [
        {
          at: 's1 value',
          message: 'apart',
          says: 'the text changes at 20 000 ft',
          witness: { kind: 'envelope', says: '290 kt and M 0.78 meet at 30' },
        },
      ],
    },
    {
      why: 'too late in the descent',
      procedure: { entry: { speed: 'M 0.76' }, steps: [turn('flight-level <= FL 250', '290 kt')] },
      findings: [{ at: 's1 value', message: 'apart', says: 'faster than', witness: { kind: 'envelope' } }],
    },
    {
      why: 'a note that says another altitude',
      procedure: climb(turn('mach >= M 0.76', 'M 0.76', { note: '290 kt and M 0.76 meet at FL 270.' })),
      findings: [{ at: 's1 note', message: 'apart', says: '27 000 ft', witness: { kind: 'envelope' } }],
    },
    {
      why: 'faster than the aircraft may fly',
      procedure: climb(turn('mach >= M 0.83', 'M 0.83')),
      findings: [
        { at: 's1 value', message: 'limit', says: 'M 0.83 is above the limit M 0.81', witness: { kind: 'envelope' } },
      ],
    },
  ].map((each) => ({ ...each, findings: each.findings.map((f) => ({ ...f, witness: { kind: 'envelope' } })) })),
});

/** Where the rule puts the meeting point, ft: told by changing far from it. */
function meeting(kt: number, mach: number): number {
  const procedure = procedureWith({
    phases: ['climb'],
    entry: { speed: `${kt} kt` },
    steps: [turn('altitude >= 11 000 ft MSL', `M ${mach}`)],
  });
  const found = checkProcedure(procedure, houseFacts, [crossOverPoint]).findings.find(({ message }) =>
    message.includes('meet'),
  );
  if (found?.witness.kind !== 'envelope') throw new Error('no witness');
  return found.witness.at.altitude ?? 0;
}

it('345 kt and M 0.81 meet at 24 606 ft', () => expect(Math.abs(meeting(345, 0.81) - 24_606)).toBeLessThanOrEqual(20));
it.each([
  ['xover-250-78', 250, 0.78],
  ['xover-280-78', 280, 0.78],
  ['xover-300-80', 300, 0.8],
  ['xover-290-74', 290, 0.74],
  ['xover-320-80', 320, 0.8],
])('%s as published', (id, kt, mach) => expect(Math.abs(meeting(kt, mach) - published(id)[0]!)).toBeLessThanOrEqual(5));
