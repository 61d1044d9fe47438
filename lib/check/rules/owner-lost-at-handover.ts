import type { Step } from '../../procedure/procedure.ts';
import { defineRule } from '../rule.ts';
import { absent, inOrder, wordsOf } from '../witness.ts';

const GIVES = /\byou have control\b/i;
const TAKES = /\bI have control\b/i;
const NAMED = /\b(PF|PM) \((captain|first officer)\)/g;
const FIELDS = ['object', 'value', 'note', 'checkBy', 'checkSees', 'checkIfNot', 'expectNote', 'only'] as const;

type Named = {
  readonly role: string;
  readonly seat: string;
  readonly field: (typeof FIELDS)[number];
  readonly at: number;
  readonly words: string;
};
const namedIn = (step: Step): readonly Named[] =>
  FIELDS.flatMap((field) =>
    [...step[field].matchAll(NAMED)].map((match) => ({
      role: match[1]!,
      seat: match[2]!,
      field,
      at: match.index,
      words: match[0],
    })),
  );

export const ownerLostAtHandover = defineRule({
  id: 'owner-lost-at-handover',
  number: 3,
  severity: 'STOP',
  kind: 'X',
  stage: 'writing',
  phases: 'all',
  title: 'Owner lost at hand-over',
  says: 'A transfer of control has its call and its reply, "I have control", by the other pilot; behind it PF and PM are the other seats, and what names role and seat together says so.',
  why: 'Control went over 12 s before touchdown, in an event of high load, without both knowing who had it.',
  source: { text: 'NTSB AAR-97/01', seen: true },
  needs: [],
  reads: ['who', 'sayBy', 'say', 'replyBy', 'reply', ...FIELDS],
  messages: {
    'no-reply': '"You have control" has no answer here: for a moment both have it, or nobody.',
    'same-pilot': '{who} gives control and takes it: the reply belongs to the other pilot.',
    'wrong-seat': '"{words}" was right before control went over at {step}; now the {seat} is {role}.',
  },
  examples: {
    bad: '[{cue: event "landing roll", who: PF, verb: call, object: control, say: you have control}]',
    good: '[{cue: event "landing roll", who: PF, verb: call, object: control, say: you have control, replyBy: PM, reply: I have control}]',
  },
  run({ states }, report) {
    const seats = new Map<string, string>();
    let handed: Step | null = null;
    let line: unknown = null;
    for (const { step, branch } of states) {
      // A branch leaves before or behind the hand-over: what it names is not compared with the main line.
      if (branch !== line) [handed, line] = [null, branch];
      for (const { role, seat, field, at, words } of namedIn(step)) {
        const before = seats.get(role);
        if (handed === null) seats.set(role, seat);
        else if (before === seat) {
          const data = { words, step: handed.label || handed.id, seat, role: role === 'PF' ? 'PM' : 'PF' };
          const witness = wordsOf(field, step[field], at, at + words.length);
          report({ at: { step: step.id, field }, message: 'wrong-seat', data, witness });
        }
      }
      if (!GIVES.test(step.say)) continue;
      const giver = step.sayBy || step.who;
      if (!TAKES.test(step.reply)) {
        const witness = step.reply === '' ? absent('reply') : wordsOf('reply', step.reply);
        report({ at: { step: step.id, field: 'reply' }, message: 'no-reply', witness });
      } else if (step.replyBy === giver && giver !== '') {
        const witness = inOrder(step.id, step.id, `${giver} says "${step.say}" and "${step.reply}"`);
        report({ at: { step: step.id, field: 'replyBy' }, message: 'same-pilot', data: { who: giver }, witness });
      }
      // Two hand-overs bring the seats back.
      handed = handed === null ? step : null;
    }
  },
});
