import { listCalls } from '../list-calls.ts';
import { configurations, itemText, type Judged, judged, killersBefore } from '../list-items.ts';
import { defineRule } from '../rule.ts';
import { absent, inOrder } from '../witness.ts';

const SAYS: Readonly<Record<Judged['fault'], string>> = {
  'no-step': 'nothing before it does what it asks for',
  gone: 'its steps exist no more',
  after: 'its step comes later',
  value: 'another value',
  words: 'other words',
};

export const sopAndListDisagree = defineRule({
  id: 'sop-and-list-disagree',
  number: 100,
  severity: 'STOP',
  kind: 'T',
  stage: 'submission',
  phases: 'all',
  title: 'Procedure and list disagree',
  says: 'Each item of a checklist has a step that does it before the list is called, here, in another procedure or by the state in which the procedure begins; each critical step that moves flap, gear or another lever of the configuration has an item; values are the same. Other words for the same value are advice. An item that allows two states is a look, not a deed.',
  why: 'A list that asks for what nobody does is answered by habit; a step without an item is caught by nobody.',
  source: { text: 'ATSB AO-2025-010; NASA CR 177642 (1994)', seen: true },
  needs: ['sheet', 'library', 'others'],
  reads: ['object', 'value', 'verb', 'flags', 'label'],
  messages: {
    'no-step': 'The list "{list}" asks for "{item}", but no step before it does that.',
    gone: 'The list "{list}" asks for "{item}" and links to {steps}, which exist no more.',
    after: 'The list "{list}" asks for "{item}", but {steps} comes only after it was read.',
    value: 'The list "{list}" answers "{item}", but {steps} leaves it at {value}.',
    words: 'The list "{list}" says "{item}" for what {steps} calls "{value}".',
    'no-item':
      '{steps} moves the {value}, but the list "{list}" has no item for it: nobody catches it when it is missed.',
  },
  examples: {
    bad: '{library: {checklists: [{id: climb, title: Climb, calledBy: PF, readBy: PM, trigger: "", method: do-then-verify, complete: "", items: [{challenge: Pressurisation, response: checked, by: PM, steps: []}]}]}, steps: [{cue: then, who: PM, verb: read, object: climb checklist}]}',
    good: '{library: {checklists: [{id: climb, title: Climb, calledBy: PF, readBy: PM, trigger: "", method: do-then-verify, complete: "", items: [{challenge: Pressurisation, response: checked, by: PM, steps: []}]}]}, steps: [{cue: then, who: PM, verb: check, object: pressurisation, value: climbing}, {cue: then, who: PM, verb: read, object: climb checklist}]}',
  },
  run({ procedure, steps, sheet, library, others }, report) {
    const levers = configurations(sheet);
    for (const call of listCalls(procedure, library)) {
      const { step, list } = call;
      const at = { step: step.id as string, field: 'object' };
      for (const item of list.items) {
        const found = judged(item, call, procedure, steps, others);
        if (found === null) continue;
        const text = itemText(item);
        const data = { list: list.title, item: text, steps: found.steps, value: found.value };
        const witness = inOrder(text, found.steps || 'no step', `"${text}": ${SAYS[found.fault]}`);
        const read = [text, found.steps, found.value];
        const severity = found.fault === 'words' ? { severity: 'ADVICE' as const } : {};
        report({ at, message: found.fault, data, witness, read, ...severity });
      }
      for (const { killer, lever } of killersBefore(call, levers, procedure.steps)) {
        if (list.items.some((item) => item.steps.includes(killer.label) || lever.test(item.challenge))) continue;
        const data = { list: list.title, steps: killer.label || killer.object, value: killer.object };
        report({
          at: { step: killer.id, field: 'flags' },
          message: 'no-item',
          data,
          witness: absent('item'),
          read: [list.title],
        });
      }
    }
  },
});
