import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';
import { wordsIn } from '../words.ts';

const FIELDS = ['object', 'value', 'checkSees', 'checkWithin', 'checkIfNot'] as const;
/** Names of things and links to what says how much: `normal take-off`, `as required by the list`. */
const NAME = /^[\s-]+(take-?off|landing|checklists?|procedures?|approach|operations?|law|mode|climb|brakes?|to)\b/i;
const LINK = /^\s+(by|in|from|under)\s+\S/i;

export const elasticWords = defineRule({
  id: 'elastic-words',
  number: 26,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Elastic words',
  says: 'An action or a limit is measured: no "as required", "about", "normal" without a rule that says how much ("as required by …"). Titles and names are not read. The words are the policy\'s list.',
  why: 'Where the operator sets no figure, each crew sets its own: no minimum speed for icing was set out.',
  source: { text: 'NTSB AAR-98/04; NTSB AAR-96/07', seen: true },
  needs: ['policy'],
  reads: FIELDS,
  messages: {
    elastic: '"{words}" can be stretched: say how much, how far or by when, or name the rule that does.',
  },
  examples: {
    bad: '[{cue: then, who: PF, verb: set, object: speed selector, value: slow as required}]',
    good: '[{cue: then, who: PF, verb: set, object: speed selector, value: 180 kt}]',
  },
  run({ steps, policy }, report) {
    for (const step of steps) {
      for (const field of FIELDS) {
        const text = step[field];
        for (const { from, to, words } of wordsIn(text, policy.words.elastic)) {
          const behind = text.slice(to);
          if (/^normal$/i.test(words) && NAME.test(behind)) continue;
          if (/^as /i.test(words) && LINK.test(behind)) continue;
          // "about" a subject is no measure: it stretches a figure or stands alone.
          if (/^(about|near)$/i.test(words) && /^\s+(the|a|an|his|her|its|own)\b/i.test(behind)) continue;
          const read = [policy.words.elastic.join('|')];
          report({
            at: { step: step.id, field },
            message: 'elastic',
            data: { words },
            witness: wordsOf(field, text, from, to),
            read,
          });
        }
      }
    }
  },
});
