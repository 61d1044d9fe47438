import { findStep } from '../../procedure/locate.ts';
import type { Procedure } from '../../procedure/procedure.ts';
import { defineRule } from '../rule.ts';
import { absent, wordsOf } from '../witness.ts';

/** Looks like the label of a step or a branch of this house: `GA-07`, `TO-LOW`. */
const LABEL = /\b[A-Z]{2,}-[A-Z0-9]+\b/g;
const ENDS = /\bcomplete\b|\bend of (the )?(list|procedure)\b/i;

function unknownLabel(procedure: Procedure, text: string): string | null {
  const branches = new Set(procedure.branches.flatMap((branch) => [branch.id, branch.label, branch.title]));
  const labels = text.match(LABEL) ?? [];
  const own = new Set(
    procedure.steps
      .concat(procedure.branches.flatMap((branch) => branch.steps))
      .map((step) => step.label.split('-')[0]),
  );
  // Labels of other procedures are for the library to judge.
  return (
    labels.find(
      (label) => own.has(label.split('-')[0]!) && !branches.has(label) && findStep(procedure, label) === null,
    ) ?? null
  );
}

export const branchGoesNowhere = defineRule({
  id: 'branch-goes-nowhere',
  number: 13,
  severity: 'STOP',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Branch goes nowhere',
  says: 'Every branch ends: it joins a step that exists, goes to another procedure or list, or says "complete".',
  why: 'Where a branch does not end, crews stop early or run on into steps that were not meant for them.',
  source: { text: 'NASA TM-2014-218382 and lecture outline on checklist design', seen: false },
  needs: [],
  reads: ['branch'],
  messages: {
    open: 'The branch "{title}" does not say where it joins again or that it is complete.',
    unknown: '{label} does not exist: whoever is sent there stands nowhere.',
    'to-nowhere': 'The way "{when}" leads nowhere.',
  },
  examples: {
    bad: '{steps: [{cue: event "x"}], branches: [{title: Start the APU, when: judged "needed", steps: [{cue: then, who: PM, verb: press, object: APU start}]}]}',
    good: '{steps: [{label: XX-01, cue: event "x"}], branches: [{title: Start the APU, when: judged "needed", joins: XX-01, steps: [{cue: then, who: PM, verb: press, object: APU start}]}]}',
  },
  run({ procedure, steps }, report) {
    for (const branch of procedure.branches) {
      const last = branch.steps.at(-1);
      const place = { step: (last?.id ?? '') as string, field: 'joins' };
      const sends = last !== undefined && last.branch.length > 0;
      const ends = last !== undefined && ENDS.test([last.say, last.object, last.value, last.note].join(' '));
      if (branch.joins.trim() === '') {
        if (!sends && !ends)
          report({
            at: place,
            message: 'open',
            data: { title: branch.title || branch.label },
            witness: absent('joins'),
          });
        continue;
      }
      const label = unknownLabel(procedure, branch.joins);
      if (label !== null) {
        report({
          at: place,
          message: 'unknown',
          data: { label },
          witness: wordsOf('joins', branch.joins),
          read: [branch.joins],
        });
      }
    }
    for (const step of steps) {
      const at = { step: step.id as string, field: 'branch' };
      for (const way of step.branch) {
        const label = unknownLabel(procedure, way.to);
        if (way.to.trim() === '')
          report({ at, message: 'to-nowhere', data: { when: way.when }, witness: wordsOf('branch', way.when) });
        else if (label !== null)
          report({ at, message: 'unknown', data: { label }, witness: wordsOf('branch', way.to) });
      }
    }
  },
});
