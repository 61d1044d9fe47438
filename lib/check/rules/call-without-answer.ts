import type { Step } from '../../procedure/procedure.ts';
import { defineRule } from '../rule.ts';
import { absent, wordsOf } from '../witness.ts';

const CALLS = new Set(['call', 'read', 'check', 'brief', 'decide', 'request']);
const OUTSIDE = /^\(/;
const GATE = /\b(stable|stabilised|approach) gate\b/i;
const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

export const callWithoutAnswer = defineRule({
  id: 'call-without-answer',
  number: 5,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Call without answer',
  says: 'Every challenge or callout that needs a reply has one, by the other pilot, with its words defined. PM judges a gate aloud. "go around" from either pilot is obeyed, never debated. An order is closed by the words of the pilot who carries it out; calls to the radio or the cabin begin with "(".',
  why: 'Silence after a call hides a pilot who is not there, or does not agree.',
  source: { text: 'FAA AC 120-71B', seen: false },
  needs: [],
  reads: ['orderBy', 'orderWords', 'who', 'verb', 'object', 'value', 'sayBy', 'say', 'replyBy', 'reply', 'replyAct'],
  messages: {
    'no-reply': 'Nobody answers "{words}": silence would pass for agreement.',
    'answers-himself': '{who} answers the own call "{words}": the other pilot has not been heard.',
    'no-words': '{who} is to reply, but neither words nor an act are given.',
    'nobody-replies': 'The reply "{words}" belongs to nobody.',
    'order-unanswered':
      'The order "{words}" is closed by no word: the pilot who gave it can not know that it was heard.',
    'gate-in-silence': 'The gate is judged without a word of PM: nobody hears that it was missed.',
    debated: '"go around" is answered with "{words}": it is obeyed with "going around", never debated.',
  },
  examples: {
    bad: '[{cue: height <= 500 ft AAL, who: PM, verb: call, object: height, say: five hundred}]',
    good: '[{cue: height <= 500 ft AAL, who: PM, verb: call, object: height, say: "five hundred, stable", replyBy: PF, reply: checked}]',
  },
  run({ steps, gate }, report) {
    const heardBy = new Map<string, Set<string>>();
    for (const step of steps) {
      const cue = step.cue === '' ? null : gate(step.cue).gate;
      for (const part of cue?.kind === 'all' ? cue.of : cue === null ? [] : [cue]) {
        if (part.kind !== 'heard') continue;
        const words = part.words.trim().toLowerCase();
        heardBy.set(words, (heardBy.get(words) ?? new Set()).add(step.who));
      }
    }
    const actedOn = (step: Step, speaker: string): boolean =>
      [...(heardBy.get(step.say.trim().toLowerCase()) ?? [])].some((who) => who !== speaker && who !== '');

    for (const step of steps) {
      const speaker = step.sayBy || step.who;
      const inside = step.say !== '' && !OUTSIDE.test(step.say);
      const replied = step.reply !== '' || step.replyAct !== '';
      const at = (field: string) => ({ step: step.id as string, field });
      if (
        inside &&
        CALLS.has(step.verb) &&
        step.orderWords === '' &&
        !replied &&
        step.replyBy === '' &&
        !actedOn(step, speaker)
      ) {
        report({ at: at('reply'), message: 'no-reply', data: { words: step.say }, witness: wordsOf('say', step.say) });
      }
      if (inside && replied && step.replyBy !== '' && step.replyBy === speaker && speaker !== 'each') {
        const witness = wordsOf('replyBy', step.replyBy);
        report({ at: at('replyBy'), message: 'answers-himself', data: { who: speaker, words: step.say }, witness });
      }
      if (step.replyBy !== '' && !replied) {
        report({ at: at('reply'), message: 'no-words', data: { who: step.replyBy }, witness: absent('reply') });
      }
      if (step.reply !== '' && step.replyBy === '') {
        const witness = wordsOf('reply', step.reply);
        report({ at: at('replyBy'), message: 'nobody-replies', data: { words: step.reply }, witness });
      }
      if (step.orderWords !== '' && step.say === '' && !replied && step.replyBy === '') {
        const witness = wordsOf('orderWords', step.orderWords);
        report({ at: at('say'), message: 'order-unanswered', data: { words: step.orderWords }, witness });
      }
      const judges = (step.verb === 'check' || step.verb === 'decide') && GATE.test(`${step.object} ${step.value}`);
      if (judges && (step.say === '' || speaker !== 'PM')) {
        report({ at: at('say'), message: 'gate-in-silence', witness: absent('say') });
      }
      if (same(step.say, 'go around') && step.reply !== '' && !/^going around\b/i.test(step.reply)) {
        const witness = wordsOf('reply', step.reply);
        report({ at: at('reply'), message: 'debated', data: { words: step.reply }, witness });
      }
    }
  },
});
