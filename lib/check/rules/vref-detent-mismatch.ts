import { flapSelections } from '../../procedure/flaps.ts';
import type { Step } from '../../procedure/procedure.ts';
import { detentsNamed, listCalls } from '../list-calls.ts';
import { defineRule } from '../rule.ts';
import { inOrder } from '../witness.ts';

const ENTERED = /\b(VREF|VAPP|performance|approach speed|landing data|speed selector|landing (detent|flap))\b/i;
const FLAP = /\b(flaps?|detents?)\b/i;
const COMPARES = /\bplanned\b.*\bindicat|\bindicat\w*\b.*\bplanned\b/is;
const TWO_FIGURES = /(…|_{2,}|\.{3}).*(…|_{2,}|\.{3})/s;

/** What is said about the landing detent where it is briefed or entered: the words, and the field that holds them. */
function saidIn(step: Step): readonly [string, string] | null {
  if (step.verb === 'brief') return ['say', `${step.value} ${step.say}`];
  const enters = ['set', 'select', 'check'].includes(step.verb) && ENTERED.test(`${step.object} ${step.value}`);
  return enters && !FLAP.test(step.object) ? ['value', step.value] : null;
}

export const vrefDetentMismatch = defineRule({
  id: 'vref-detent-mismatch',
  number: 46,
  severity: 'STOP',
  kind: 'T',
  stage: 'submission',
  phases: ['approach', 'landing'],
  title: 'Landing detent mismatch',
  says: 'The landing detent of briefing, entered speeds, selection and landing checklist is one and the same, and the checklist compares planned with indicated. A text for two landing detents may brief either.',
  why: 'Two landings were flown with the speed of one flap and the lever at another, 8 kt slow; the list had no cross-check.',
  source: { text: 'ATSB AO-2025-010', seen: true },
  needs: ['sheet', 'library'],
  reads: ['verb', 'object', 'value', 'say'],
  messages: {
    mismatch: '{named} is briefed or entered here, but {selected} is selected: the speed belongs to another flap.',
    list: 'The "{list}" list answers with {named}, but {selected} is selected.',
    'no-compare':
      'The "{list}" list does not compare the planned detent with the indicated one: a wrong flap is answered like a right one.',
  },
  examples: {
    bad: '{phases: [landing], library: {checklists: [{id: landing, title: Landing, calledBy: PF, readBy: PM, trigger: "", method: do-then-verify, complete: "", items: [{challenge: Flaps, response: set, by: PF, steps: []}]}]}, steps: [{cue: then, who: PM, verb: select, object: flap lever, value: F35}, {cue: then, who: PM, verb: read, object: landing checklist}]}',
    good: '{phases: [landing], library: {checklists: [{id: landing, title: Landing, calledBy: PF, readBy: PM, trigger: "", method: do-then-verify, complete: "", items: [{challenge: Flaps, response: "planned …, indicating …", by: PF, steps: []}]}]}, steps: [{cue: then, who: PM, verb: select, object: flap lever, value: F35}, {cue: then, who: PM, verb: read, object: landing checklist}]}',
  },
  run({ procedure, steps, sheet, library }, report) {
    const names = sheet.detents.map((detent) => detent.name);
    const landing = sheet.detents.filter((detent) => detent.use.includes('landing')).map((detent) => detent.name);
    const selections = steps.flatMap((step) => flapSelections(step, procedure, names) ?? []);
    const finals = landing.filter((name) => selections.includes(name));
    if (finals.length === 0) return;
    const selected = finals.join(' or ');
    const read = [sheet.type, ...finals];
    for (const step of steps) {
      const said = saidIn(step);
      if (said === null) continue;
      const [field, text] = said;
      const wrong = detentsNamed(text, landing).filter((name) => !finals.includes(name));
      if (wrong.length === 0) continue;
      const named = wrong.join(' and ');
      const witness = inOrder(named, selected, `${named} in "${text.trim()}", the lever goes to ${selected}`);
      report({ at: { step: step.id, field }, message: 'mismatch', data: { named, selected }, witness, read });
    }
    for (const { step, list } of listCalls(procedure, library)) {
      const at = { step: step.id as string, field: 'object' };
      for (const { challenge, response } of list.items) {
        if (!FLAP.test(challenge)) continue;
        const wrong = detentsNamed(response, landing).filter((name) => !finals.includes(name));
        const named = wrong.join(' and ');
        const data = { list: list.title, named, selected };
        if (wrong.length > 0) {
          const witness = inOrder(named, selected, `"${challenge}: ${response}" in the list`);
          report({ at, message: 'list', data, witness, read: [...read, response] });
        } else if (!COMPARES.test(response) && !TWO_FIGURES.test(response)) {
          const witness = inOrder(
            `${challenge}: ${response}`,
            'planned …, indicating …',
            `"${challenge}: ${response}" in the list`,
          );
          report({ at, message: 'no-compare', data: { list: list.title }, witness, read: [response] });
        }
      }
    }
  },
});
