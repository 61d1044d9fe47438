import { speedBounds } from '../../procedure/cue.ts';
import { defineRule } from '../rule.ts';
import { isLookedAt } from '../selection.ts';
import { absent, wordsOf } from '../witness.ts';

const LEVER = /\b(flaps?|gear)\b.*\b(lever|handle)\b|\b(lever|handle)\b.*\b(flaps?|gear)\b/i;

export const doerChecksOwnWork = defineRule({
  id: 'doer-checks-own-work',
  number: 4,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Doer checks the own work',
  says: 'Each flight-path-critical step names a verifier other than the doer. Flap and gear have four beats: one pilot orders, the other looks at the speed, moves the lever, and confirms by the indication.',
  why: 'Of 899 deviations on 60 flights 391 were failures of monitoring: who has just acted sees what was meant, not what is.',
  source: { text: 'NASA TM-2010-216396', seen: true },
  needs: [],
  reads: ['cue', 'orderBy', 'orderWords', 'who', 'verb', 'object', 'say', 'checkBy', 'checkSees', 'flags'],
  messages: {
    nobody: 'The step is critical for the flight path, and nobody verifies it.',
    himself: '{who} verifies the own work: the other pilot has not looked.',
    'no-order': '{object}: no order by the other pilot comes first, so nobody expects the movement.',
    'no-look': '{object}: nobody looks at the speed before it is moved.',
    'no-indication': '{object}: nobody confirms by the indication that it is there.',
  },
  examples: {
    bad: '[{cue: then, who: PM, verb: set, object: altitude selector, value: missed-approach altitude, checkBy: PM, flags: [critical]}]',
    good: '[{cue: then, who: PM, verb: set, object: altitude selector, value: missed-approach altitude, checkBy: PF, checkSees: the figure, flags: [critical]}]',
  },
  run({ states }, report) {
    for (const at of states) {
      const { step } = at;
      const place = (field: string) => ({ step: step.id as string, field });
      if (step.flags.includes('critical') && step.who !== '') {
        if (step.checkBy.trim() === '') report({ at: place('checkBy'), message: 'nobody', witness: absent('checkBy') });
        else if (step.checkBy.trim() === step.who && step.who !== 'each') {
          const witness = wordsOf('checkBy', step.checkBy);
          report({ at: place('checkBy'), message: 'himself', data: { who: step.who }, witness });
        }
      }
      const acts = step.verb === 'move' || step.verb === 'select' || step.verb === 'set';
      if (!acts || !LEVER.test(step.object)) continue;
      const data = { object: step.object };
      if (step.orderWords === '')
        report({ at: place('orderWords'), message: 'no-order', data, witness: absent('orderWords') });
      const bounded = at.ways.every((way) => speedBounds(way).length > 0);
      if (!isLookedAt(at) && !bounded) report({ at: place('say'), message: 'no-look', data, witness: absent('say') });
      if (step.checkSees.trim() === '') {
        report({ at: place('checkSees'), message: 'no-indication', data, witness: absent('checkSees') });
      }
    }
  },
});
