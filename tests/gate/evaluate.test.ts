import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evaluateGate, type Look } from '../../lib/gate/evaluate.ts';
import { judgeGate } from '../../lib/gate/intervals.ts';
import { parseGate } from '../../lib/gate/parse.ts';
import { printTerm } from '../../lib/gate/print.ts';
import { variablesOf } from '../../lib/gate/variables.ts';
import { gateArbitrary } from '../kit/gate-arbitrary.ts';

const gateOf = (text: string) => parseGate(text).gate!;
/** Values by what is asked, with its reference behind; what is not listed is unknown. */
const look = (numbers: Record<string, number>, truths: readonly string[] = [], since = 0): Look => ({
  number: (term, reference) =>
    numbers[reference === null ? printTerm(term) : `${printTerm(term)} ${reference}`] ?? 'unknown',
  truth: (gate) => (gate.kind === 'judged' ? 'unknown' : truths.includes(gate.kind)),
  since: () => since,
});

test.each([
  ['speed >= VMM F12', look({ speed: 190, 'VMM F12': 185 }), true],
  ['speed >= VMM F12', look({ speed: 185, 'VMM F12': 185 }), true],
  ['speed > VMM F12', look({ speed: 185, 'VMM F12': 185 }), false],
  ['speed >= VMM F12', look({ speed: 190 }), 'unknown'],
  ['speed <= VFE F18 - 5 kt', look({ speed: 200, 'VFE F18': 204 }), false],
  ['speed between VMM F18 and VFE F18', look({ speed: 170, 'VMM F18': 160, 'VFE F18': 205 }), true],
  ['speed >= max(VREF, V2)', look({ speed: 130, VREF: 120 }), 'unknown'],
  ['speed >= max(VREF, V2)', look({ speed: 110, VREF: 120 }), false],
  ['height >= 1 000 ft AAL', look({ 'height AAL': 1000 }), true],
  ['height >= 500 m AAL', look({ 'height AAL': 1640 }), false],
  ['height >= acceleration altitude', look({ 'height AAL': 1600, 'acceleration altitude AAL': 1500 }), true],
  ['altitude >= acceleration altitude', look({ 'altitude MSL': 1600, 'acceleration altitude MSL': 6930 }), false],
  ['radio height <= 35 ft', look({ 'radio height radio': 30 }), true],
  ['distance to QOSTEL <= 1 852 m', look({ 'distance to QOSTEL': 1 }), true],
  ['weight <= 61.1 t', look({ weight: 61_101 }), false],
  ['speed >= 400 ft AAL', look({ speed: 190 }), 'unknown'],
  ['judged "fit" and then', look({}), false],
  ['judged "fit" or then', look({}, ['then']), true],
  ['not judged "fit"', look({}), 'unknown'],
  ['60 s after DT-09', look({}, [], 60), true],
  ['1 min after DT-09', look({}, [], 59), false],
  ['then within 5 s of GA-01', look({}, ['then'], 6), false],
] as const)('%s #%#', (text, given, verdict) => {
  expect(evaluateGate(gateOf(text), given)).toBe(verdict);
});

test('over ranges: certain where every value agrees', () => {
  const over = (speed: readonly [number, number]) =>
    judgeGate(gateOf('speed <= VFE F18 - 5 kt'), {
      number: (term) => (term.kind === 'speed' ? { lo: 205, hi: 205 } : { lo: speed[0], hi: speed[1] }),
      truth: () => 'unknown',
      since: () => 'unknown',
    });
  expect(over([150, 200])).toBe(true);
  expect(over([150, 200.1])).toBe('unknown');
  expect(over([201, 220])).toBe(false);
});

test('what is certain over ranges is so at every value inside them', () => {
  const range = fc.tuple(
    fc.integer({ min: -50, max: 400 }),
    fc.integer({ min: 0, max: 60 }),
    fc.double({ min: 0, max: 1, noNaN: true }),
  );
  let certain = 0;
  fc.assert(
    fc.property(
      gateArbitrary,
      fc.array(range, { minLength: 7, maxLength: 7 }),
      fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }),
      (gate, ranges, truths) => {
        // The same question always gets the same answer.
        const pick = (text: string, of: number): number =>
          [...text].reduce((sum, each) => sum + each.codePointAt(0)!, 0) % of;
        const [low, wide, part] = [0, 1, 2] as const;
        const rangeOf = (text: string) => ranges[pick(text, 7)]!;
        const truth = (each: { kind: string }) => truths[pick(each.kind, 5)]!;
        const overall = judgeGate(gate, {
          number: (term) => ({
            lo: rangeOf(printTerm(term))[low],
            hi: rangeOf(printTerm(term))[low] + rangeOf(printTerm(term))[wide],
          }),
          truth,
          since: (step) => ({ lo: rangeOf(step ?? '')[low], hi: rangeOf(step ?? '')[low] + rangeOf(step ?? '')[wide] }),
        });
        const inside = (text: string) => {
          const [from, width, share] = [rangeOf(text)[low], rangeOf(text)[wide], rangeOf(text)[part]];
          return Math.min(from + width, from + width * share);
        };
        const exact = evaluateGate(gate, {
          number: (term) => inside(printTerm(term)),
          truth,
          since: (step) => inside(step ?? ''),
        });
        if (overall !== 'unknown') {
          certain++;
          expect(exact).toBe(overall);
        }
      },
    ),
    { numRuns: 10_000 },
  );
  expect(certain).toBeGreaterThan(1_000);
});

test('what a gate speaks of', () => {
  const found = variablesOf(
    gateOf(
      'speed >= VMM F12 and flaps F18 indicated and (vertical = LIFT / ASCENT or armed ALT) and heard "checked" within 5 s of GA-01 and altitude >= selected altitude and distance to QOSTEL <= 5 NM',
    ),
  );
  expect(found).toMatchObject({
    measures: ['speed', 'altitude', 'distance'],
    speeds: [{ name: 'VMM', detent: 'F12', icing: false }],
    detents: ['F12', 'F18'],
    modes: [
      { axis: 'vertical', word: 'LIFT' },
      { axis: 'vertical', word: 'ASCENT' },
    ],
    armed: ['ALT'],
    heard: ['checked'],
    steps: ['GA-01'],
    altitudes: ['selected-altitude'],
    points: ['QOSTEL'],
    gear: false,
  });
});
