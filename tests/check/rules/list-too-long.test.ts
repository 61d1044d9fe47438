import { listTooLong } from '../../../lib/check/rules/list-too-long.ts';
import type { Checklist } from '../../../lib/library/library.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { seedLibrary } from '../../kit/seed.ts';
import { housePolicy } from '../../kit/world.ts';

const reads = { cue: 'then', who: 'PM', verb: 'read', object: 'landing checklist' } as const;
const more = (count: number, response = 'on'): Checklist['items'] =>
  Array.from({ length: count }, (_, index) => ({ challenge: `Light ${index + 1}`, response, by: 'PM', steps: [] }));
const gear = { challenge: 'Gear', response: 'down, three lights', by: 'PF', steps: ['IA-09'] } as const;
const withList = (items: Checklist['items']) => {
  const library = seedLibrary();
  const landing = library.checklists.find((list) => list.id === 'landing')!;
  return { library: { ...library, checklists: [{ ...landing, items }] } };
};

testRule(listTooLong, {
  valid: [
    { why: 'the landing list of the house', procedure: { steps: [reads] } },
    { why: 'five after the gear', procedure: { steps: [reads] }, facts: withList([gear, ...more(5)]) },
    { why: 'a list that this procedure neither reads nor feeds', procedure: {}, facts: withList([gear, ...more(30)]) },
    {
      why: 'gear up is no landing',
      procedure: { steps: [reads] },
      facts: withList([{ ...gear, response: 'up' }, ...more(8)]),
    },
  ],
  invalid: [
    {
      why: 'twelve after the gear, thirteen in all',
      procedure: { steps: [reads] },
      facts: withList([gear, ...more(12)]),
      findings: [
        { at: 's1 object', message: 'gear', says: '12 items after', witness: { says: '12, at most 5' } },
        { at: 's1 object', message: 'items', says: '13 items', witness: { first: 'Gear' } },
      ],
    },
    {
      why: 'too many words',
      procedure: { steps: [reads] },
      facts: withList(more(9, 'as it is shown on both displays, and compared with the card of the day')),
      findings: [{ at: 's1 object', message: 'words', witness: { kind: 'order' } }],
    },
    {
      why: 'a shorter list in a stricter house, found by a step that feeds it',
      procedure: {
        steps: [{ label: 'IA-09', cue: 'then', who: 'PM', verb: 'move', object: 'gear lever', value: 'DOWN' }],
      },
      facts: {
        ...withList([gear, ...more(3)]),
        policy: { ...housePolicy, lists: { ...housePolicy.lists, afterGear: 2 } },
      },
      findings: [{ at: 'IA-09 object', message: 'gear', says: '3 items', witness: { kind: 'order' } }],
    },
  ],
});
