import { NOT_KNOWN, WHOLE } from '../governance.ts';
import { defineRule } from '../rule.ts';
import { absent, inOrder } from '../witness.ts';

export const trLost = defineRule({
  id: 'tr-lost',
  number: 115,
  severity: 'STOP',
  kind: 'T',
  stage: 'publication',
  phases: 'all',
  title: 'Temporary revision lost',
  says: 'A new issue says of each live temporary revision that it is absorbed, kept or cancelled, and where or why.',
  why: 'The slip of paper is taken out with the old page, and what it warned of is still so.',
  source: { text: 'paper practice of temporary revisions', seen: false },
  needs: ['governance'],
  reads: [],
  messages: {
    dropped: 'TR {name} is live until {expires}, and the new issue says nothing of it: what it warned of is lost.',
    unsaid: 'TR {name} is said to be {how}, but not {wanted}: nobody can find its words again.',
    'no-step': 'TR {name} is kept, but its step is gone from the new issue: it lies on nothing.',
  },
  examples: {
    bad: '{steps: [{label: GA-07, cue: then}], governance: {revisions: {issue: 8, list: [{name: "12", step: GA-07, parentIssue: 8, expires: 2026-12-31, validatedFor: 8, fate: null}]}}}',
    good: '{steps: [{label: GA-07, cue: then}], governance: {revisions: {issue: 8, list: [{name: "12", step: GA-07, parentIssue: 8, expires: 2026-12-31, validatedFor: 8, fate: {how: absorbed, says: in GA-07}}]}}}',
  },
  run({ governance, steps, unasked }, report) {
    const { revisions, today } = governance;
    if (revisions === null) return unasked(NOT_KNOWN.revisions, WHOLE);
    const ids = new Set(steps.map((step) => step.id as string));
    for (const { name, step, expires, fate } of revisions.list) {
      // One that is over is the matter of check 114.
      if (expires !== null && expires < today) continue;
      const here = ids.has(step);
      const at = here ? { step, field: 'object' } : WHOLE;
      const cause = `tr-lost ${name}`;
      const read = [name, expires ?? '', fate?.how ?? '', fate?.says ?? ''];
      if (fate === null) {
        const data = { name, expires: expires ?? 'no day' };
        report({ at, message: 'dropped', data, witness: absent(`fate of TR ${name}`), cause, read });
      } else if (fate.says.trim() === '') {
        const data = { name, how: fate.how, wanted: fate.how === 'cancelled' ? 'why' : 'where' };
        report({ at, message: 'unsaid', data, witness: absent(`fate of TR ${name}`), cause, read });
      } else if (fate.how === 'kept' && !here) {
        const witness = inOrder(step, step, `TR ${name} lies on a step that is gone`);
        report({ at, message: 'no-step', data: { name }, witness, cause, read });
      }
    }
  },
});
