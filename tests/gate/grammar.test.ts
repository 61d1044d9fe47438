import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseGate } from '../../lib/gate/parse.ts';
import { prettyGate, printGate } from '../../lib/gate/print.ts';

const page = readFileSync(new URL('../../lib/gate/grammar.md', import.meta.url), 'utf8');
const examples = [...page.matchAll(/```gate\n([\s\S]*?)```/gu)].flatMap((block) => block[1]!.trim().split('\n'));
const pairs = [...page.matchAll(/^\| `([^`]*)` +\| `([^`]*)` +\|$/gmu)].map((row) => [row[1]!, row[2]!] as const);

test('the page has examples', () => {
  expect(examples.length).toBeGreaterThan(50);
  expect(pairs.length).toBeGreaterThan(5);
});

test.each(examples)('%s', (text) => {
  const { gate, problems } = parseGate(text);
  expect(problems).toEqual([]);
  expect(printGate(gate!)).toBe(text);
  expect(printGate(parseGate(prettyGate(gate!)).gate!)).toBe(text);
});

test.each(pairs)('%s is printed as %s', (typed, printed) => {
  const { gate, problems } = parseGate(typed);
  expect(problems).toEqual([]);
  expect(printGate(gate!)).toBe(printed);
});

test('the screen shows true signs and leaves quoted words alone', () => {
  const { gate } = parseGate(
    'temperature <= -5 °C and altitude >= selected altitude - 1 000 ft and heard "a >= b - c"',
  );
  expect(prettyGate(gate!)).toBe(
    'temperature ≤ −5 °C and altitude ≥ selected altitude − 1 000 ft and heard "a >= b - c"',
  );
});
