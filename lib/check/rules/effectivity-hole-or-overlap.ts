import type { Step } from '../../procedure/procedure.ts';
import { covers, type Held, heldFrom, standardsIn, tailWords } from '../coverage.ts';
import { variantTitle } from '../names.ts';
import { defineRule } from '../rule.ts';
import { inOrder } from '../witness.ts';

export const effectivityHoleOrOverlap = defineRule({
  id: 'effectivity-hole-or-overlap',
  number: 102,
  severity: 'STOP',
  kind: 'T',
  stage: 'publication',
  phases: 'all',
  title: 'Hole or overlap of effectivity',
  says: 'From today on each tail of the type, with the standard that it holds on each day, has exactly one text of a procedure and exactly one step of each family in it. Texts of one procedure have the same title but for the standard.',
  why: 'Two software loads behave differently in one fleet: a tail without its own text is flown by the text of another.',
  source: { text: 'ATSB AO-2025-010; reports of mixed fleets', seen: true },
  needs: ['fleet', 'others', 'governance'],
  reads: ['only', 'family'],
  messages: {
    hole: '{tails}: no text of "{title}" is for standard {standard}: the crew has nothing, or the text of other tails.',
    overlap: '{tails}: both this text and "{other}" are for standard {standard}: two crews fly two texts.',
    'step-hole': 'On standard {standard} ({tails}) no step of this family is left: {covered} alone have one.',
    'step-overlap': 'On standard {standard} ({tails}) two steps of this family apply, {first} and {second}.',
  },
  examples: {
    bad: '{title: "Altitude change in climb, standard A", effectivity: {type: TN-182, standards: [A], note: ""}}',
    good: '{title: "Altitude change in climb, standard A", effectivity: {type: TN-182, standards: [A], note: ""}, others: [{title: "Altitude change in climb, standard B", effectivity: {type: TN-182, standards: [B], note: ""}}]}',
  },
  run({ procedure, steps, fleet, others, governance }, report) {
    const { type, standards } = procedure.effectivity;
    const { today } = governance;
    const held = heldFrom(fleet, type, today);
    const byStandard = Map.groupBy(held, (each) => each.standard);
    const sisters = others
      .read('variant', variantTitle(procedure.title))
      .filter(({ of, tells }) => of !== procedure.id && tells.type === type && tells.class === procedure.class);
    const at = { step: '', field: 'effectivity.standards' };
    for (const [standard, all] of byStandard) {
      const tails = tailWords(all, today);
      const read = [tails, standards.join(), ...sisters.map(({ tells }) => tells.standards.join())];
      const others_ = sisters.filter(({ tells }) => covers(tells.standards, standard));
      const mine = covers(standards, standard);
      const cause = `effectivity ${variantTitle(procedure.title)} ${standard}`;
      if (!mine && others_.length === 0) {
        const data = { tails, standard, title: procedure.title };
        const witness = inOrder(standards.join(', '), standard, `${tails}, standard ${standard}`);
        report({ at, message: 'hole', data, witness, cause, read });
      } else if (mine && others_.length > 0) {
        const other = others_[0]!.tells.title;
        const witness = inOrder(procedure.title, other, `${tails}, standard ${standard}`);
        report({ at, message: 'overlap', data: { tails, standard, other }, witness, cause, read });
      }
    }
    for (const family of restricted(steps)) {
      for (const [standard, all] of byStandard) {
        if (covers(standards, standard)) judge(family, standard, all);
      }
    }

    function judge(family: readonly Step[], standard: string, all: readonly Held[]): void {
      const tails = tailWords(all, today);
      const on = family.filter((step) => covers(standardsIn(step.only) ?? [], standard));
      const place = { step: family[0]!.id as string, field: 'only' };
      const [first, second] = on.map((step) => step.label || step.id);
      if (first === undefined) {
        const covered = [...new Set(family.flatMap((step) => standardsIn(step.only) ?? []))].join(', ');
        const witness = inOrder(covered, standard, `${tails}, standard ${standard}`);
        report({ at: place, message: 'step-hole', data: { standard, tails, covered }, witness, read: [tails] });
      } else if (second !== undefined) {
        const witness = inOrder(first, second, `${tails}, standard ${standard}`);
        report({
          at: place,
          message: 'step-overlap',
          data: { standard, tails, first, second },
          witness,
          read: [tails],
        });
      }
    }
  },
});

/** Families of which two or more steps are restricted to standards: they are meant to stand in for each other. */
function restricted(steps: readonly Step[]): readonly (readonly Step[])[] {
  const named = steps.filter((step) => step.family !== '' && standardsIn(step.only) !== null);
  return [...Map.groupBy(named, (step) => step.family).values()].filter((family) => family.length > 1);
}
