// Named predicates in gate notation: free, unless a prover shows that they exclude each other.
import { expect, test } from 'vitest';
import { type ModeSet, modeSet } from '../../lib/aircraft/mode-set.ts';
import { parseGate } from '../../lib/gate/parse.ts';
import { compile } from '../../lib/mode/compile.ts';
import { graphOf } from '../../lib/mode/graph.ts';
import type { Excludes } from '../../lib/mode/rule-code.ts';
import { checkTable } from '../../lib/mode/self-check.ts';
import { randomTable, ruling } from '../kit/mode-tables.ts';

const asking = (holds: string[], fails: string[] = []): ModeSet =>
  modeSet.parse({
    ...randomTable(1),
    predicates: { high: 'height >= 400 ft AAL', low: 'height <= 100 ft AAL' },
    rules: [
      { id: 'R1', who: 'auto', event: 'climbs', effect: 'RISE', ...ruling({ holds, fails }, { vertical: 'RISE' }) },
      { id: 'R2', who: 'auto', event: 'levels', effect: 'FLAT', ...ruling({}, { vertical: 'FLAT' }) },
    ],
  });
const verticals = (modes: ModeSet, excludes?: Excludes) => {
  const machine = compile(modes, 'ONE', excludes);
  if (!machine.ok) throw new Error(JSON.stringify(machine.error));
  const graph = graphOf(machine.value);
  return { graph, reached: new Set(graph.lines.map((line) => line.vertical)) };
};
/** Says of two heights whether both can be: what a prover over the flight domain would say. */
const heights: Excludes = (holds) => {
  const bounds = holds.map((text) => parseGate(text).gate);
  const amount = (op: string) =>
    bounds.flatMap((gate) =>
      gate?.kind === 'compare' && gate.op === op && gate.right.kind === 'amount' ? [gate.right.value] : [],
    );
  return Math.max(-Infinity, ...amount('>=')) > Math.min(Infinity, ...amount('<='));
};

test('a predicate may be so at any moment', () => {
  expect(verticals(asking(['high'])).reached.has('RISE')).toBe(true);
  expect(verticals(asking(['high', 'low'])).reached.has('RISE')).toBe(true);
});

test('a predicate and its opposite are never so together', () => {
  const { graph, reached } = verticals(asking(['high'], ['high']));
  expect(reached.has('RISE')).toBe(false);
  expect(
    checkTable(graph)
      .filter(({ kind }) => kind === 'never-true')
      .map(({ at }) => at),
  ).toEqual(['R1']);
});

test('an exclusion that a prover shows is used', () => {
  expect(verticals(asking(['high', 'low']), heights).reached.has('RISE')).toBe(false);
  expect(verticals(asking(['high']), heights).reached.has('RISE')).toBe(true);
});

test('an unknown predicate and an unreadable text are refused', () => {
  const unknown = compile(asking(['fast']), 'ONE');
  expect(unknown.ok ? '' : unknown.error[0]!.because).toContain('fast is no word of the predicates');
  const unreadable = compile({ ...asking(['high']), predicates: { high: 'height >=' } }, 'ONE');
  expect(unreadable.ok ? '' : unreadable.error[0]!.because).toContain("can't be read as a condition");
});
