import { withoutSpoken } from '../figures.ts';
import { defineRule } from '../rule.ts';
import { absent, wordsOf } from '../witness.ts';

const PASSIVE =
  /\b(?:should|shall|must|will|may|can|has to|have to|needs to|is to|are to|to)\s+be\s+\w+|\b(?:is|are)\s+(?:then\s+)?(?:moved|selected|set|pressed|retracted|extended|engaged|armed|checked|called|turned|raised|lowered)\b/i;

export const notACommand = defineRule({
  id: 'not-a-command',
  number: 24,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Not a command',
  says: 'An action is written as a command: present, active, the actor first, with a verb.',
  why: 'In the passive nobody is told to act.',
  source: { text: 'FAA AC 120-71B', seen: false },
  needs: [],
  reads: ['who', 'verb', 'object', 'value'],
  messages: {
    passive: '"{words}" tells nobody to act: write who does what.',
    'no-verb': '"{object}" stands without a verb: it is not said what {who} does with it.',
  },
  examples: {
    bad: '[{cue: then, who: PM, verb: select, object: the flaps should be retracted}]',
    good: '[{cue: then, who: PM, verb: select, object: flap lever, value: F6}]',
  },
  run({ steps }, report) {
    for (const step of steps) {
      if (step.verb === '' && step.object !== '') {
        const data = { object: step.object, who: step.who || 'anybody' };
        report({ at: { step: step.id, field: 'verb' }, message: 'no-verb', data, witness: absent('verb') });
      }
      for (const field of ['object', 'value'] as const) {
        const match = PASSIVE.exec(withoutSpoken(step[field]));
        if (match === null) continue;
        const witness = wordsOf(field, step[field], match.index, match.index + match[0].length);
        report({ at: { step: step.id, field }, message: 'passive', data: { words: match[0] }, witness });
      }
    }
  },
});
