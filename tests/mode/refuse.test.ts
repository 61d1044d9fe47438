import { expect, test } from 'vitest';
import type { ModeSet, ModeThen } from '../../lib/aircraft/mode-set.ts';
import { compile } from '../../lib/mode/compile.ts';
import { explore } from '../../lib/mode/explore.ts';
import { graphOf, systemOf } from '../../lib/mode/graph.ts';
import { hashSet, stateSet } from '../../lib/mode/state-set.ts';
import { dice, randomTable, ruling } from '../kit/mode-tables.ts';
import { tn182 } from '../kit/sheets.ts';

const base = randomTable(3);
const deed = (deeds: ModeThen): ModeSet => ({
  ...base,
  rules: [{ id: 'R1', who: 'crew', event: 'press', effect: 'tried', ...ruling({}, deeds) }],
});
const many = (count: number): string[] => Array.from({ length: count }, (_, i) => `W${i}`);

test.each<[string, ModeSet, string]>([
  ['an unknown word', deed({ vertical: 'UPWARD' }), 'UPWARD is no word of vertical'],
  ['two effects on one axis', deed({ thrust: 'PUSH', thrust_unless_manual: 'KEEP' }), 'both decide one axis'],
  ['alt without its word', { ...deed({ alt: 'disarm' }), armedVertical: ['DROP'] }, 'is no armed word'],
  ['alt and arming at once', deed({ alt: 'disarm', arm_vertical: ['ALT'] }), 'both decide ALT'],
  ['a standard left out', deed({ alt: { TWO: 'disarm' } }), 'what happens in standard ONE'],
  ['a rule that never acts', deed({ only_if_rel_changes: true }), 'could never act'],
  ['too many words', { ...base, lateral: ['WINGS', 'TRACK', 'BEAM', ...many(40)] }, '31 can be analysed'],
  ['no beginning', { ...base, initial: [] }, 'no initial state'],
  ['a word twice', { ...base, rel: [...base.rel, 'near'] }, 'stands twice'],
  ['two rules of one name', { ...base, rules: [base.rules[0]!, base.rules[0]!] }, 'two rules are called R1'],
  [
    'a control of no rule',
    { ...base, controls: [{ verbs: ['press'], object: 'RISE', rules: ['R99'] }] },
    'R99 is no word of the list of rules',
  ],
])('%s is refused, with the reason', (_, modes, reason) => {
  const machine = compile(modes, 'ONE');
  expect(machine.ok).toBe(false);
  if (!machine.ok) expect(machine.error.map(({ because }) => because).join('; ')).toContain(reason);
});

test('an unknown standard is refused', () => {
  const machine = compile(tn182().modes, 'C');
  expect(machine.ok).toBe(false);
  if (!machine.ok) expect(machine.error[0]!.because).toBe('the sheet has no guidance standard C');
});

test('a limit gives the states nearest to the start, and says that it is not the whole', () => {
  const machine = compile(tn182().modes, 'A');
  if (!machine.ok) throw new Error('the demo table compiles');
  const [part, whole] = [graphOf(machine.value, 200), graphOf(machine.value)];
  expect([part.complete, part.lines.length]).toEqual([false, 200]);
  expect(part.reason).toContain('more than 200 states');
  expect(part.lines).toEqual(whole.lines.slice(0, 200));
});

test('the same table gives the same answer, state by state', () => {
  const machine = compile(tn182().modes, 'B');
  if (!machine.ok) throw new Error('the demo table compiles');
  const [one, two] = [explore(systemOf(machine.value)), explore(systemOf(machine.value))];
  expect(one).toEqual(two);
});

test('the two kinds of state set agree with a plain set', () => {
  const roll = dice(11);
  const [map, table, plain] = [stateSet(20), hashSet(), new Set<number>()];
  for (let i = 0; i < 60_000; i += 1) {
    const key = roll.below(2 ** 20);
    const fresh = !plain.has(key);
    plain.add(key);
    expect([map.add(key), table.add(key)]).toEqual([fresh, fresh]);
  }
  for (let key = 0; key < 2_000; key += 1)
    expect([map.has(key), table.has(key)]).toEqual([plain.has(key), plain.has(key)]);
  const top = 2 ** 31 - 2;
  expect([table.add(top), table.add(top), table.has(top)]).toEqual([true, false, true]);
});
