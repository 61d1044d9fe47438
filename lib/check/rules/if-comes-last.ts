import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';
import { wordsIn } from '../words.ts';

const CONDITIONS = ['if', 'unless', 'in case', 'provided', 'when necessary', 'as long as'];
/** A decision is about its own condition. */
const EXEMPT = new Set(['decide', 'brief', 'check', 'read', 'call', 'respond', 'request', 'monitor', '']);

export const ifComesLast = defineRule({
  id: 'if-comes-last',
  number: 19,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'The condition comes last',
  says: 'A condition stands before the action: in the cue, in "only", or at the head of the sentence.',
  why: 'The action is done before the rest of the sentence is read.',
  source: { text: 'CAA CAP 676', seen: false },
  needs: [],
  reads: ['verb', 'object', 'value'],
  messages: {
    last: '"{words}" stands behind the action: by then it is done. Put it in the cue.',
  },
  examples: {
    bad: '[{cue: then, who: PM, verb: move, object: fuel lever, value: OFF if fire persists}]',
    good: '[{cue: judged "fire persists", who: PM, verb: move, object: fuel lever, value: "OFF"}]',
  },
  run({ steps }, report) {
    for (const step of steps) {
      if (EXEMPT.has(step.verb)) continue;
      for (const field of ['object', 'value'] as const) {
        const text = step[field];
        for (const { from } of wordsIn(text, CONDITIONS)) {
          const before = text.slice(0, from).trimEnd();
          // At the head of a clause the condition comes first.
          if (/[.;:,(]$/.test(before) || (before === '' && field === 'object')) continue;
          const words = text.slice(from).split(/[.;,]/)[0]!.trim();
          const at = { step: step.id as string, field };
          report({ at, message: 'last', data: { words }, witness: wordsOf(field, text, from, from + words.length) });
        }
      }
    }
  },
});
