import type { Step } from '../../procedure/procedure.ts';
import { headOf } from '../corpus.ts';
import { members } from '../family.ts';
import { defineRule } from '../rule.ts';
import { inOrder, wordsOf } from '../witness.ts';

const SUPPLEMENTS = new Set(['supplementary normal', 'cold-weather', 'low-visibility']);
const CHANGES =
  /\b(later( than)?|delay(s|ed)?|postponed?|defer(red)?|omit(ted)?|left out|instead( of)?|not (yet )?(selected|set|extended|done))\b/i;
const LABEL = /\b[A-Z]{2,}-[A-Z0-9]+\b/;
const ITEM = /\b(item|step) \S+ of\b|\breplaces\b[^.;]*\b(list|checklist|procedure|step|item)\b/i;
const END = /\b(until|till|up to|as long as|while|then again|from then on|ends (with|when|at))\b/i;

/** Where a step says what it changes and for how long. */
const textOf = (step: Step): string =>
  [
    step.only,
    step.object,
    step.value,
    step.note,
    step.expectNote,
    step.why,
    ...step.before.map(({ text }) => text),
  ].join('; ');

export const supplementaryOverridesSilently = defineRule({
  id: 'supplementary-overrides-silently',
  number: 104,
  severity: 'STOP',
  kind: 'T',
  stage: 'submission',
  phases: 'all',
  title: 'Supplement overrides in silence',
  says: 'A step of a supplementary, cold-weather or low-visibility text that changes a normal step of the same phase, or puts something off, names the step or item that it replaces and says until when. Two steps are the same by family or copy.',
  why: 'The normal list goes on asking for what the supplement has put off, and one of the two is obeyed.',
  source: { text: 'ICAO Annex 6 and Doc 8168, on operations manuals', seen: true },
  needs: ['others'],
  reads: ['cue', 'only', 'who', 'verb', 'object', 'value', 'note', 'expectNote', 'before', 'why', 'family'],
  messages: {
    unnamed: 'This changes {normal} and does not name it: say "replaces {normal} until …".',
    'put-off': '"{words}" puts a normal step off and does not name which: say "replaces item … of the … list until …".',
    endless: 'It is not said until when this replaces {normal}: the normal step never comes back.',
  },
  examples: {
    bad: '{class: cold-weather, phases: [taxi], steps: [{cue: then, who: PM, verb: select, object: flap lever, value: later}]}',
    good: '{class: cold-weather, phases: [taxi], steps: [{cue: then, who: PM, verb: select, object: flap lever, value: later, note: replaces item 3 of the taxi list until line-up}]}',
  },
  run({ procedure, steps, others }, report) {
    if (!SUPPLEMENTS.has(procedure.class)) return;
    const byId = new Map(steps.map((step) => [step.id as string, step]));
    const normals = new Map<string, string>();
    for (const { sister, heard } of members(procedure, steps, others)) {
      const step = byId.get(sister.step)!;
      const normal = heard.find(({ of }) => {
        const head = headOf(others, of);
        return head.class === 'normal' && head.phases.some((phase) => procedure.phases.includes(phase));
      })?.tells;
      if (normal === undefined) continue;
      const differing = (['trigger', 'who', 'verb', 'value'] as const).filter(
        (field) => sister[field] !== normal[field],
      );
      if (differing.length === 0) continue;
      normals.set(sister.step, normal.called);
      const text = textOf(step);
      const at = { step: sister.step, field: 'only' };
      const says = `${sister.called} and ${normal.called} differ in ${differing.join(', ')}`;
      const witness = inOrder(sister.called, normal.called, says);
      const read = differing.map((field) => normal[field]);
      const named = text.includes(normal.called) || ITEM.test(text);
      if (!named) report({ at, message: 'unnamed', data: { normal: normal.called }, witness, read });
      else if (!END.test(text)) report({ at, message: 'endless', data: { normal: normal.called }, witness, read });
    }
    for (const step of steps) {
      if (normals.has(step.id)) continue;
      for (const field of ['object', 'value', 'only'] as const) {
        const words = CHANGES.exec(step[field]);
        if (words === null) continue;
        const text = textOf(step);
        const at = { step: step.id as string, field };
        const witness = wordsOf(field, step[field], words.index, words.index + words[0].length);
        const named = LABEL.exec(text)?.[0] ?? ITEM.exec(text)?.[0];
        if (named === undefined) report({ at, message: 'put-off', data: { words: words[0] }, witness });
        else if (!END.test(text)) report({ at, message: 'endless', data: { normal: named }, witness });
      }
    }
  },
});
