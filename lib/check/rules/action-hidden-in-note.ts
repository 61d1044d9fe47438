import type { Notice } from '../../procedure/procedure.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';
import { commandsIn } from '../words.ts';

export const actionHiddenInNote = defineRule({
  id: 'action-hidden-in-note',
  number: 18,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Action hidden in a note',
  says: 'Notes, cautions and warnings tell; they do not order. An action is a step. A limit restated and a prohibition ("do not exceed 178 kt with F26") are no actions.',
  why: 'Actions in notes are skipped: a note is read as background.',
  source: { text: 'CAA CAP 676', seen: false },
  needs: [],
  reads: ['before', 'note'],
  messages: {
    action: 'The {kind} orders "{words}": what is done belongs in a step of its own.',
  },
  examples: {
    bad: '[{cue: then, who: PM, verb: check, object: fuel, before: [{kind: note, text: "Select pumps on before the check."}]}]',
    good: '[{cue: then, who: PM, verb: check, object: fuel, before: [{kind: note, text: "With pumps off the gauge reads low."}]}]',
  },
  run({ steps, procedure }, report) {
    const look = (step: string, field: string, kind: string, text: string): void => {
      const [first] = commandsIn(text);
      if (first === undefined) return;
      const rest = text.slice(first.from).split(/[.;]/)[0]!.trim();
      const witness = wordsOf(field, text, first.from, first.from + rest.length);
      report({ at: { step, field }, message: 'action', data: { kind, words: rest }, witness, read: [text] });
    };
    const all = (step: string, notices: readonly Notice[], path: string): void => {
      for (const [index, notice] of notices.entries()) look(step, `${path}.${index}`, notice.kind, notice.text);
    };
    for (const step of steps) {
      all(step.id, step.before, 'before');
      look(step.id, 'note', 'note', step.note);
    }
    for (const branch of procedure.branches) {
      // A branch's own notices stand before its first step.
      all(branch.steps[0]?.id ?? '', branch.before, `branches.${branch.id}.before`);
    }
  },
});
