import { disagreements } from '../agreement.ts';
import { defineRule } from '../rule.ts';
import { statedIn } from '../stated.ts';
import { TEXT_FIELDS } from '../texts.ts';
import { inOrder } from '../witness.ts';

export const oneFleetTwoNumbers = defineRule({
  id: 'one-fleet-two-numbers',
  number: 99,
  severity: 'STOP',
  kind: 'T',
  stage: 'submission',
  phases: 'all',
  title: 'One fleet, two numbers',
  says: 'A quantity has one value under one condition in all current procedures, checklists, aerodrome cards and terms: wind limits, autobrake by runway code, the heights of a card, the stable gate. A step that records a reason for another value passes; a figure that merely occurs is not read.',
  why: 'Crews stop following a manual that contradicts itself.',
  source: { text: 'NASA CR 177642 (1994), on consistency of procedures', seen: false },
  needs: ['library', 'others'],
  reads: [...TEXT_FIELDS, 'why'],
  messages: {
    differs:
      'The {quantity}{condition} is {mine} here and {theirs} in {where}: a crew that knows both believes neither.',
  },
  examples: {
    bad: '{steps: [{only: code 3, cue: then, who: PM, verb: select, object: autobrake selector, value: low}], others: [{title: Fleet card, steps: [{only: code 3, cue: then, who: PM, verb: select, object: autobrake selector, value: medium}]}]}',
    good: '{steps: [{only: code 3, cue: then, who: PM, verb: select, object: autobrake selector, value: medium}], others: [{title: Fleet card, steps: [{only: code 3, cue: then, who: PM, verb: select, object: autobrake selector, value: medium}]}]}',
  },
  run({ procedure, steps, others, library }, report) {
    for (const { mine, theirs } of disagreements(procedure.id, statedIn(procedure, steps), others, library)) {
      const { quantity, condition } = mine;
      report({
        at: mine.at,
        message: 'differs',
        data: {
          quantity,
          condition: condition === '' ? '' : ` (${condition})`,
          mine: mine.value,
          theirs: theirs.value,
          where: theirs.where,
        },
        witness: inOrder(mine.value, theirs.value, `"${mine.quote}" here; ${theirs.value} in ${theirs.where}`),
        cause: `one number: ${quantity} ${condition}`,
        read: [theirs.value, theirs.where, theirs.condition],
      });
    }
  },
});
