import { describe, expect, test } from 'vitest';
import { checkProcedure } from '../../lib/check/check.ts';
import { checkLibrary, type FactsOf } from '../../lib/check/library-check.ts';
import { rulesUpTo } from '../../lib/check/stage.ts';
import { toldBy } from '../../lib/check/told.ts';
import type { Procedure } from '../../lib/procedure/procedure.ts';
import { chanceFrom, editedOne, madeLibrary } from '../kit/library.ts';
import { procedureNames, seedProcedure } from '../kit/seed.ts';
import { houseFacts } from '../kit/world.ts';

/** Checks that hear others, and two that don't: what explores and flies hears nobody and would only take time here. */
const rules = rulesUpTo('publication').filter(
  (rule) => rule.needs.includes('others') || ['no-trigger', 'elastic-words'].includes(rule.id),
);
const { others: _, ...facts } = houseFacts;
const factsOf: FactsOf = () => facts;
const put = (all: readonly Procedure[], procedure: Procedure): readonly Procedure[] =>
  all.map((each) => (each.id === procedure.id ? procedure : each));

describe('a library checked after edits', () => {
  const start = [...procedureNames().map(seedProcedure), ...madeLibrary(9, 25)];

  test('answers for each procedure as if it had been asked alone, with all others at hand', () => {
    const library = checkLibrary(start, factsOf, rules);
    for (const procedure of start) {
      const others = start.filter((each) => each !== procedure).map(toldBy);
      const { checked, ...alone } = checkProcedure(procedure, { ...facts, others }, rules);
      const { checked: stamped, ...found } = library.answer(procedure.id);
      expect(found).toEqual(alone);
      expect(stamped.rules).toEqual(checked.rules);
    }
  });

  test.each([1, 2, 3, 4])('is the same as checked from nothing, edit by edit (run %i)', (run) => {
    const chance = chanceFrom(run);
    let all: readonly Procedure[] = start;
    const library = checkLibrary(all, factsOf, rules);
    const found = new Set<string>();
    let spared = 0;
    for (let edit = 0; edit < 80; edit += 1) {
      const edited = editedOne(all, chance);
      all = put(all, edited);
      const again = library.edit(edited);
      spared += all.length * rules.length - again.length;
      if (edit % 5 !== 4) continue;
      const fresh = checkLibrary(all, factsOf, rules);
      for (const { id } of all) {
        const answer = library.answer(id);
        expect(answer).toEqual(fresh.answer(id));
        for (const { check } of answer.findings) found.add(check);
      }
    }
    expect(spared).toBeGreaterThan(0);
    // The edits do reach across: what is compared is not silence.
    expect(found.size).toBeGreaterThan(5);
  });

  test('asks again only what heard something else', () => {
    const library = checkLibrary(start, factsOf, rules);
    const first = start[0]!;
    const worded = {
      ...first,
      steps: first.steps.map((step, at) => (at === 0 ? { ...step, note: 'a word more' } : step)),
    };
    expect(library.edit(worded)).toEqual([first.id]);
    const gear = start.find((each) => each.steps.some((step) => step.family === 'gear-up'))!;
    const moved = {
      ...gear,
      steps: gear.steps.map((step) => (step.family === 'gear-up' ? { ...step, who: 'PF' as const } : step)),
    };
    const [, ...again] = library.edit(moved);
    expect(again.length).toBeGreaterThan(0);
    expect(new Set(again.map((name) => name.split(' ')[1]))).toContain('odd-one-out');
    expect(again.join()).not.toContain('dead-link');
  });

  test('takes a new procedure in, and names its state anew', () => {
    const library = checkLibrary(start.slice(1), factsOf, rules);
    const id = start[1]!.id;
    const before = library.answer(id).checked.library;
    library.edit(start[0]!);
    expect(library.answer(id).checked.library).not.toBe(before);
    expect(library.answer(id)).toEqual(checkLibrary(start, factsOf, rules).answer(id));
    expect(() => library.answer('pr_nowhere')).toThrow('in the library');
  });
});
