import type { Step } from '../../procedure/procedure.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

/** What is configured, and is therefore answered with what is seen. */
const CONFIGURATION =
  /\b(flaps?|slats?|gear|speedbrakes?|spoilers?|trim|altimeters?|autobrakes?|doors?|pressuri[sz]ation)\b/i;
const bare = (words: string): string =>
  words
    .toLowerCase()
    .replace(/[^\p{L} ]/gu, '')
    .trim();

export const emptyReply = defineRule({
  id: 'empty-reply',
  number: 6,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Empty reply',
  says: 'For configuration (flaps, gear, altimeters, trim …) the answer states the value or position that is seen, not "checked", "set" or "completed". The words are the policy\'s list.',
  why: 'Answers become a ritual: flap was answered "set" and was not set.',
  source: { text: 'CIAIAC A-032/2008; Flight Safety Foundation, Avoiding traps', seen: true },
  needs: ['policy'],
  reads: ['verb', 'object', 'say', 'reply'],
  messages: {
    empty: '{object} is answered "{words}": that can be said without looking. Say the value or position seen.',
  },
  examples: {
    bad: '[{cue: heard "flaps", who: PM, verb: respond, object: flaps, say: Set}]',
    good: '[{cue: heard "flaps", who: PM, verb: respond, object: flaps, say: "twelve, indicating twelve"}]',
  },
  run({ steps, policy }, report) {
    const empty = new Set(policy.words.emptyReplies.map(bare));
    const isEmpty = (words: string): boolean => {
      const parts = words.split(/[,;…]/).map(bare).filter(Boolean);
      return parts.length > 0 && parts.every((part) => empty.has(part));
    };
    for (const step of steps) {
      if (!CONFIGURATION.test(step.object)) continue;
      for (const field of ['say', 'reply'] as const satisfies readonly (keyof Step)[]) {
        if (!isEmpty(step[field])) continue;
        // A reply to a call that itself says the value only confirms that it was heard.
        if (field === 'reply' && step.say !== '' && !isEmpty(step.say)) continue;
        const witness = wordsOf(field, step[field]);
        const data = { object: step.object, words: step[field] };
        report({ at: { step: step.id, field }, message: 'empty', data, witness, read: policy.words.emptyReplies });
      }
    }
  },
});
