// The demo type's table explored: every figure is one of the independent script's output, aircraft.md D5.2.
import { expect, test } from 'vitest';
import { compile } from '../../lib/mode/compile.ts';
import { type Graph, graphOf } from '../../lib/mode/graph.ts';
import { lineWords } from '../../lib/mode/layout.ts';
import { pathWords } from '../../lib/mode/path.ts';
import { GENERAL, having, judge, modeChanges, NO_WAY_OUT, unarms } from '../../lib/mode/properties.ts';
import { tn182 } from '../kit/sheets.ts';

const { modes } = tn182();
function explored(standard: string): Graph {
  const machine = compile(modes, standard);
  if (!machine.ok) throw new Error(JSON.stringify(machine.error));
  return graphOf(machine.value);
}
const graphs = { A: explored('A'), B: explored('B') };
type Standard = keyof typeof graphs;

// "reachable states 1354 edges 12184" and "reachable states 1458 edges 13360"
test.each([
  ['A', 1354, 12_184],
  ['B', 1458, 13_360],
] as const)('standard %s has %i states and %i edges', (standard, states, edges) => {
  const { found, complete, to } = graphs[standard];
  expect([found.states.length, found.edges, to.length, complete]).toEqual([states, edges, edges, true]);
});

// "states by phase {'ground': 38, 'air': 1271, 'dead': 45}" and "{'ground': 42, 'air': 1371, 'dead': 45}"
test.each([
  ['A', { ground: 38, air: 1271, dead: 45 }],
  ['B', { ground: 42, air: 1371, dead: 45 }],
] as const)('standard %s by phase', (standard, phases) => {
  const count = Object.fromEntries(
    Object.keys(phases).map((phase) => [phase, graphs[standard].lines.filter((line) => line.phase === phase).length]),
  );
  expect(count).toEqual(phases);
});

// "mode-changing edges 8793 of which two or three axes 2797 = 32 %" and "9615 … 3055 = 32 %"
test.each([
  ['A', 8793, 2797],
  ['B', 9615, 3055],
] as const)('standard %s changes a mode on %i edges, %i of them on several axes', (standard, all, several) => {
  expect(modeChanges(graphs[standard])).toEqual({ all, several });
});

// "rules never fired ['T34']" and "[]"; "self-loops among the edges 51", of them 45 of T14 and 6 of T01 (D5.2, 5)
test.each([
  ['A', ['T34']],
  ['B', []],
] as const)('standard %s: rules that never fire, and loops', (standard, never) => {
  const { machine, rule, first, to, found } = graphs[standard];
  const fired = new Set(rule);
  expect(machine.rules.filter((_, index) => !fired.has(index)).map(({ id }) => id)).toEqual(never);
  const loops: Record<string, number> = {};
  for (let i = 0; i < found.states.length; i += 1) {
    for (let e = first[i]!; e < first[i + 1]!; e += 1) {
      const { id } = machine.rules[rule[e]!]!;
      if (to[e] === i) loops[id] = (loops[id] ?? 0) + 1;
    }
  }
  expect(loops).toEqual({ T01: 6, T14: 45 });
});

test.each(['A', 'B'] as const)('standard %s reaches all 25 modes', (standard: Standard) => {
  for (const axis of ['thrust', 'lateral', 'vertical'] as const) {
    expect(new Set(graphs[standard].lines.map((line) => line[axis]))).toEqual(new Set(modes[axis]));
  }
});

const TRAPS = [
  ...GENERAL,
  having('lift-below', 'LIFT, and the selected altitude lies below', { vertical: 'LIFT', rel: 'below' }),
  having('glide-without-course', 'GLIDE without COURSE', { vertical: 'GLIDE' }, { lateral: 'COURSE' }),
  having('descent-latched', 'DESCENT with LATCHED', { vertical: 'DESCENT', thrust: 'LATCHED' }),
  having('switch-dead', 'the go-around switch is dead', { phase: 'dead' }),
  having('capture', 'CAPTURE', { vertical: 'CAPTURE' }),
  having('level-latched', 'LEVEL with LATCHED', { vertical: 'LEVEL', thrust: 'LATCHED' }),
  unarms('capture-lost', 'selected altitude turned in CAPTURE ends un-armed', 'T24'),
  NO_WAY_OUT,
];

// P2 none / 50, P3 147, P4 125, P5 15, P8 18, P7 79, P10 45, CAPTURE states 52, P6 none, P11 104 / 208 of 208, no way out 0
test.each([
  ['A', [0, 147, 125, 15, 18, 79, 45, 52, 0, 104, 0]],
  ['B', [50, 147, 125, 15, 18, 79, 45, 52, 0, 208, 0]],
] as const)('standard %s has the traps of the table', (standard, counts) => {
  const verdicts = judge(graphs[standard], TRAPS);
  expect(verdicts.map(({ id, cases }) => [id, cases])).toEqual(TRAPS.map(({ id }, i) => [id, counts[i]]));
});

test('the selected altitude can be turned in CAPTURE in 208 ways on both standards', () => {
  const all = { id: 'turned', says: '', edge: (_: unknown, rule: string) => rule === 'T24' };
  expect([judge(graphs.A, [all])[0]!.cases, judge(graphs.B, [all])[0]!.cases]).toEqual([208, 208]);
});

// "P2 … shortest: T01 levers to take-off > T02 V1 passed > T22 … > T24 … => GOVERN CENTRELINE RATE-UP [] [] above"
test('the shortest path to a climb that nothing ends, standard B', () => {
  const [verdict] = judge(graphs.B, GENERAL);
  expect(pathWords(verdict!.witness)).toBe(
    'T01 levers to take-off > T02 V1 passed > T22 inside capture window with ALT armed > T24 turn selected altitude while CAPTURE',
  );
  expect(lineWords(verdict!.witness.at(-1)!.line)).toBe('GOVERN · CENTRELINE · RATE-UP, nothing armed');
});

// Lengths of the shortest paths that the script prints: P3 2, P4 3, P5 4, P8 7, P7 4, P10 8
test.each([
  ['climbing-away', 2],
  ['descending-away', 3],
  ['lift-below', 4],
  ['glide-without-course', 7],
  ['descent-latched', 4],
  ['switch-dead', 8],
])('%s is %i steps from the runway', (id, steps) => {
  for (const graph of [graphs.A, graphs.B]) {
    const verdict = judge(graph, TRAPS).find((one) => one.id === id);
    expect(verdict!.witness.length - 1).toBe(steps);
  }
});
