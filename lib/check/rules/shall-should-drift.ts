import { figuresIn } from '../figures.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';
import { wordsIn } from '../words.ts';

const FIELDS = ['object', 'value', 'only', 'checkSees', 'checkIfNot', 'note'] as const;
const LIMIT =
  /\b(exceed\w*|maximum|minimum|at most|at least|more than|less than|not (be )?(above|below)|limit(ed)?|above|below)\b/i;
/** Permission and possibility are not force: "may be on already". */
const PERMITS = /^(may|can)$/i;

export const shallShouldDrift = defineRule({
  id: 'shall-should-drift',
  number: 31,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Weak words for a limit',
  says: 'A limit is never "should": it says "maximum", "minimum", "at most", "at least". The weak words are the policy\'s list; "may" and "can" count where they are negated.',
  why: 'What only "should" be can not be audited, and is not flown.',
  source: { text: 'EASA ORO.MLR.100', seen: false },
  needs: ['policy'],
  reads: [...FIELDS, 'before'],
  messages: {
    weak: '"{words}" makes a wish of the limit {limit}: write maximum, minimum, at most or at least.',
  },
  examples: {
    bad: '[{cue: then, who: PF, verb: monitor, object: speed, value: should not exceed 245 kt}]',
    good: '[{cue: then, who: PF, verb: monitor, object: speed, value: maximum 245 kt}]',
  },
  run({ steps, policy }, report) {
    const look = (step: string, field: string, text: string): void => {
      for (const { from, to, words } of wordsIn(text, policy.words.weakForce)) {
        const start = Math.max(text.lastIndexOf('. ', from), text.lastIndexOf('; ', from)) + 1;
        const sentence = text.slice(start).split(/[.;](?:\s|$)/)[0]!;
        const figure = figuresIn(sentence).find((each) => each.unit !== null);
        if (figure === undefined || !LIMIT.test(sentence)) continue;
        if (PERMITS.test(words) && !/^\s+not\b/.test(text.slice(to))) continue;
        const limit = sentence.slice(figure.from, figure.to);
        const read = [policy.words.weakForce.join('|')];
        report({
          at: { step, field },
          message: 'weak',
          data: { words, limit },
          witness: wordsOf(field, text, from, to),
          read,
        });
      }
    };
    for (const step of steps) {
      for (const field of FIELDS) look(step.id, field, step[field]);
      for (const [index, notice] of step.before.entries()) look(step.id, `before.${index}`, notice.text);
    }
  },
});
