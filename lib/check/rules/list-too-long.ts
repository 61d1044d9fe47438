import type { Checklist } from '../../library/library.ts';
import { listsAt } from '../lists.ts';
import { defineRule } from '../rule.ts';
import { inOrder } from '../witness.ts';

const DOWN = /\bdown\b/i;
const words = (text: string): number => text.match(/[\p{L}\d][\p{L}\d'’-]*/gu)?.length ?? 0;

export const listTooLong = defineRule({
  id: 'list-too-long',
  number: 17,
  severity: 'ADVICE',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'List too long',
  says: 'A checklist that the procedure reads or feeds has at most as many items, and as many words, as the policy says; and no more items after the gear than the last minutes leave time for.',
  why: 'A landing list of sixteen items had fifteen of them after the gear, in the last minute or so.',
  source: { text: "a pilot's own article on stable approaches by design", seen: true },
  needs: ['library', 'policy'],
  reads: [],
  messages: {
    items:
      'The {list} list has {count} items, the house wants {most} at most: the longer it is, the less of it is read.',
    words: 'The {list} list has {count} words, the house wants {most} at most: it is read when there is no time.',
    gear: 'The {list} list has {count} items after the gear, the house wants {most} at most: they fall into the last minutes.',
  },
  examples: {
    bad: '{steps: [{cue: then, who: PM, verb: read, object: landing checklist}], library: {checklists: [{id: landing, title: Landing, calledBy: PF, readBy: PM, trigger: gear down, method: do-then-verify, complete: complete, items: [{challenge: Gear, response: down, by: PF, steps: []}, {challenge: Flap, response: planned, by: PF, steps: []}, {challenge: Spoilers, response: armed, by: PM, steps: []}, {challenge: Autobrake, response: medium, by: PM, steps: []}, {challenge: Cabin, response: ready, by: PM, steps: []}, {challenge: Lights, response: "on", by: PM, steps: []}, {challenge: Radar, response: "off", by: PM, steps: []}]}]}}',
    good: '[{cue: then, who: PM, verb: read, object: landing checklist}]',
  },
  run({ steps, library, policy }, report) {
    for (const { list, at } of listsAt(steps, library)) {
      const { items, words: wordLimit, afterGear } = policy.lists;
      const tell = (message: 'items' | 'words' | 'gear', count: number, most: number) => {
        if (count <= most) return;
        const witness = inOrder(list.items[0]!.challenge, list.items.at(-1)!.challenge, `${count}, at most ${most}`);
        const cause = `list-too-long ${list.id} ${message}`;
        report({ at, message, data: { list: list.title, count, most }, witness, cause, read: [list.id, count, most] });
      };
      if (list.items.length === 0) continue;
      tell('items', list.items.length, items);
      tell('words', wordsIn(list), wordLimit);
      tell('gear', itemsAfterGear(list), afterGear);
    }
  },
});

const wordsIn = ({ items, complete }: Checklist): number =>
  items.reduce((sum, { challenge, response }) => sum + words(challenge) + words(response), words(complete));

/** None where the gear is not down in this list. */
function itemsAfterGear({ items }: Checklist): number {
  const gear = items.findIndex(({ challenge, response }) => /\bgear\b/i.test(challenge) && DOWN.test(response));
  return gear < 0 ? 0 : items.length - gear - 1;
}
