import type { Step } from '../../procedure/procedure.ts';
import type { AircraftState } from '../../procedure/state.ts';
import { defineRule } from '../rule.ts';
import { inOrder, wordsOf } from '../witness.ts';

const BOTH = /\b(both pilots|PF and PM|PM and PF|PF or PM|PM or PF|PF ?\/ ?PM|PM ?\/ ?PF|either pilot)\b/;
const LOOKS = new Set(['check', 'read', 'call', 'respond', 'brief', 'monitor', 'request', 'decide', 'wait-for']);
const OWN = /\b(own|each|his|her|their)\b/i;

const acts = (step: Step): boolean => step.verb !== '' && !LOOKS.has(step.verb);
const flown = (a: AircraftState, b: AircraftState): boolean =>
  a.autopilot === b.autopilot || a.autopilot === 'either' || b.autopilot === 'either';

export const twoOwners = defineRule({
  id: 'two-owners',
  number: 2,
  severity: 'STOP',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Two owners',
  says: 'No action names both pilots for one shared control, and none gives it to PF in one place and to PM in another at the same trigger and autopilot state. "each", on the own side, is allowed.',
  why: 'With two owners, each pilot takes it that the other has done it.',
  source: { text: 'FAA AC 120-71B', seen: false },
  needs: ['sheet'],
  reads: ['cue', 'only', 'who', 'verb', 'object', 'value'],
  messages: {
    each: '"each" has two hands on one {object}: name the pilot who does it, and let the other check.',
    both: 'Both pilots are named for one action: each will take it that the other does it.',
    split: '{object} is given to {other} in {step} and to {who} here, at the same moment: name one.',
  },
  examples: {
    bad: '[{cue: event "missed approach cleared", who: each, verb: set, object: altitude selector, value: missed-approach altitude}]',
    good: '[{cue: altitude >= transition altitude, who: each, verb: set, object: own altimeter setting, value: standard}]',
  },
  run({ states, sheet }, report) {
    const shared = sheet.panel.filter((object) => object.shared).map((object) => object.name.toLowerCase());
    const done = new Map<string, { step: Step; before: AircraftState }[]>();
    for (const { step, before, branch, gate } of states) {
      if (!acts(step)) continue;
      const object = step.object.toLowerCase();
      const one = shared.some((name) => object.includes(name)) && !OWN.test(object);
      if (step.who === 'each' && one) {
        const witness = wordsOf('who', step.who);
        report({ at: { step: step.id, field: 'who' }, message: 'each', data: { object: step.object }, witness });
      }
      for (const field of ['object', 'value'] as const) {
        const words = BOTH.exec(step[field]);
        if (words === null || OWN.test(step[field])) continue;
        const witness = wordsOf(field, step[field], words.index, words.index + words[0].length);
        report({ at: { step: step.id, field }, message: 'both', witness });
      }
      // `then` is another moment in every step; without a cue nothing is known of the moment.
      if (gate.gate === null || gate.gate.kind === 'then' || (step.who !== 'PF' && step.who !== 'PM')) continue;
      const moment = [branch?.id ?? '', step.cue.trim(), step.only.trim(), object].join('\u0000');
      const earlier = done.get(moment) ?? [];
      const other = earlier.find((each) => each.step.who !== step.who && flown(each.before, before));
      done.set(moment, [...earlier, { step, before }]);
      if (other === undefined) continue;
      const name = other.step.label || 'an earlier step';
      report({
        at: { step: step.id, field: 'who' },
        message: 'split',
        data: { object: step.object, other: other.step.who, step: name, who: step.who },
        witness: inOrder(other.step.id, step.id, `${other.step.who} in ${name}, then ${step.who}, on the same cue`),
        read: [other.step.who, other.step.cue],
      });
    }
  },
});
