import { expect, test } from 'vitest';
import type { ModeSet, ModeThen, ModeWhen } from '../../lib/aircraft/mode-set.ts';
import { compile } from '../../lib/mode/compile.ts';
import { graphOf } from '../../lib/mode/graph.ts';
import { pathWords } from '../../lib/mode/path.ts';
import { axisDrawing, checkTable } from '../../lib/mode/self-check.ts';
import { randomTable, ruling } from '../kit/mode-tables.ts';
import { otherSheet, tn182 } from '../kit/sheets.ts';

const rule = (id: string, event: string, when: ModeWhen, deeds: ModeThen): ModeSet['rules'][number] => ({
  id,
  who: 'crew',
  event,
  effect: 'as tried here',
  ...ruling(when, deeds),
});
const graphOfTable = (modes: ModeSet, standard: string) => {
  const machine = compile(modes, standard);
  if (!machine.ok) throw new Error(JSON.stringify(machine.error));
  return graphOf(machine.value);
};
const table = (...rules: ModeSet['rules']): ModeSet => ({ ...randomTable(1), rules });
const problems = (...rules: ModeSet['rules']) => checkTable(graphOfTable(table(...rules), 'ONE'));

test('two transitions for one event, with the path to where they meet', () => {
  const found = problems(
    rule('R1', 'press RISE', {}, { vertical: 'RISE' }),
    rule('R2', 'press X', { vertical: { in: ['RISE'] } }, { vertical: 'SINK' }),
    rule('R3', 'press X', { thrust: { in: ['HAND'] } }, { thrust: 'PUSH' }),
  );
  const two = found.filter(({ kind }) => kind === 'two-for-one-event');
  expect(two.map(({ at }) => at)).toEqual(['R2']);
  expect(two[0]!.message).toContain('R2 and by R3');
  expect(pathWords(two[0]!.witness)).toBe('R1 press RISE');
});

test('rules of one event that never meet, or that agree, are no problem', () => {
  const found = problems(
    rule('R1', 'press X', { vertical: { in: ['NOSE'] } }, { vertical: 'RISE' }),
    rule('R2', 'press X', { vertical: { in: ['RISE'] } }, { vertical: 'NOSE' }),
    rule('R3', 'press Y', { vertical: { in: ['NOSE'] } }, { vertical: 'RISE' }),
    rule('R4', 'press Y', {}, { vertical: 'RISE' }),
  );
  expect(found.filter(({ kind }) => kind === 'two-for-one-event')).toEqual([]);
});

test('a mode that can not be left', () => {
  const found = problems(rule('R1', 'press RISE', {}, { vertical: 'RISE' }));
  const stuck = found.filter(({ kind }) => kind === 'no-way-out');
  expect(stuck.map(({ at }) => at)).toContain('vertical.RISE');
  expect(stuck.map(({ at }) => at)).not.toContain('vertical.NOSE');
});

test('a mode that can not be reached', () => {
  const found = problems(rule('R1', 'press RISE', {}, { vertical: 'RISE' }));
  const missing = found.filter(({ kind }) => kind === 'never-reached').map(({ at }) => at);
  expect(missing).toContain('vertical.SINK');
  expect(missing).not.toContain('vertical.RISE');
});

test('a guard that contradicts itself, and one that no reachable state satisfies', () => {
  const found = problems(
    rule('R1', 'press RISE', { vertical: { not: ['NOSE', 'RISE', 'SINK', 'FLAT', 'DROP'] } }, { vertical: 'RISE' }),
    rule('R2', 'press SINK', { vertical: { in: ['FLAT'] } }, { vertical: 'SINK' }),
  );
  const never = found.filter(({ kind }) => kind === 'never-true');
  expect(never.map(({ at, message }) => [at, message.includes('contradicts')])).toEqual([
    ['R1', true],
    ['R2', false],
  ]);
});

test('an event without effect anywhere', () => {
  const found = problems(
    rule('R1', 'press NOSE', {}, { vertical: 'NOSE' }),
    rule('R2', 'press RISE', {}, { vertical: 'RISE' }),
  );
  expect(found.filter(({ kind }) => kind === 'no-effect').map(({ at }) => at)).toEqual([]);
  const alone = problems(rule('R1', 'press NOSE', {}, { vertical: 'NOSE' }));
  expect(alone.filter(({ kind }) => kind === 'no-effect').map(({ at }) => at)).toEqual(['R1']);
});

// aircraft.md D5.2: T34 never fires on standard A; T14, the dead switch, changes nothing and is meant to
test.each([
  ['A', ['no-effect T14', 'never-true T34']],
  ['B', ['no-effect T14']],
])('the demo table, standard %s', (standard, expected) => {
  const found = checkTable(graphOfTable(tn182().modes, standard));
  expect(found.map(({ kind, at }) => `${kind} ${at}`).sort()).toEqual([...expected].sort());
});

test('another type is explored by the same code', () => {
  const graph = graphOfTable(otherSheet().modes, 'ONE');
  expect(graph.lines.map((line) => line.vertical)).toContain('FLAT');
  expect(checkTable(graph).map(({ at }) => at)).toContain('phase.dead');
});

test('one axis as words and rules between them', () => {
  const drawing = axisDrawing(graphOfTable(tn182().modes, 'A'), 'vertical');
  expect(drawing).toContainEqual({ from: 'GLIDE', to: 'FLARE', rules: ['T11'] });
  expect(drawing.find(({ from, to }) => from === 'FLARE' && to === 'ASCENT')).toBeUndefined();
});
