import { sopAndListDisagree } from '../../../lib/check/rules/sop-and-list-disagree.ts';
import type { StepParts } from '../../../lib/procedure/build.ts';
import { item, withLists } from '../../kit/lists.ts';
import { testRule, told } from '../../kit/rule-tester.ts';

const gear = (more: StepParts = {}): StepParts => ({
  label: 'XX-01',
  cue: 'then',
  who: 'PM',
  verb: 'move',
  object: 'gear lever',
  value: 'DOWN',
  flags: ['critical'],
  ...more,
});
const flap = (value: string, more: StepParts = {}): StepParts => ({
  label: 'XX-02',
  cue: 'then',
  who: 'PM',
  verb: 'select',
  object: 'flap lever',
  value,
  flags: ['critical'],
  ...more,
});
const list: StepParts = { label: 'XX-09', cue: 'then', who: 'PM', verb: 'read', object: 'landing checklist' };
const items = (...all: readonly ReturnType<typeof item>[]) => withLists({ title: 'Landing', items: all });
const at = 'XX-09 object';

testRule(sopAndListDisagree, {
  valid: [
    {
      procedure: { steps: [gear(), flap('F35'), list] },
      facts: items(item('Gear', 'down, three lights', 'XX-01'), item('Flap', 'planned …, indicating …', 'XX-02')),
    },
    {
      why: 'done in another procedure, or before this one begins',
      procedure: { entry: { also: 'Ground spoilers armed.' }, steps: [list] },
      facts: {
        ...items(item('Altimeters', 'set', 'DE-04'), item('Ground spoilers', 'armed')),
        others: told([{ steps: [{ label: 'DE-04', object: 'altimeters' }] }]),
      },
    },
    {
      why: 'a look that allows both',
      procedure: { steps: [list, { label: 'XX-10', object: 'altimeter setting' }] },
      facts: items(item('Altimeters', 'standard; below transition: local', 'XX-10')),
    },
    { why: 'a lever that is not critical', procedure: { steps: [gear({ flags: [] }), list] }, facts: items() },
    {
      why: 'no link, but the same words',
      procedure: { steps: [gear(), list] },
      facts: items(item('Landing gear', 'down')),
    },
  ],
  invalid: [
    {
      why: 'nobody does it',
      procedure: { steps: [list] },
      facts: items(item('Pressurisation', 'checked')),
      findings: [{ at, message: 'no-step', says: 'Pressurisation', witness: { kind: 'order' } }],
    },
    {
      why: 'a step that is gone, and one that comes later',
      procedure: { steps: [list, gear()] },
      facts: items(item('Gear', 'down', 'XX-01'), item('Speed', 'VAPP', 'XX-77')),
      findings: [
        { at, message: 'after', says: 'XX-01', witness: { kind: 'order' } },
        { at, message: 'gone', says: 'XX-77', witness: { kind: 'order' } },
      ],
    },
    {
      why: 'another position, another detent',
      procedure: { steps: [gear({ value: 'UP' }), flap('F35'), list] },
      facts: items(item('Gear', 'down', 'XX-01'), item('Flap', 'twenty-six, indicating twenty-six', 'XX-02')),
      findings: [
        { at, message: 'value', says: 'F35', witness: { kind: 'order' } },
        { at, message: 'value', says: 'UP', witness: { first: 'Gear: down' } },
      ],
    },
    {
      why: 'a killer without an item',
      procedure: { steps: [gear(), flap('F26'), flap('F35', { label: 'XX-03' }), list] },
      facts: items(item('Gear', 'down', 'XX-01')),
      findings: [{ at: 'XX-03 flags', message: 'no-item', says: 'flap lever', witness: { kind: 'absent' } }],
    },
    {
      why: 'other words are advice',
      procedure: { steps: [{ label: 'XX-05', verb: 'set', object: 'seat-belt signs', value: 'on' }, list] },
      facts: items(item('Cabin notice', 'on', 'XX-05')),
      findings: [{ at, message: 'words', says: 'seat-belt signs', witness: { kind: 'order' } }],
    },
  ],
});
