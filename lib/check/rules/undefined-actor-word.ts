import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';
import { wordsIn } from '../words.ts';

const FIELDS = ['object', 'value', 'only', 'checkBy', 'checkSees', 'checkIfNot', 'note'] as const;
/** Defined where they stand: both, each, either, the other; and the roles outside the flight deck. */
const DEFINED = /\b(both|each|either|the other|other|cabin|ground|technical|no|any|one|two)\s+$/i;

export const undefinedActorWord = defineRule({
  id: 'undefined-actor-word',
  number: 28,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Undefined actor',
  says: 'Who acts is a defined role: PF, PM, captain, first officer, each, cabin crew, ground crew. "pilot", "crew" and their like are replaced. The words are the policy\'s list.',
  why: 'A word that means either pilot is taken to mean the other one.',
  source: { text: 'NASA CR 177642 (1994)', seen: false },
  needs: ['policy'],
  reads: [...FIELDS, 'before'],
  messages: {
    vague: '"{words}" is no role here: write PF, PM, captain or first officer.',
  },
  examples: {
    bad: '[{cue: then, who: PM, verb: call, object: height, checkBy: pilot}]',
    good: '[{cue: then, who: PM, verb: call, object: height, checkBy: PF}]',
  },
  run({ steps, policy }, report) {
    const look = (step: string, field: string, text: string): void => {
      for (const { from, to, words } of wordsIn(text, policy.words.vagueActors)) {
        if (DEFINED.test(text.slice(0, from))) continue;
        const read = [policy.words.vagueActors.join('|')];
        report({
          at: { step, field },
          message: 'vague',
          data: { words },
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
