import { modesText } from '../../mode/entry.ts';
import { defineRule } from '../rule.ts';
import { absent, wordsOf } from '../witness.ts';

const NO_START = 'fits the entry line';
const LEFT_OVER = /\b(jam(med)?|inoperative|failed|not in agreement)\b/i;
const DEFERRED = /\b(deferred|landing (detent|flap|checklist)|per table|until landing)\b/i;

export const normalToNonNormalJoin = defineRule({
  id: 'normal-to-non-normal-join',
  number: 106,
  severity: 'ANSWER',
  kind: 'X',
  stage: 'submission',
  phases: 'all',
  title: 'Join of normal and non-normal',
  says: 'A non-normal list begins in a mode line that its phase can have, and where it leaves something that does not work it says what is deferred to the landing list.',
  why: 'The normal landing list goes on asking for what the non-normal list has left behind.',
  source: { text: 'NASA study of emergency and abnormal checklists', seen: false },
  needs: ['sheet'],
  reads: ['object', 'value', 'note', 'expectNote'],
  messages: {
    entry:
      'On standard {standard} no mode line of the phase fits the entry of this list: it can not be begun from there.',
    deferred: 'The list ends with "{words}" and does not say what is deferred to the landing list.',
  },
  examples: {
    bad: '{class: non-normal, title: Flap jammed, phases: [approach], steps: [{cue: event "flap jammed", who: PM, verb: check, object: flap indication}]}',
    good: '{class: non-normal, title: Flap jammed, phases: [approach], exit: {also: "Landing detent: as jammed, VREF per table."}, steps: [{cue: event "flap jammed", who: PM, verb: check, object: flap indication}]}',
  },
  run({ procedure, flights, unasked, steps }, report) {
    if (procedure.class !== 'non-normal') return;
    for (const { standard, because } of flights.refused) {
      const at = { step: '', field: 'entry.vertical' };
      if (!because.includes(NO_START)) unasked(`standard ${standard}: ${because}`, at);
      else
        report({
          at,
          message: 'entry',
          data: { standard },
          witness: absent('entry.vertical'),
          read: [modesText(procedure.entry)],
        });
    }
    const words = LEFT_OVER.exec(procedure.title)?.[0];
    if (words === undefined) return;
    const texts = [
      procedure.exit.also,
      ...steps.flatMap((step) => [step.object, step.value, step.note, step.expectNote]),
    ];
    if (texts.some((text) => DEFERRED.test(text))) return;
    const at = { step: '', field: 'exit.also' };
    report({ at, message: 'deferred', data: { words }, witness: wordsOf('title', procedure.title), read: texts });
  },
});
