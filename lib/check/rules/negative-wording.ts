import { figuresIn } from '../figures.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';
import { wordsIn } from '../words.ts';

/** A limit may forbid: `do not exceed 178 kt`. */
const LIMIT = /\b(exceed|below|above|maximum|minimum|limit)\b/i;

export const negativeWording = defineRule({
  id: 'negative-wording',
  number: 25,
  severity: 'ADVICE',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Negative wording',
  says: 'An action says what is done, not what is left undone; no "do not … unless". Limits and warnings are exempt. The words are the policy\'s list.',
  why: 'A negative takes longer to understand and is misread.',
  source: { text: 'CAA CAP 676', seen: false },
  needs: ['policy'],
  reads: ['verb', 'object', 'value'],
  messages: {
    negative: '"{words}" turns the action round: say what is done, and put the condition in the cue.',
  },
  examples: {
    bad: '[{cue: then, who: PM, verb: select, object: flap lever, value: F18 unless the speed is too high}]',
    good: '[{cue: speed <= 190 kt, who: PM, verb: select, object: flap lever, value: F18}]',
  },
  run({ steps, policy }, report) {
    for (const step of steps) {
      for (const field of ['object', 'value'] as const) {
        const text = step[field];
        const [first] = wordsIn(text, policy.words.negative);
        if (first === undefined) continue;
        const isLimit = LIMIT.test(text) && figuresIn(text).some((figure) => figure.unit !== null);
        if (isLimit && !/\bunless\b/i.test(text)) continue;
        const witness = wordsOf(field, text, first.from, first.to);
        const read = [policy.words.negative.join('|')];
        report({ at: { step: step.id, field }, message: 'negative', data: { words: first.words }, witness, read });
      }
    }
  },
});
