import type { Step } from '../../procedure/procedure.ts';
import { configured, confirms, type Last, lastBefore } from '../lists.ts';
import { defineRule } from '../rule.ts';
import { absent, inOrder } from '../witness.ts';

const HANDS = new Set(['set', 'select', 'move', 'arm']);
/** What must be right for the runway ahead; the gear is down anyway before a take-off. */
const WANTED: Readonly<Record<Last, readonly string[]>> = {
  'take-off': ['flap', 'slat', 'trim'],
  landing: ['flap', 'slat', 'gear'],
};
const UP = /\b(up|in|F?0|zero|retract\w*)\b/i;

export const killerItemTooFarBack = defineRule({
  id: 'killer-item-too-far-back',
  number: 16,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: ['preflight', 'start', 'taxi', 'approach', 'landing'],
  title: 'Killer item too far back',
  says: 'Configuration that is critical for the flight path is confirmed in the last list before the runway or the landing, and in its first half.',
  why: 'After take-offs without flap the call was: lists are long, and what kills stands behind what does not.',
  source: { text: 'CIAIAC A-032/2008; ICAO conference note of 2010', seen: true },
  needs: ['library'],
  reads: ['flags', 'verb', 'object', 'value'],
  messages: {
    absent: 'The {list} list does not ask for the {thing}: the last look before the {what} passes it over.',
    back: 'The {list} list asks for the {thing} at item {item} of {of}: who is interrupted has not come to it.',
  },
  examples: {
    bad: '{phases: [taxi], steps: [{cue: then, who: PM, verb: select, object: flap lever, value: F12, flags: [critical]}], library: {checklists: [{id: line-up, title: Line-up, calledBy: PF, readBy: PM, trigger: line-up, method: do-then-verify, complete: complete, items: [{challenge: Lights, response: "on", by: PM, steps: []}, {challenge: Radar, response: "on", by: PM, steps: []}, {challenge: Cabin, response: ready, by: PM, steps: []}, {challenge: Flap, response: twelve, by: PF, steps: []}]}]}}',
    good: '{phases: [taxi], steps: [{cue: then, who: PM, verb: select, object: flap lever, value: F12, flags: [critical]}]}',
  },
  run({ steps, library, procedure, unasked }, report) {
    const landing = procedure.phases.some((phase) => phase === 'approach' || phase === 'landing');
    const what: Last = landing ? 'landing' : 'take-off';
    const killers = firstOfEach(steps.filter(isKiller), WANTED[what]);
    if (killers.size === 0) return;
    const list = lastBefore(what, library);
    if (list === null) {
      return unasked(`the library has no list that is read last before the ${what}`, { step: '', field: 'title' });
    }
    for (const [thing, step] of killers) {
      const at = { step: step.id as string, field: 'object' };
      const index = list.items.findIndex((item) => confirms(item, thing));
      const data = { list: list.title, thing, what, item: index + 1, of: list.items.length };
      const cause = `killer-item ${list.id} ${thing}`;
      const read = [list.id, index, list.items.length];
      if (index < 0) report({ at, message: 'absent', data, witness: absent(`${list.title}: ${thing}`), cause, read });
      else if (index >= Math.ceil(list.items.length / 2)) {
        const first = list.items[0]!.challenge;
        const witness = inOrder(first, list.items[index]!.challenge, `item ${index + 1} of ${list.items.length}`);
        report({ at, message: 'back', data, witness, cause, read });
      }
    }
  },
});

const isKiller = (step: Step): boolean =>
  step.flags.includes('critical') && HANDS.has(step.verb) && !UP.test(step.value);

function firstOfEach(steps: readonly Step[], wanted: readonly string[]): ReadonlyMap<string, Step> {
  const found = new Map<string, Step>();
  for (const step of steps) {
    const thing = configured(step.object);
    if (thing !== null && wanted.includes(thing) && !found.has(thing)) found.set(thing, step);
  }
  return found;
}
