import type { StepState } from '../../procedure/walk.ts';
import { defineRule } from '../rule.ts';
import { crosses, passed, scale, type Way, wholeWay } from '../transition.ts';
import { absent, inOrder } from '../witness.ts';

const SETTING = /\baltimeters?\b/i;
const VALUE: Readonly<Record<Way, RegExp>> = {
  climb: /\b(standard|1013)\b/i,
  descent: /\b(local|QNH|aerodrome|regional)\b/i,
};
const TO: Readonly<Record<Way, string>> = { climb: 'standard', descent: 'the local setting' };
const COMPARED = /\b(both|compar\w*|cross-?check\w*|other|third|within)\b/i;

export const altimeterChange = defineRule({
  id: 'altimeter-change',
  number: 74,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: ['take-off', 'initial climb', 'climb', 'descent', 'approach'],
  title: 'Change of altimeter setting',
  says: 'A procedure that passes the transition changes the altimeter setting: each pilot on the own side, compared, and before the next height that counts on the new setting.',
  why: 'With the old setting every altitude that follows is flown at another height than was meant.',
  source: { text: 'altimeter setting procedures, in general', seen: false },
  needs: [],
  reads: ['cue', 'who', 'verb', 'object', 'value', 'say', 'reply', 'checkBy', 'checkSees', 'note'],
  messages: {
    missing:
      'The {way} passes the transition, and nobody sets the altimeters to {to}: what follows is flown at another height.',
    'one-side': 'Only {who} sets the altimeter: the other side keeps the old setting, and the two disagree.',
    'not-compared': 'Nobody compares the two altimeters after the change: one that was set wrong is not found.',
    late: '{words} stands before the change of setting: it is measured by the old one.',
  },
  examples: {
    bad: '{phases: [climb], steps: [{cue: altitude >= transition altitude, who: PM, verb: call, object: altitude}]}',
    good: '{phases: [climb], steps: [{cue: altitude >= transition altitude, who: each, verb: set, object: own altimeter setting, value: standard, checkBy: the other pilot, checkSees: both altimeters within 80 ft of each other}]}',
  },
  run({ procedure, states }, report) {
    const main = states.filter(({ branch }) => branch === null);
    for (const way of ['climb', 'descent'] as const) {
      const sets = main.filter((here) => isSetting(here, way));
      const first = sets[0];
      if (first === undefined) {
        const crossing = main.find((here) => crosses(here, main, way));
        if (crossing === undefined && !wholeWay(procedure, way)) continue;
        const at = { step: crossing?.step.id ?? '', field: crossing === undefined ? 'title' : 'cue' };
        report({
          at,
          message: 'missing',
          data: { way, to: TO[way] },
          witness: absent('altimeter setting'),
          read: [way],
        });
        continue;
      }
      const at = (field: string) => ({ step: first.step.id as string, field });
      const hands = new Set(sets.map(({ step }) => step.who));
      if (!hands.has('each') && hands.size < 2) {
        const witness = inOrder(first.step.id, first.step.id, `set by ${first.step.who || 'nobody'}`);
        report({ at: at('who'), message: 'one-side', data: { who: first.step.who || 'nobody' }, witness });
      }
      const compared = sets.some(
        ({ step }) => COMPARED.test(`${step.checkSees} ${step.note}`) || step.checkBy === 'the other pilot',
      );
      if (!compared) report({ at: at('checkSees'), message: 'not-compared', witness: absent('checkSees') });
      const early = main.slice(0, main.indexOf(first)).find((here) => scale(here) === (way === 'climb' ? 'FL' : 'MSL'));
      const from = way === 'climb' ? 'MSL' : 'FL';
      if (early === undefined || !passed(main, early, from)) continue;
      const data = { words: early.step.cue };
      const witness = inOrder(early.step.id, first.step.id, `${early.step.cue} comes before the setting`);
      report({ at: at('cue'), message: 'late', data, witness, read: [early.step.cue] });
    }
  },
});

const isSetting = ({ step }: StepState, way: Way): boolean =>
  (step.verb === 'set' || step.verb === 'select') &&
  SETTING.test(step.object) &&
  VALUE[way].test(`${step.value} ${step.say} ${step.object}`);
