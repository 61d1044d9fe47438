import { findStep } from '../../procedure/locate.ts';
import type { Branch, Step } from '../../procedure/procedure.ts';
import { defineRule } from '../rule.ts';
import { inOrder, wordsOf } from '../witness.ts';

const REPEAT = /\b(repeat|again and again|keep (on )?\w+ing|retry)\b/i;
const LIMIT =
  /\b(max(imum)?|at most|not more than|up to|once|twice|second time|third time)\b|\b\d+ (attempts?|times|cycles|turns|min|s|minutes|seconds)\b/i;

const textsOf = (step: Step): readonly string[] => [
  step.object,
  step.value,
  step.note,
  step.expectNote,
  step.checkIfNot,
  step.cue,
  ...step.before.map(({ text }) => text),
];
const limited = (step: Step): boolean =>
  [...textsOf(step), ...step.branch.map((way) => way.when)].some((text) => LIMIT.test(text));

export const loopWithoutExit = defineRule({
  id: 'loop-without-exit',
  number: 11,
  severity: 'STOP',
  kind: 'X',
  stage: 'writing',
  phases: 'all',
  title: 'Loop without exit',
  says: 'What is repeated has a limit, and a way out for the case that it never comes about.',
  why: 'Loops of trouble-shooting have cost time and height that were needed for something else.',
  source: { text: 'accident reports on loss of height while a fault was being looked for, in general', seen: false },
  needs: [],
  reads: ['cue', 'object', 'value', 'note', 'branch', 'checkIfNot', 'before', 'expectNote'],
  messages: {
    'no-exit':
      'From here the text goes back to {to} whatever comes: the crew goes round until something else stops them.',
    'no-limit': 'The text goes back to {to} as often as it likes: it says no limit.',
    repeat: '"{words}" is said without a limit: nobody knows when to stop trying.',
  },
  examples: {
    bad: '[{label: X1, cue: event "start", who: PM, verb: move, object: starter, value: repeat start until light-off}]',
    good: '[{label: X1, cue: event "start", who: PM, verb: move, object: starter, value: "repeat start, maximum 2 attempts"}]',
  },
  run({ procedure, states }, report) {
    const order = new Map<Step, number>(states.map(({ step }, index) => [step, index]));
    const lineOf = new Map<Step, Branch | null>(states.map(({ step, branch }) => [step, branch]));
    for (const { step } of states) {
      const back = step.branch.filter((way) => {
        const to = findStep(procedure, way.to);
        return to !== null && lineOf.get(to) === lineOf.get(step) && order.get(to)! <= order.get(step)!;
      });
      for (const way of back) {
        const to = findStep(procedure, way.to)!;
        const at = { step: step.id as string, field: 'branch' };
        const witness = inOrder(to.id, step.id, `${way.when || 'always'}: back to ${way.to}`);
        const others = step.branch.length > back.length;
        if (!others) report({ at, message: 'no-exit', data: { to: way.to }, witness });
        else if (!limited(step) && !limited(to)) report({ at, message: 'no-limit', data: { to: way.to }, witness });
      }
      const field = (['value', 'note', 'checkIfNot'] as const).find((name) => REPEAT.test(step[name]));
      if (field === undefined || limited(step)) continue;
      const words = REPEAT.exec(step[field])!;
      const witness = wordsOf(field, step[field], words.index, words.index + words[0].length);
      report({ at: { step: step.id, field }, message: 'repeat', data: { words: words[0] }, witness });
    }
  },
});
