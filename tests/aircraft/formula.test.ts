import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { namesInFormula, parseFormula } from '../../lib/aircraft/formula.ts';
import { evaluate, variable } from '../../lib/base/expression.ts';

const known = (name: string) => (['weight', 'VSR'].includes(name) ? variable(name) : null);
function value(text: string): number | string {
  const read = parseFormula(text, known);
  return read.ok ? evaluate(read.value, { weight: 100, VSR: 120 }) : `${read.error.at}: ${read.error.message}`;
}

describe('formulas of a sheet', () => {
  test.each([
    ['1 + 2 * 3', 7],
    ['(1 + 2) * 3', 9],
    ['10 - 4 - 3', 3],
    ['24 / 4 / 2', 3],
    ['-2 ^ 2', -4],
    ['2 ^ -1', 0.5],
    ['1.28 * VSR', 153.6],
    ['max(1, weight, 3)', 100],
    ['min(1, 2 - 3)', -1],
    ['sqrt(weight) + exp(0)', 11],
    ['1.5e2', 150],
  ])('%s', (text, expected) => expect(value(text)).toBeCloseTo(expected, 12));

  test.each([
    ['', '0: a number or a name is expected at the end'],
    ['1 +', '3: a number or a name is expected at the end'],
    ['1 2', '2: the formula should end before "2"'],
    ['max(1', '5: ")" is expected before the end'],
    ['VZR + 1', '0: nothing is called "VZR"'],
    ['2 ^ weight', '4: an exponent is a plain number'],
    ['3 % 4', '1: "%" has no meaning in a formula'],
    [`${'('.repeat(100)}1`, '60: the formula is nested deeper than 60 brackets'],
  ])('"%s" is refused', (text, expected) => expect(value(text)).toBe(expected));

  test('names what it speaks of', () => {
    expect(namesInFormula('max(v1Floor, VR - 6 * weight)')).toEqual(['v1Floor', 'VR', 'weight']);
    expect(namesInFormula('max(')).toEqual([]);
  });
  test('no string makes it throw or hang', () => {
    const text = fc.oneof(
      fc.string(),
      fc.string({ unit: fc.constantFrom(...'0123456789.+-*/^(),eE maxinsqrtVSR'.split('')) }),
    );
    fc.assert(
      fc.property(text, (one) => typeof parseFormula(one, known).ok === 'boolean'),
      { numRuns: 5_000 },
    );
  });
});
