import { NOT_KNOWN, WHOLE } from '../governance.ts';
import { defineRule } from '../rule.ts';
import { absent, inOrder } from '../witness.ts';

export const trExpiredOrClashing = defineRule({
  id: 'tr-expired-or-clashing',
  number: 114,
  severity: 'STOP',
  kind: 'T',
  stage: 'publication',
  phases: 'all',
  title: 'Temporary revision expired or clashing',
  says: 'Each temporary revision has a day on which it ends and an issue that it belongs to, is looked at again when that issue changes, and lies on its step alone.',
  why: 'Two slips over one line, one of them out of date: the crew can not know which one holds.',
  source: { text: 'paper practice of temporary revisions', seen: false },
  needs: ['governance'],
  reads: [],
  messages: {
    endless: 'TR {name} has no day on which it ends: what was urgent becomes the text, and nobody has reviewed it.',
    expired: 'TR {name} ended on {expires} and still lies on the step: the crew reads what no longer holds.',
    orphan: 'TR {name} belongs to no issue: nobody knows which text it changes.',
    stale: 'TR {name} was made for issue {parent}, in force is issue {issue}, and nobody has looked at it since.',
    clash: 'TR {first} and TR {second} lie on one step: the crew can not know which one holds.',
  },
  examples: {
    bad: '{steps: [{label: GA-07, cue: then}], governance: {revisions: {issue: 8, list: [{name: "12", step: GA-07, parentIssue: 8, expires: 2026-12-31, validatedFor: 8, fate: null}, {name: "9", step: GA-07, parentIssue: 8, expires: 2026-10-31, validatedFor: 8, fate: null}]}}}',
    good: '{steps: [{label: GA-07, cue: then}], governance: {revisions: {issue: 8, list: [{name: "12", step: GA-07, parentIssue: 8, expires: 2026-12-31, validatedFor: 8, fate: null}]}}}',
  },
  run({ governance, steps, unasked }, report) {
    const { revisions, today } = governance;
    if (revisions === null) return unasked(NOT_KNOWN.revisions, WHOLE);
    const { issue, list } = revisions;
    const ids = new Set(steps.map((step) => step.id as string));
    const onStep = new Map<string, string>();
    for (const { name, step, parentIssue, expires, validatedFor } of list) {
      const at = ids.has(step) ? { step, field: 'object' } : WHOLE;
      const cause = (what: string): string => `tr ${name} ${what}`;
      if (expires === null) {
        report({
          at,
          message: 'endless',
          data: { name },
          witness: absent('expiry'),
          cause: cause('end'),
          read: [name],
        });
      } else if (expires < today) {
        const witness = inOrder(expires, today, `ended ${expires}, today is ${today}`);
        report({
          at,
          message: 'expired',
          data: { name, expires },
          witness,
          cause: cause('end'),
          read: [name, expires],
        });
      }
      if (parentIssue === null) {
        const witness = absent('parent issue');
        report({ at, message: 'orphan', data: { name }, witness, cause: cause('parent'), read: [name] });
      } else if (parentIssue !== issue && validatedFor !== issue) {
        const witness = inOrder(String(parentIssue), String(issue), `made for ${parentIssue}, in force ${issue}`);
        const data = { name, parent: parentIssue, issue };
        report({ at, message: 'stale', data, witness, cause: cause('parent'), read: [name, parentIssue, issue] });
      }
      const other = onStep.get(step);
      if (other !== undefined) {
        const witness = inOrder(other, name, `TR ${other} and TR ${name} on one step`);
        report({ at, message: 'clash', data: { first: other, second: name }, witness, read: [other, name] });
      } else onStep.set(step, name);
    }
  },
});
