import { ASPECTS } from '../aspects.ts';
import { type Kin, members, namesOf, placesOf } from '../family.ts';
import { defineRule } from '../rule.ts';
import { inOrder } from '../witness.ts';

/** Fewer than these in a family, and there is no majority to be other than. */
const LEAST = 3;
const sum = (kin: readonly Kin[]): number => kin.reduce((all, { count }) => all + count, 0);

export const oddOneOut = defineRule({
  id: 'odd-one-out',
  number: 101,
  severity: 'ADVICE',
  kind: 'T',
  stage: 'submission',
  phases: 'all',
  title: 'Odd one out',
  says: 'A step that differs from the majority of its family in value, figures of the trigger, actor, order or modes, or stands in another sequence with its neighbour, has a recorded reason.',
  why: 'Copies drift in silence, one at a time.',
  source: { text: 'House catalogue of checks: copy drift', seen: true },
  needs: ['others'],
  reads: ['cue', 'who', 'orderBy', 'orderWords', 'value', 'expect', 'family', 'why'],
  messages: {
    odd: 'The {what} is "{mine}" here and "{theirs}" in {count} of {all} of its family ({where}): as they, or say why.',
    sequence: 'Here {first} comes before {second}; in {where} it is the other way round: as they, or say why.',
  },
  examples: {
    bad: '{steps: [{family: set-missed, cue: height <= 500 ft AAL, who: PM, verb: set, object: altitude selector}], others: [{steps: [{family: set-missed, cue: height <= 1 000 ft AAL, who: PM, verb: set, object: altitude selector}]}, {steps: [{family: set-missed, cue: height <= 1 000 ft AAL, who: PM, verb: set, object: altitude selector}]}]}',
    good: '{steps: [{family: set-missed, cue: height <= 1 000 ft AAL, who: PM, verb: set, object: altitude selector}], others: [{steps: [{family: set-missed, cue: height <= 1 000 ft AAL, who: PM, verb: set, object: altitude selector}]}, {steps: [{family: set-missed, cue: height <= 1 000 ft AAL, who: PM, verb: set, object: altitude selector}]}]}',
  },
  run({ procedure, steps, others }, report) {
    const all = members(procedure, steps, others);
    for (const { sister, kin } of all) {
      if (sister.reason) continue;
      for (const { what, field, of, comparable } of ASPECTS) {
        const mine = of(sister);
        const compared = kin.filter((each) => comparable?.(sister, each.sister) ?? true);
        const total = 1 + sum(compared);
        if (total < LEAST) continue;
        const most = [...Map.groupBy(compared, (each) => of(each.sister))].find(([, group]) => sum(group) * 2 > total);
        if (most === undefined || most[0] === mine) continue;
        const [theirs, group] = most;
        const where = namesOf(group.flatMap((each) => each.called()));
        const data = { what, mine, theirs, count: sum(group), all: total, where };
        const witness = inOrder(mine, theirs, `${sister.called}: "${mine}"; ${where}: "${theirs}"`);
        const cause = `family ${sister.family} ${sister.step}`;
        report({ at: { step: sister.step, field }, message: 'odd', data, witness, cause, read: [theirs, sum(group)] });
      }
    }
    for (const [index, { sister: second, heard }] of all.slice(1).entries()) {
      const { sister: first, heard: before } = all[index]!;
      // A step that waits for a cue of its own has no neighbour.
      if (!/^(then|after)\b/.test(second.trigger)) continue;
      if (first.family === second.family || second.reason || first.reason) continue;
      const places = placesOf(before);
      const both = [...placesOf(heard)].filter(([id]) => id !== procedure.id && places.has(id));
      const reversed = both.filter(([id, { place }]) => place < places.get(id)!.place).map(([, step]) => step);
      if (both.length + 1 < LEAST || reversed.length * 2 <= both.length + 1) continue;
      const data = { first: first.called, second: second.called, where: namesOf(reversed.map((each) => each.called)) };
      const witness = inOrder(data.second, data.first, `${data.where}: ${second.object} before ${first.object}`);
      const at = { step: second.step, field: 'family' };
      report({ at, message: 'sequence', data, witness, read: reversed.map((each) => each.step) });
    }
  },
});
