// The explorer against a slow search that shares no code with it, on the demo table and on small random ones.
import { expect, test } from 'vitest';
import type { ModeSet } from '../../lib/aircraft/mode-set.ts';
import { compile } from '../../lib/mode/compile.ts';
import { graphOf } from '../../lib/mode/graph.ts';
import { type Line, successors } from '../kit/mode-line.ts';
import { randomTable } from '../kit/mode-tables.ts';
import { tn182 } from '../kit/sheets.ts';

const key = (line: Line): string =>
  JSON.stringify([
    [line.thrust, line.lateral, line.vertical, line.rel, line.phase],
    [...line.armedVertical].sort(),
    [...line.armedLateral].sort(),
  ]);

/** Every line that any rule may lead to, its distance from the start, and the number of edges. */
function slow(modes: ModeSet, standard: string) {
  const start = modes.initial.map(
    (line): Line => ({
      thrust: line.thrust,
      lateral: line.lateral,
      vertical: line.vertical,
      armedVertical: [...line.armed_vertical].sort(),
      armedLateral: [...line.armed_lateral].sort(),
      rel: line.rel,
      phase: line.phase,
    }),
  );
  const distance = new Map(start.map((line) => [key(line), 0]));
  let edges = 0;
  let front = start;
  for (let step = 1; front.length > 0; step += 1) {
    const next: Line[] = [];
    for (const line of front) {
      for (const rule of modes.rules) {
        for (const to of successors(modes, line, standard, (one) => one === rule)) {
          edges += 1;
          if (distance.has(key(to))) continue;
          distance.set(key(to), step);
          next.push(to);
        }
      }
    }
    front = next;
  }
  return { distance, edges };
}

function fast(modes: ModeSet, standard: string) {
  const machine = compile(modes, standard);
  if (!machine.ok) throw new Error(JSON.stringify(machine.error));
  const { found, lines } = graphOf(machine.value);
  const far: number[] = [];
  for (let i = 0; i < lines.length; i += 1) far.push(found.parent[i]! < 0 ? 0 : far[found.parent[i]!]! + 1);
  const split = (armed: readonly string[], words: readonly string[]) =>
    armed.filter((word) => words.includes(word)).sort();
  // A word may be armed on both axes: the packed state is asked, not the words shown together.
  const { layout } = machine.value;
  const bits = (field: typeof layout.thrust, state: number) =>
    field.words.filter((_, bit) => ((state >>> (field.shift + bit)) & 1) === 1);
  const distance = new Map(
    lines.map((line, i) => {
      const state = found.states[i]!;
      const armedVertical = split(bits(layout.armedVertical, state), modes.armedVertical);
      const armedLateral = split(bits(layout.armedLateral, state), modes.armedLateral);
      return [key({ ...line, armedVertical, armedLateral }), far[i]!];
    }),
  );
  return { distance, edges: found.edges };
}

test.each(['A', 'B'])('the demo table, standard %s: the same states at the same distances', (standard) => {
  const { modes } = tn182();
  const [one, other] = [fast(modes, standard), slow(modes, standard)];
  expect(one.edges).toBe(other.edges);
  expect(new Map([...one.distance].sort())).toEqual(new Map([...other.distance].sort()));
});

test('60 random tables: the same states at the same distances, the same edges', () => {
  let most = 0;
  for (let seed = 1; seed <= 60; seed += 1) {
    const modes = randomTable(seed);
    const [one, other] = [fast(modes, 'ONE'), slow(modes, 'ONE')];
    most = Math.max(most, one.distance.size);
    expect([seed, one.edges, one.distance.size]).toEqual([seed, other.edges, other.distance.size]);
    for (const [line, far] of other.distance) expect(one.distance.get(line), `${seed} ${line}`).toBe(far);
  }
  expect(most).toBeGreaterThan(100);
});
