import type { Meaning } from '../../diff/change.ts';
import { markedChanges } from '../changes.ts';
import { NOT_KNOWN, WHOLE } from '../governance.ts';
import { defineRule } from '../rule.ts';
import { inOrder } from '../witness.ts';

/** Values stand in cues and in the states at both ends too. */
const MARKED: ReadonlySet<Meaning> = new Set(['value', 'who', 'order', 'modes', 'cue', 'state']);

export const changedWithoutMark = defineRule({
  id: 'changed-without-mark',
  number: 109,
  severity: 'STOP',
  kind: 'T',
  stage: 'submission',
  phases: 'all',
  title: 'Changed without a mark',
  says: 'Each change of value, actor, order or mode since the last issue is marked, with its reason and its source: those of the change request, or of the step itself.',
  why: 'Who has flown the old text for years reads the new one at a glance: what is not marked is not seen, and what has no reason can be judged by nobody.',
  source: { text: '14 CFR 121.135, revision control by page and date', seen: false },
  needs: ['governance'],
  reads: [],
  messages: {
    unmarked: '{change}. Nothing marks it: crews go on flying what they know.',
    'no-reason': '{change}. No reason is given: nobody can tell later whether it still holds.',
    'no-source': '{change}. No source is named: nobody can follow it back, or see when it is out of date.',
  },
  examples: {
    bad: '{steps: [{id: a, cue: then, who: PF, verb: set, object: speed selector, value: 190 kt}], governance: {change: {base: {issue: 3, procedure: {steps: [{id: a, cue: then, who: PF, verb: set, object: speed selector, value: 195 kt}]}}, marks: []}}}',
    good: '{steps: [{id: a, cue: then, who: PF, verb: set, object: speed selector, value: 190 kt}], governance: {change: {base: {issue: 3, procedure: {steps: [{id: a, cue: then, who: PF, verb: set, object: speed selector, value: 195 kt}]}}, marks: [{step: a, field: value, reason: VFE F6 lowered, source: sheet C, risk: ""}]}}}',
  },
  run({ governance, procedure, unasked }, report) {
    const { change } = governance;
    if (change === null) return unasked(NOT_KNOWN.change, WHOLE);
    for (const { at, says, meaning, mark, source } of markedChanges(change, procedure)) {
      if (!MARKED.has(meaning)) continue;
      const lacks = mark === null ? 'unmarked' : mark.reason.trim() === '' ? 'no-reason' : 'no-source';
      if (lacks === 'no-source' && source.trim() !== '') continue;
      const witness = inOrder(at.step, at.step, `against issue ${change.base?.issue}: ${says}`);
      const cause = `changed-without-mark ${lacks} ${mark?.step ?? at.step}`;
      report({ at, message: lacks, data: { change: says }, witness, cause, read: [says] });
    }
  },
});
