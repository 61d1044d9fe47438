import { withoutSpoken } from '../figures.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';
import { IMPERATIVES } from '../words.ts';

const SECOND = new RegExp(`(?:\\band|\\bthen|,|;)\\s+(?:then\\s+)?(${IMPERATIVES.join('|')})\\s+(?:the\\s+)?\\w`, 'i');

export const twoActionsOneStep = defineRule({
  id: 'two-actions-one-step',
  number: 23,
  severity: 'ADVICE',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Two actions in one step',
  says: 'A step holds one action: one verb.',
  why: 'After an interruption the second half of a step is taken for done.',
  source: { text: 'CAA CAP 676', seen: false },
  needs: [],
  reads: ['verb', 'object', 'value'],
  messages: {
    second: '"{words}" is a second action: after an interruption it is taken for done. Give it a step of its own.',
  },
  examples: {
    bad: '[{cue: then, who: PF, verb: set, object: altitude and arm approach}]',
    good: '[{cue: then, who: PF, verb: set, object: altitude selector}, {cue: then, who: PF, verb: press, object: APPROACH}]',
  },
  run({ steps }, report) {
    for (const step of steps) {
      for (const field of ['object', 'value'] as const) {
        const text = step[field];
        const match = SECOND.exec(withoutSpoken(text));
        if (match === null) continue;
        const from = text.indexOf(match[1]!, match.index);
        const words = text.slice(from).split(/[.;,]/)[0]!.trim();
        const witness = wordsOf(field, text, from, from + words.length);
        report({ at: { step: step.id, field }, message: 'second', data: { words }, witness });
      }
    }
  },
});
