import { flownWords, panelHand, touchesPanel } from '../panel.ts';
import { defineRule } from '../rule.ts';
import { absent, wordsOf } from '../witness.ts';

export const nobodyDoesIt = defineRule({
  id: 'nobody-does-it',
  number: 1,
  severity: 'STOP',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Nobody does it',
  says: 'Every action step has exactly one actor; "each" counts as one. A step with an order names who orders and who acts. What is pressed or turned on the guidance panel belongs to the pilot whom the panel rule names.',
  why: 'Steps without an owner are left out, and omission is the classic error of procedures.',
  source: {
    text: 'Loukopoulou, Pilot error: even skilled experts make mistakes (27 accidents, five omissions)',
    seen: true,
  },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'only', 'orderBy', 'orderWords', 'who', 'verb', 'object'],
  messages: {
    nobody: 'Nobody is named for "{action}": each pilot will take it to be the other\'s.',
    'nobody-orders': '"{words}" is an order, but nobody is named to give it.',
    'wrong-hand':
      "{who} works the panel here, but with {state} the panel is {hand}'s: two hands, or none, will reach for {object}.",
  },
  examples: {
    bad: '[{cue: event "positive climb", verb: move, object: gear lever, value: UP}]',
    good: '[{cue: heard "gear up", orderBy: PF, orderWords: gear up, who: PM, verb: move, object: gear lever, value: UP}]',
  },
  run({ states, sheet, policy }, report) {
    const buttons = sheet.panel.flatMap((object) => (object.kind === 'button' ? [object.mode ?? object.name] : []));
    for (const at of states) {
      const { step } = at;
      const acts = step.verb !== '' || step.object !== '' || step.value !== '';
      if (acts && step.who === '') {
        const action = [step.verb, step.object, step.value].filter(Boolean).join(' ');
        report({ at: { step: step.id, field: 'who' }, message: 'nobody', data: { action }, witness: absent('who') });
      }
      if (step.orderWords !== '' && step.orderBy === '') {
        const place = { step: step.id, field: 'orderBy' };
        report({ at: place, message: 'nobody-orders', data: { words: step.orderWords }, witness: absent('orderBy') });
      }
      if ((step.who !== 'PF' && step.who !== 'PM') || !touchesPanel(step, buttons)) continue;
      const hand = panelHand(at, policy);
      if (hand === null || hand === step.who) continue;
      report({
        at: { step: step.id, field: 'who' },
        message: 'wrong-hand',
        data: { who: step.who, state: flownWords(at.before), hand, object: step.object },
        witness: wordsOf('who', step.who),
        cause: `nobody-does-it panel ${flownWords(at.before)}`,
        read: [hand, at.before.autopilot],
      });
    }
  },
});
