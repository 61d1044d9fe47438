import fc from 'fast-check';
import { expect, test } from 'vitest';
import { completeGate } from '../../lib/gate/complete.ts';
import { parseGate } from '../../lib/gate/parse.ts';
import { prettyGate, printGate } from '../../lib/gate/print.ts';
import { PRINTED } from '../../lib/gate/words.ts';
import { gateArbitrary } from '../kit/gate-arbitrary.ts';

const bare = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value, (key, each) => (key === 'span' ? undefined : each)));

test('what is printed is read back as the same gate', () => {
  fc.assert(
    fc.property(gateArbitrary, (gate) => {
      const text = printGate(gate);
      expect(bare(parseGate(text).gate)).toEqual(bare(gate));
      expect(printGate(parseGate(prettyGate(gate)).gate!)).toBe(text);
    }),
    { numRuns: 4_000 },
  );
});

test('100,000 random texts neither crash nor hang', () => {
  const morsel = fc.oneof(
    {
      weight: 6,
      arbitrary: fc.constantFrom(
        ...PRINTED.map(([word]) => word),
        'and',
        'or',
        'not',
        'within',
        'of',
        'after',
        '(',
        ')',
        '"',
        '>=',
        '-',
        ',',
        '/',
        'F12',
        '400',
        'ft',
        'AAL',
        'FL',
        'M',
        'max',
        'between',
        'flaps',
        'vertical',
        'thrust',
        '=',
        'heard',
      ),
    },
    { weight: 2, arbitrary: fc.string({ maxLength: 8, unit: 'binary' }) },
  );
  const text = fc.array(morsel, { maxLength: 14 }).map((parts) => parts.join(' '));
  const started = performance.now();
  let slowest = 0;
  fc.assert(
    fc.property(text, fc.nat(60), (said, offset) => {
      const from = performance.now();
      const read = parseGate(said);
      slowest = Math.max(slowest, performance.now() - from);
      if (read.gate === null && read.problems.length === 0) throw new Error('nothing understood and nothing said');
      for (const { span } of read.problems)
        if (span.from < 0 || span.to > said.length || span.from > span.to) throw new Error('span');
      if (read.gate !== null) printGate(read.gate);
      if (offset % 10 === 0) completeGate(said, Math.min(offset, said.length));
    }),
    { numRuns: 100_000 },
  );
  expect(slowest).toBeLessThan(1_000);
  expect(performance.now() - started).toBeLessThan(55_000);
});

test.each([
  '('.repeat(1_900),
  'not '.repeat(480),
  'max('.repeat(490),
  '"'.repeat(1_999),
  '- '.repeat(990),
  '1 '.repeat(990),
  `speed >= ${'V2 + '.repeat(390)}`,
])('hostile text %#', (text) => {
  const from = performance.now();
  expect(parseGate(text).problems.length).toBeGreaterThan(0);
  expect(performance.now() - from).toBeLessThan(1_000);
});
