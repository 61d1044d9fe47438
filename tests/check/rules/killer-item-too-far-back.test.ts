import { killerItemTooFarBack } from '../../../lib/check/rules/killer-item-too-far-back.ts';
import type { Checklist } from '../../../lib/library/library.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { seedLibrary } from '../../kit/seed.ts';

const flap = {
  cue: 'then',
  who: 'PM',
  verb: 'select',
  object: 'flap lever',
  value: 'F12',
  flags: ['critical'],
} as const;
const gear = { ...flap, verb: 'move', object: 'gear lever', value: 'DOWN' } as const;
const list = (title: string, ...challenges: string[]): Checklist => ({
  id: title.toLowerCase(),
  title,
  calledBy: 'PF',
  readBy: 'PM',
  trigger: 'then',
  method: 'do-then-verify',
  items: challenges.map((challenge) => ({ challenge, response: 'as seen', by: 'PF', steps: [] })),
  complete: 'complete',
});
const lists = (...checklists: Checklist[]) => ({ library: { ...seedLibrary(), checklists } });

testRule(killerItemTooFarBack, {
  valid: [
    { why: 'the lists of the house', procedure: { phases: ['taxi'], steps: [flap] } },
    { why: 'flap and gear before the landing', procedure: { phases: ['approach'], steps: [flap, gear] } },
    {
      why: 'first item of the line-up list',
      procedure: { phases: ['taxi'], steps: [flap] },
      facts: lists(list('Taxi', 'Brakes', 'Radios'), list('Line-up', 'Flap', 'Lights', 'Radar')),
    },
    { why: 'not critical', procedure: { phases: ['taxi'], steps: [{ ...flap, flags: [] }] }, facts: lists() },
    {
      why: 'gear before the take-off',
      procedure: { phases: ['taxi'], steps: [gear] },
      facts: lists(list('Line-up', 'Lights')),
    },
  ],
  invalid: [
    {
      why: 'only in the taxi list',
      procedure: { phases: ['taxi'], steps: [flap] },
      facts: lists(list('Taxi', 'Flap', 'Radios'), list('Line-up', 'Lights', 'Radar')),
      findings: [{ at: 's1 object', message: 'absent', says: 'Line-up', witness: { kind: 'absent' } }],
    },
    {
      why: 'item 3 of 4',
      procedure: { phases: ['taxi'], steps: [flap] },
      facts: lists(list('Before take-off', 'Lights', 'Radar', 'Flaps', 'Cabin')),
      findings: [
        { at: 's1 object', message: 'back', says: 'item 3 of 4', witness: { first: 'Lights', second: 'Flaps' } },
      ],
    },
    {
      why: 'gear last before the landing',
      procedure: { phases: ['approach', 'landing'], steps: [flap, gear] },
      facts: lists(list('Landing', 'Flap', 'Lights', 'Cabin', 'Gear')),
      findings: [{ at: 's2 object', message: 'back', says: 'gear', witness: { second: 'Gear' } }],
    },
  ],
  missing: [
    {
      procedure: { phases: ['taxi'], steps: [flap] },
      facts: lists(list('Taxi', 'Flap')),
      because: 'no list that is read last before the take-off',
    },
  ],
});
