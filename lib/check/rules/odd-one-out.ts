import { ASPECTS } from '../aspects.ts';
import { members, namesOf, type Relative } from '../family.ts';
import { defineRule } from '../rule.ts';
import { inOrder } from '../witness.ts';

/** Fewer than these in a family, and there is no majority to be other than. */
const LEAST = 3;

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
    for (const { sister, relatives } of all) {
      if (sister.reason) continue;
      for (const { what, field, of, comparable } of ASPECTS) {
        const mine = of(sister);
        const compared = relatives.filter((each) => comparable?.(sister, each) ?? true);
        if (compared.length + 1 < LEAST) continue;
        const groups = Map.groupBy(compared, of);
        const most = [...groups].find(([, group]) => group.length * 2 > compared.length + 1);
        if (most === undefined || most[0] === mine) continue;
        const [theirs, group] = most;
        const data = { what, mine, theirs, count: group.length, all: compared.length + 1, where: namesOf(group) };
        const witness = inOrder(mine, theirs, `${sister.called}: "${mine}"; ${data.where}: "${theirs}"`);
        const cause = `family ${sister.family} ${sister.step}`;
        report({
          at: { step: sister.step, field },
          message: 'odd',
          data,
          witness,
          cause,
          read: [theirs, group.length],
        });
      }
    }
    for (const [index, second] of all.slice(1).entries()) {
      const first = all[index]!;
      // A step that waits for a cue of its own has no neighbour.
      if (!/^(then|after)\b/.test(second.sister.trigger)) continue;
      if (first.sister.family === second.sister.family || second.sister.reason || first.sister.reason) continue;
      const placed = new Map(first.relatives.map((each) => [each.of, each.place]));
      const both = second.relatives.filter((each) => each.of !== procedure.id && placed.has(each.of));
      const reversed = both.filter((each: Relative) => each.place < placed.get(each.of)!);
      if (both.length + 1 < LEAST || reversed.length * 2 <= both.length + 1) continue;
      const data = { first: first.sister.called, second: second.sister.called, where: namesOf(reversed) };
      const witness = inOrder(
        data.second,
        data.first,
        `${data.where}: ${second.sister.object} before ${first.sister.object}`,
      );
      const at = { step: second.sister.step, field: 'family' };
      report({ at, message: 'sequence', data, witness, read: reversed.map((each) => each.step) });
    }
  },
});
