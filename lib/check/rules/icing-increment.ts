import { scheduleEntry } from '../../aircraft/schedule.ts';
import { defineRule } from '../rule.ts';
import { namedSpeeds } from '../speed-text.ts';
import { wordsOf } from '../witness.ts';

const SWITCH = /\b(ice protection|anti-?ice|icing (increment|switch|setting)|increment switch)\b/i;
/** The engine's own protection leaves the wing as it is. */
const ENGINE = /\bengine\b/i;
const ON = /\bon\b/i;
const OFF = /\boff\b/i;
/** House convention: the figure that is entered follows the switch. */
const FOLLOWS = /\bas the switch|\bincrement (as|follows)|\bicing increment (on|off|included)\b/i;
const HANDS = new Set(['set', 'select', 'press', 'move', 'engage', 'disengage', 'arm']);
const FIELDS = ['cue', 'value', 'checkSees'] as const;

export const icingIncrement = defineRule({
  id: 'icing-increment',
  number: 47,
  severity: 'STOP',
  kind: 'T/N',
  stage: 'writing',
  phases: 'all',
  title: 'Icing increment',
  says: 'Once a step switches ice protection or the increment on, every reference speed for which the sheet has an increment is written with it, until a step switches it off; before and after that, without it.',
  why: 'Reference speeds for no ice were used with the icing switch set: 13 kt below the speed of the stick shaker.',
  source: { text: 'NTSB AAR-10/01, A-10-21', seen: true },
  needs: ['sheet'],
  reads: ['cue', 'verb', 'object', 'value', 'checkSees'],
  messages: {
    without: '"{speed}" stands without the icing increment although {label} switched it on: {by} kt too slow.',
    with: '"{speed}" stands with the icing increment although no step has it on: {by} kt faster than the flap was asked for.',
  },
  examples: {
    bad: '{phases: [approach], entry: {flaps: [F35]}, steps: [{cue: judged "icing", who: PM, verb: set, object: ice protection, value: "on"}, {cue: then, who: PF, verb: set, object: speed selector, value: VREF F35 + 5 kt}]}',
    good: '{phases: [approach], entry: {flaps: [F35]}, steps: [{cue: judged "icing", who: PM, verb: set, object: ice protection, value: "on"}, {cue: then, who: PF, verb: set, object: speed selector, value: VREF F35 icing + 5 kt}]}',
  },
  run({ states, sheet, procedure }, report) {
    const increment = (name: string, detent: string | null): number => {
      const detents = detent === null ? sheet.detents.map((each) => each.name) : [detent];
      const scheduled = name === 'VAPP' ? 'VREF' : name;
      return Math.max(0, ...detents.map((each) => scheduleEntry(sheet, scheduled, each, false)?.icing?.value ?? 0));
    };
    const started = ON.test(SWITCH.exec(procedure.entry.also) === null ? '' : procedure.entry.also);
    const follows = FOLLOWS.test(procedure.entry.also);
    const on = new Map<string, string>();
    if (started && !follows) on.set('', 'the entry state');
    for (const { step, branch } of states) {
      const line = branch?.id ?? '';
      const here = on.get(line) ?? on.get('');
      const own = /\bicing\b/i.test(step.only) && !OFF.test(step.only);
      for (const field of FIELDS) {
        const text = step[field];
        if (FOLLOWS.test(text)) continue;
        for (const { name, detent, icing, from, to } of namedSpeeds(text)) {
          const by = increment(name, detent);
          const expected = here !== undefined || own;
          if (by === 0 || icing === expected || (icing && /\bor\b/.test(text))) continue;
          // Where nothing switches, a speed that names the increment says for itself which setting it is for.
          if (icing && follows) continue;
          const at = { step: step.id as string, field };
          const speed = text.slice(from, to);
          const value = expected ? `${text.slice(0, to)} icing${text.slice(to)}` : '';
          report({
            at,
            message: expected ? 'without' : 'with',
            data: { speed, by, ...(expected && { label: here ?? 'its condition' }) },
            witness: wordsOf(field, text, from, to),
            cause: `icing-increment ${expected ? (here ?? step.id) : 'none'}`,
            ...(expected && { fix: { says: 'add icing', at, value } }),
            read: [by],
          });
        }
      }
      if (!HANDS.has(step.verb) || !SWITCH.test(step.object) || ENGINE.test(step.object)) continue;
      if (OFF.test(step.value) || step.verb === 'disengage') on.delete(line);
      else if (ON.test(step.value) || step.verb === 'engage') on.set(line, step.label || step.id);
    }
  },
});
