import { allSteps, type Step } from '../../procedure/procedure.ts';
import { HOLD, splitAt, stretches } from '../interruption.ts';
import { listsAt } from '../lists.ts';
import { defineRule } from '../rule.ts';
import { absent, inOrder } from '../witness.ts';

const RESUME = /\b(resum\w*|restart\w*|go(es)? on (at|with|from)|continue\w* (at|with|from)|again from)\b/i;

const textOf = (step: Step): string =>
  [step.object, step.value, step.note, step.checkIfNot, ...step.before.map(({ text }) => text)].join(' ');

export const nowhereToResume = defineRule({
  id: 'nowhere-to-resume',
  number: 14,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Nowhere to resume',
  says: 'A stretch of two or more steps that may be interrupted, and a checklist that something outside splits, has a hold point and says where to resume. A single step is its own point: it is done again.',
  why: 'Interruptions in preflight and taxi are the norm, not the exception: a list was cut short by a taxi request, and what was left of it was never read.',
  source: { text: 'CIAIAC A-032/2008; line study of cockpit interruptions, 2001', seen: true },
  needs: ['library'],
  reads: ['flags', 'object', 'value', 'note', 'before', 'checkIfNot'],
  messages: {
    'no-hold':
      'From here {count} steps may be interrupted, and no hold point is marked: the crew guesses where it was.',
    'no-resume': 'The hold point does not say where to resume: what was left out stays left out.',
    'split-list':
      'The {list} list waits for "{words}" at item {item} with no hold line before it: the rest is forgotten.',
    'list-no-resume':
      'The hold line of the {list} list does not say where to resume: what was left out stays left out.',
  },
  examples: {
    bad: '[{cue: then, who: PM, verb: set, object: fuel pumps, flags: [interruptible]}, {cue: then, who: PM, verb: set, object: beacon, flags: [interruptible]}]',
    good: '[{cue: then, who: PM, verb: set, object: fuel pumps, flags: [interruptible]}, {cue: then, who: PM, verb: set, object: beacon, note: "HOLD until cleared; resume at the beacon, restart if in doubt", flags: [interruptible, hold]}]',
  },
  run({ procedure, library }, report) {
    const lines = [procedure.steps, ...procedure.branches.map((branch) => branch.steps)];
    for (const stretch of lines.flatMap(stretches)) {
      const at = { step: stretch[0]!.id as string, field: 'flags' };
      const hold = stretch.find((step) => step.flags.includes('hold'));
      if (hold === undefined) {
        const data = { count: stretch.length };
        const says = `${stretch.length} steps that may be interrupted`;
        report({ at, message: 'no-hold', data, witness: inOrder(at.step, stretch.at(-1)!.id, says), read: [says] });
      } else if (!stretch.some((step) => RESUME.test(textOf(step)))) {
        report({ at: { step: hold.id, field: 'note' }, message: 'no-resume', witness: absent('note') });
      }
    }
    for (const { list, at } of listsAt(allSteps(procedure), library)) {
      const data = { list: list.title };
      const cause = `nowhere-to-resume ${list.id}`;
      const split = splitAt(list);
      if (split !== null) {
        const read = [list.id, split.words, split.item];
        const witness = inOrder(String(split.item - 1), String(split.item), `item ${split.item}: ${split.words}`);
        report({ at, message: 'split-list', data: { ...data, ...split }, witness, cause, read });
      }
      const line = list.items.find((item) => HOLD.test(item.challenge));
      if (line !== undefined && !RESUME.test(`${line.challenge} ${line.response}`)) {
        report({
          at,
          message: 'list-no-resume',
          data,
          witness: absent('resume'),
          cause,
          read: [list.id, line.response],
        });
      }
    }
  },
});
