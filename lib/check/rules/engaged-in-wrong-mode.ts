import type { StepState } from '../../procedure/walk.ts';
import { panelHand } from '../panel.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

const AUTOPILOT = /\bautopilot\b/i;

export const engagedInWrongMode = defineRule({
  id: 'engaged-in-wrong-mode',
  number: 91,
  severity: 'STOP',
  kind: 'T/X',
  stage: 'writing',
  phases: 'all',
  title: 'Engaged in the wrong mode',
  says: 'Before the autopilot is engaged the active modes of all three axes are read, somebody orders it and somebody else engages it by the panel rule, and the text says who touches the panel from then on.',
  why: 'An autopilot flies the modes that are active, not the ones that were meant: after one take-off it dived toward a selected altitude of 0 ft.',
  source: { text: 'AAIB Bulletin 11/2018', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'only', 'orderBy', 'orderWords', 'who', 'verb', 'object', 'note', 'why'],
  messages: {
    unordered: "Nobody orders the autopilot: it is engaged on one pilot's own idea of the modes.",
    unread: 'The {axis} mode is not read before the autopilot is engaged: it will fly whatever stands there.',
    hand: "{who} engages it, but the panel is {hand}'s here.",
    panel: 'Who works the panel from here on is not said.',
  },
  examples: {
    bad: '[{cue: height >= 600 ft AAL, who: PM, verb: engage, object: autopilot switch, value: on}]',
    good: '{entry: {autopilot: off}, steps: [{cue: height >= 600 ft AAL, orderBy: PF, orderWords: "govern, route, level: autopilot on", who: PM, verb: engage, object: autopilot switch, value: on, note: PF works the panel from here}]}',
  },
  run({ states, sheet, policy }, report) {
    const spoken = (words: readonly string[], text: string): boolean =>
      words.some(
        (word) => text.includes(word) || text.toLowerCase().includes((sheet.modes.spoken[word] ?? word).toLowerCase()),
      );
    for (const [index, at] of states.entries()) {
      const { step } = at;
      if (step.verb !== 'engage' || !AUTOPILOT.test(step.object)) continue;
      const place = (field: string) => ({ step: step.id as string, field });
      const witness = wordsOf('object', step.object);
      if (step.orderBy === '') report({ at: place('orderBy'), message: 'unordered', witness });
      const before: StepState | undefined = states[index - 1]?.branch === at.branch ? states[index - 1] : undefined;
      const read = before !== undefined && before.step.verb === 'read' ? `${before.step.say} ${before.step.reply}` : '';
      for (const axis of ['thrust', 'lateral', 'vertical'] as const) {
        if (spoken(sheet.modes[axis], `${step.orderWords} ${read}`)) continue;
        report({ at: place('orderWords'), message: 'unread', data: { axis }, witness });
      }
      const hand = panelHand(at, policy);
      if ((step.who === 'PF' || step.who === 'PM') && hand !== null && hand !== step.who) {
        report({ at: place('who'), message: 'hand', data: { who: step.who, hand }, witness, read: [hand] });
      }
      const told = `${step.note} ${step.why} ${step.only} ${step.before.map(({ text }) => text).join(' ')}`;
      if (!/\bpanel\b/i.test(told)) report({ at: place('note'), message: 'panel', witness });
    }
  },
});
