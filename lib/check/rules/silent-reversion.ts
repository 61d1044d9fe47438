import { allSteps, type Step } from '../../procedure/procedure.ts';
import { asked, pathWitness, sayUnasked, standardsWords } from '../mode-paths.ts';
import { openedBy, reversionTexts } from '../reversion.ts';
import { defineRule } from '../rule.ts';

export const silentReversion = defineRule({
  id: 'silent-reversion',
  number: 83,
  severity: 'ANSWER',
  kind: 'X',
  stage: 'writing',
  phases: 'all',
  title: 'Silent reversion',
  says: 'A mode to which the guidance can go back by itself after a press (contour lost, speed protection, signal loss) is named in the procedure, with what is done then.',
  why: 'Where the vertical path hangs on the lateral mode, pressing one takes the other away without a word.',
  source: { text: 'FAA human factors team, interfaces between flight crews and modern flight decks', seen: false },
  needs: ['sheet'],
  reads: [
    'cue',
    'only',
    'verb',
    'object',
    'value',
    'expect',
    'expectNote',
    'note',
    'before',
    'checkSees',
    'checkIfNot',
  ],
  messages: {
    unnamed:
      'After {object} the guidance can go to {to} by itself on {standards} ({event}), and the procedure does not name it.',
  },
  examples: {
    bad: '{phases: [descent], entry: {thrust: [GOVERN], lateral: [ROUTE], vertical: [CONTOUR], armed: [ALT]}, steps: [{cue: event "heading assigned", who: PF, verb: press, object: HEADING}]}',
    good: '{phases: [descent], entry: {thrust: [GOVERN], lateral: [ROUTE], vertical: [CONTOUR], armed: [ALT]}, steps: [{cue: event "heading assigned", who: PF, verb: press, object: HEADING, expectNote: RATE-DN follows}]}',
  },
  run({ procedure, flights, unasked, sheet }, report) {
    sayUnasked(flights, unasked);
    if (sheet.modes.reversions === undefined) {
      unasked('the sheet does not say which rules are reversions', { step: '', field: 'entry.vertical' });
      return;
    }
    const text = allSteps(procedure).map(reversionTexts).join(' ');
    const named = (word: string): boolean => new RegExp(`(?<![\\w-])${word}(?![\\w-])`).test(text);
    const told = new Map<Step, { rule: string; to: string }>();
    const found = asked(flights, (doings, step) => {
      for (const doing of doings) {
        const reversion = openedBy(doing, sheet.modes);
        if (reversion === null || named(reversion.to)) continue;
        told.set(step, told.get(step) ?? reversion);
        return { doing, end: reversion.end };
      }
      return null;
    });
    for (const { step, hits } of found) {
      const { rule: event, to } = told.get(step)!;
      const standards = standardsWords(hits.map((hit) => hit.doing.flight.standard));
      const at = { step: step.id as string, field: 'expectNote' };
      const data = { object: step.object, to, event, standards };
      report({
        at,
        message: 'unnamed',
        data,
        witness: pathWitness(procedure, hits, ` > ${event}: ${to}`),
        read: [to, standards],
      });
    }
  },
});
