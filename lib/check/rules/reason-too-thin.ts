import { type MarkedChange, markedChanges } from '../changes.ts';
import { type Mark, NOT_KNOWN } from '../governance.ts';
import { defineRule } from '../rule.ts';
import { absent, wordsOf } from '../witness.ts';

/** Words that say that there is a change, but nothing of it. */
const FILLER =
  /^(up|dated?|updates?|amend\w*|chang\w*|revis\w*|correct\w*|edit\w*|improv\w*|clarif\w*|minor|small|various|misc\w*|general|new|text|wording|words?|steps?|procedures?|lines?|pages?|issue|version|review\w*|agreed|discussed|requested|request|required|necessary|needed|better|cosmetic|typos?|the|and|for|per|see|with|this|that|was|were|has|been|some|all|our|its?|made|did|done|fix\w*|as|is|are|be|to|of|in|on|by|at|or)$/i;
const LEAST = 2;
/** Where a change comes from, when the words name it. */
const ORIGIN =
  /\b(sheet|revision|rev|bulletin|report|feedback|line checks?|incident|event|audit|regulation|rule|letter|manual|notice|data|study|investigation|survey|simulator|trial|TR)\b/i;
/** What can go wrong, when the words name it. */
const HAZARD =
  /\b(hazard|risk|miss(ed|es)?|late|early|too|not|never|forgot\w*|lost|fail\w*|wrong|confus\w*|mis\w+|over\w+|under\w+|below|above|exceed\w*|danger\w*|stall\w*|crash\w*|collid\w*|unheard|quiet\w*|slow\w*|lowered|raised|differ\w*|two|twice)\b/i;

const telling = (reason: string): number =>
  new Set(
    (reason.match(/[\p{L}\d]{2,}/gu) ?? []).filter((word) => !FILLER.test(word)).map((word) => word.toLowerCase()),
  ).size;

export const reasonTooThin = defineRule({
  id: 'reason-too-thin',
  number: 110,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'submission',
  phases: 'all',
  title: 'Reason too thin',
  says: 'The reason for a change says more than that something changed, and names the hazard or the source: in its own words, or in the risk note and the source beside it.',
  why: 'An item was moved down a list with no look at what it would do: the aircraft came down to 38 ft.',
  source: { text: 'ATSB AO-2007-044', seen: true },
  needs: ['governance'],
  reads: [],
  messages: {
    empty: 'The text changes ({change}), and no reason is given: nobody can weigh it, now or later.',
    thin: '"{reason}" says that something changed, but not why: nobody can weigh it, now or later.',
    unfounded: '"{reason}" names neither what can go wrong nor where it comes from: nobody can follow it back.',
  },
  examples: {
    bad: '{steps: [{id: a, cue: then, who: PF, verb: set, object: speed selector, value: 190 kt}], governance: {change: {base: {issue: 3, procedure: {steps: [{id: a, cue: then, who: PF, verb: set, object: speed selector, value: 195 kt}]}}, marks: [{step: "", field: "", reason: amended, source: sheet B, risk: ""}]}}}',
    good: '{steps: [{id: a, cue: then, who: PF, verb: set, object: speed selector, value: 190 kt}], governance: {change: {base: {issue: 3, procedure: {steps: [{id: a, cue: then, who: PF, verb: set, object: speed selector, value: 195 kt}]}}, marks: [{step: "", field: "", reason: "VFE F6 lowered, sheet B", source: "", risk: ""}]}}}',
  },
  run({ governance, procedure, unasked }, report) {
    const { change } = governance;
    if (change === null) return unasked(NOT_KNOWN.change, { step: '', field: 'rationale' });
    const changes = markedChanges(change, procedure);
    // One reason for many changes is asked about once, where it is first needed.
    const first = new Map<Mark, MarkedChange>();
    for (const each of changes) if (each.mark !== null && !first.has(each.mark)) first.set(each.mark, each);
    for (const [mark, { at: place, says }] of first) {
      const reason = mark.reason.trim();
      const at = mark.step === '' ? { step: '', field: 'rationale' } : place;
      const founded =
        [mark.source, mark.risk].some((text) => text.trim() !== '') || ORIGIN.test(reason) || HAZARD.test(reason);
      const message = reason === '' ? 'empty' : telling(reason) < LEAST ? 'thin' : 'unfounded';
      if (message === 'unfounded' && founded) continue;
      const witness = reason === '' ? absent('why') : wordsOf('why', reason);
      report({ at, message, data: { reason, change: says }, witness, cause: `reason ${reason}`, read: [reason] });
    }
  },
});
