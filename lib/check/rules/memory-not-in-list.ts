import type { Checklist } from '../../library/library.ts';
import type { Step } from '../../procedure/procedure.ts';
import { nameWords } from '../names.ts';
import { defineRule } from '../rule.ts';
import { absent, inOrder } from '../witness.ts';

type Item = Checklist['items'][number];

const itemOf = (list: Checklist, step: Step): number =>
  list.items.findIndex((item) => item.steps.includes(step.label) || item.steps.includes(step.id));

/** The words of the item are those of the step: what is handled, and what is done with it or said of it. */
function sameWords(item: Item, step: Step): boolean {
  const there = new Set(nameWords([step.object, step.value, step.say, step.orderWords].join(' ')));
  return nameWords(`${item.challenge} ${item.response}`).every((word) => there.has(word));
}

export const memoryNotInList = defineRule({
  id: 'memory-not-in-list',
  number: 21,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'submission',
  phases: 'all',
  title: 'Memory items not in the list',
  says: 'Memory items come first in the read-and-do list of their procedure, in the same order and words. The list is the one that links to the steps or has the same name.',
  why: 'Memory items are recalled wrongly under stress; the list is what catches it.',
  source: { text: 'NASA TM-2005-213462, on emergency and abnormal situations', seen: false },
  needs: ['library'],
  reads: ['label', 'object', 'value', 'say', 'orderWords', 'flags'],
  messages: {
    missing: 'The list "{list}" does not restate {called}: what was forgotten from memory is not caught.',
    late: 'The list "{list}" has "{item}" before the memory item {called}: memory items are read first.',
    order: 'The list "{list}" restates {called} before {earlier}, which comes first from memory.',
    words: 'The list "{list}" says "{item}" where {called} says "{step}": the same act in other words.',
  },
  examples: {
    bad: '{title: Engine fire, class: non-normal, library: {checklists: [{id: engine-fire, title: Engine fire, calledBy: PF, readBy: PM, trigger: "", method: read-and-do, complete: "", items: [{challenge: fuel lever, response: "off", by: PM, steps: [XX-02]}]}]}, steps: [{label: XX-01, object: thrust levers, value: idle, flags: [memory]}, {label: XX-02, object: fuel lever, value: "off", flags: [memory]}]}',
    good: '{title: Engine fire, class: non-normal, library: {checklists: [{id: engine-fire, title: Engine fire, calledBy: PF, readBy: PM, trigger: "", method: read-and-do, complete: "", items: [{challenge: thrust levers, response: idle, by: PF, steps: [XX-01]}, {challenge: fuel lever, response: "off", by: PM, steps: [XX-02]}]}]}, steps: [{label: XX-01, object: thrust levers, value: idle, flags: [memory]}, {label: XX-02, object: fuel lever, value: "off", flags: [memory]}]}',
  },
  run({ procedure, steps, library, unasked }, report) {
    const memory = steps.filter((step) => step.flags.includes('memory'));
    if (memory.length === 0) return;
    const title = nameWords(procedure.title).join(' ');
    const lists = library.checklists.filter(
      (list) =>
        list.method === 'read-and-do' &&
        (nameWords(list.title).join(' ') === title || memory.some((step) => itemOf(list, step) >= 0)),
    );
    if (lists.length === 0 && (procedure.class === 'non-normal' || procedure.class === 'memory')) {
      unasked('no read-and-do list of the library links to it or has its name', { step: '', field: 'steps' });
    }
    for (const list of lists) {
      const read = list.items.map((item) => `${item.challenge}: ${item.response}`);
      const first = list.items.findIndex((item) => !memory.some((step) => item.steps.includes(step.label)));
      let before: Step | null = null;
      let last = -1;
      for (const step of memory) {
        const called = step.label || step.object;
        const at = { step: step.id as string, field: 'flags' };
        const place = itemOf(list, step);
        const item = list.items[place];
        if (item === undefined) {
          report({ at, message: 'missing', data: { list: list.title, called }, witness: absent('flags'), read });
          continue;
        }
        const words = `${item.challenge}: ${item.response}`;
        if (place < last && before !== null) {
          const earlier = before.label || before.object;
          const witness = inOrder(called, earlier, `item ${place + 1} of the list is ${called}`);
          report({ at, message: 'order', data: { list: list.title, called, earlier }, witness, read });
        } else if (first >= 0 && first < place) {
          const ahead = list.items[first]!.challenge;
          const witness = inOrder(ahead, called, `item ${first + 1} is "${ahead}", item ${place + 1} is ${called}`);
          report({ at, message: 'late', data: { list: list.title, called, item: ahead }, witness, read });
        }
        if (!sameWords(item, step)) {
          const data = { list: list.title, called, item: words, step: `${step.object}: ${step.value || step.say}` };
          report({ at, message: 'words', data, witness: inOrder(data.step, words, `"${words}" in the list`), read });
        }
        if (place >= last) [before, last] = [step, place];
      }
    }
  },
});
