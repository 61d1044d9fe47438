import { visitGate } from '../../gate/visit.ts';
import { partIn, shownBy } from '../indications.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

const OUTSIDE = new Set(['cabin crew', 'ground crew']);
/** Conditions that are read from a display of the flight deck. */
const READ = new Set(['compare', 'window', 'trend', 'flaps', 'gear', 'mode', 'armed', 'autopilot']);
/** Time and distance can be had anywhere. */
const SEEN =
  /\b(indicat\w*|lights?|displays?|displayed|gauges?|shows?|shown|annunciat\w*|alerts?|warnings?|cautions?|messages?|horn|chime|callouts?|heard|levers?|handles?|switch(es)?)\b/i;

export const invisibleTrigger = defineRule({
  id: 'invisible-trigger',
  number: 8,
  severity: 'STOP',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Invisible trigger',
  says: 'What triggers a step can be seen or heard by the pilot who acts: an event of the aircraft is named by its indication, and the type has that indication. Cabin and ground crew are not triggered by displays of the flight deck. Clearances, places, weather, time and judgements pass.',
  why: 'A procedure must match what the machine shows: nobody acts on what nobody sees.',
  source: { text: 'Degani and Wiener, on the design of flight-deck procedures', seen: false },
  needs: ['sheet'],
  reads: ['cue', 'who'],
  messages: {
    unseen: '"{words}" can not be seen by {who}: the {type} shows it by the {by}, and the cue must say so.',
    'no-indication': '"{words}" is shown by nothing on the {type}: {who} never knows when to act.',
    outside: '{who} does not see the displays of the flight deck: the cue never comes to them.',
  },
  examples: {
    bad: '[{cue: event "flaps start to move", who: PM, verb: call, object: flap, say: flap moving}]',
    good: '[{cue: event "flap indication moves", who: PM, verb: call, object: flap, say: flap moving}]',
  },
  run({ steps, gate, sheet }, report) {
    for (const step of steps) {
      const parsed = gate(step.cue).gate;
      if (parsed === null) continue;
      const at = { step: step.id as string, field: 'cue' };
      let read = false;
      visitGate(parsed, {
        gate: (each) => {
          read ||= READ.has(each.kind);
          if (each.kind !== 'event') return;
          const part = partIn(each.text);
          if (part === null) return;
          const by = shownBy(sheet, part);
          if (by !== null && (SEEN.test(each.text) || each.text.toLowerCase().includes(by.toLowerCase()))) return;
          const data = { words: each.text, who: step.who || 'whoever acts', type: sheet.type, by: by ?? '' };
          const from = Math.max(0, step.cue.indexOf(each.text));
          const witness = wordsOf('cue', step.cue, from, from + each.text.length);
          report({
            at,
            message: by === null ? 'no-indication' : 'unseen',
            data,
            witness,
            read: [sheet.type, by ?? ''],
          });
        },
      });
      if (read && OUTSIDE.has(step.who)) {
        report({ at, message: 'outside', data: { who: step.who }, witness: wordsOf('cue', step.cue) });
      }
    }
  },
});
