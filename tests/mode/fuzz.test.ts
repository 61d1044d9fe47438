// 10 000 tables, most of them spoilt: an answer or a refusal, never a crash and never without end.
import { expect, test } from 'vitest';
import { type ModeSet, modeSet } from '../../lib/aircraft/mode-set.ts';
import { compile } from '../../lib/mode/compile.ts';
import { graphOf } from '../../lib/mode/graph.ts';
import { GENERAL, judge, NO_WAY_OUT } from '../../lib/mode/properties.ts';
import { checkTable } from '../../lib/mode/self-check.ts';
import { type Dice, dice, randomTable } from '../kit/mode-tables.ts';

const TABLES = 10_000;
const MOST_STATES = 60;

/** One thing made wrong somewhere in the table: a word, a list, a number of words. */
function spoilt(table: ModeSet, roll: Dice): unknown {
  const data = structuredClone(table) as unknown as Record<string, unknown>;
  const spots: (() => void)[] = [];
  const visit = (value: unknown): void => {
    if (value === null || typeof value !== 'object') return;
    for (const [key, inner] of Object.entries(value)) {
      const holder = value as Record<string, unknown>;
      if (typeof inner === 'string')
        spots.push(() => (holder[key] = roll.pick(['', 'ODD', 'RISE', 'else', '__proto__'])));
      if (Array.isArray(inner)) {
        spots.push(() => (holder[key] = []));
        spots.push(() => (holder[key] = [...inner, ...inner]));
        spots.push(() => (holder[key] = Array.from({ length: 40 }, (_, i) => `W${i}`)));
      }
      spots.push(() => delete holder[key]);
      visit(inner);
    }
  };
  visit(data);
  roll.pick(spots)();
  return data;
}

test(`${TABLES} random tables`, { timeout: 120_000 }, () => {
  const count = { unread: 0, refused: 0, whole: 0, cut: 0 };
  for (let seed = 1; seed <= TABLES; seed += 1) {
    const roll = dice(seed + 1_000_000);
    const data = roll.chance(0.3) ? randomTable(seed) : spoilt(randomTable(seed), roll);
    const read = modeSet.safeParse(data);
    if (!read.success) {
      count.unread += 1;
      continue;
    }
    const machine = compile(read.data, 'ONE');
    if (!machine.ok) {
      count.refused += 1;
      expect(machine.error.length).toBeGreaterThan(0);
      for (const { because } of machine.error) expect(because).not.toBe('');
      continue;
    }
    const graph = graphOf(machine.value, MOST_STATES);
    count[graph.complete ? 'whole' : 'cut'] += 1;
    expect(graph.complete).toBe(graph.reason === null);
    expect(graph.lines.length).toBeLessThanOrEqual(Math.max(MOST_STATES, machine.value.initial.length));
    if (seed % 20 === 0) {
      for (const verdict of judge(graph, [...GENERAL, NO_WAY_OUT]))
        expect(verdict.witness.length > 0).toBe(verdict.cases > 0);
      for (const problem of checkTable(graph)) expect(problem.message).not.toBe('');
    }
  }
  for (const [kind, tables] of Object.entries(count)) expect(tables, kind).toBeGreaterThan(200);
});
