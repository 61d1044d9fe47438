import type { Sheet } from '../../aircraft/sheet.ts';
import { disagreements } from '../agreement.ts';
import { defineRule } from '../rule.ts';
import { type Stated, statedIn } from '../stated.ts';
import { TEXT_FIELDS } from '../texts.ts';
import { absent, inOrder } from '../witness.ts';

const NEAR_RUNWAY = new Set(['take-off', 'approach', 'landing', 'go-around']);
const FIGURE = /^\d+/;

/** The table's limit for what is stated, kt: by runway code where one is named; null: the type has none. */
function inTable(
  sheet: Sheet,
  { quantity, condition }: Stated,
): { readonly limit: number; readonly exact: boolean } | null {
  const cross = quantity === 'crosswind limit';
  if (!cross && quantity !== 'tailwind limit') return null;
  const code = /code (\d)/.exec(condition)?.[1];
  const row = code === undefined ? undefined : sheet.runwayStates.find((each) => each.code === Number(code));
  if (row !== undefined) return { limit: cross ? row.crosswind : row.tailwind, exact: true };
  return { limit: cross ? sheet.limits.crosswind.value : -sheet.limits.wind.from, exact: false };
}

export const windLimitsAgree = defineRule({
  id: 'wind-limits-agree',
  number: 77,
  severity: 'STOP',
  kind: 'T',
  stage: 'submission',
  phases: 'all',
  title: 'Wind limits agree',
  says: "Crosswind, tailwind and gust limits are the same in procedure, table and briefing: none above the type data, those of a runway code as its table, all alike in the operator's texts. The tailwind that a procedure is meant for lies in the range of the type data.",
  why: 'A landing distance had been reckoned with a tailwind that the crew did not know of.',
  source: { text: 'NTSB AAR-07/06', seen: true },
  needs: ['sheet', 'library', 'others'],
  reads: [...TEXT_FIELDS, 'why'],
  messages: {
    above: 'The {quantity} of {mine} is above the {limit} kt of the type data: nothing was shown for it.',
    table: 'The {quantity} for {condition} is {mine} here and {limit} kt in the table of runway states.',
    differs: 'The {quantity} is {mine} here and {theirs} in {where}: one of them is briefed, the other is flown.',
    envelope: 'The procedure is meant for {mine} kt of tail wind; the type data end at {limit} kt.',
  },
  examples: {
    bad: '{steps: [{cue: then, who: PM, verb: check, object: tailwind, value: at most 15 kt}], others: [{title: Fleet card, steps: [{cue: then, who: PM, verb: check, object: tailwind, value: at most 10 kt}]}]}',
    good: '{steps: [{cue: then, who: PM, verb: check, object: tailwind, value: at most 10 kt}], others: [{title: Fleet card, steps: [{cue: then, who: PM, verb: check, object: tailwind, value: at most 10 kt}]}]}',
  },
  run({ procedure, steps, sheet, library, others }, report) {
    const winds = statedIn(procedure, steps).filter(({ quantity }) => /wind|gust/.test(quantity));
    for (const mine of winds) {
      const table = inTable(sheet, mine);
      if (table === null) continue;
      const knots = Number(FIGURE.exec(mine.value)?.[0] ?? 0);
      const above = knots > table.limit;
      if (!above && !(table.exact && knots !== table.limit && !mine.reason)) continue;
      const { quantity, condition, value, at } = mine;
      const message = table.exact ? 'table' : 'above';
      const witness = inOrder(value, `${table.limit} kt`, `"${mine.quote}" against ${table.limit} kt in the type data`);
      const cause = `wind limit: ${quantity} ${condition}`;
      report({
        at,
        message,
        data: { quantity, condition, mine: value, limit: table.limit },
        witness,
        cause,
        read: [table.limit],
      });
    }
    for (const { mine, theirs } of disagreements(procedure.id, winds, others, library)) {
      const data = { quantity: mine.quantity, mine: mine.value, theirs: theirs.value, where: theirs.where };
      const witness = inOrder(mine.value, theirs.value, `"${mine.quote}" here; ${theirs.value} in ${theirs.where}`);
      const cause = `one number: ${mine.quantity} ${mine.condition}`;
      report({ at: mine.at, message: 'differs', data, witness, cause, read: [theirs.value, theirs.where] });
    }
    const { wind } = procedure.envelope;
    const lowest = sheet.limits.wind.from;
    if (wind !== null && wind.from < lowest && procedure.phases.some((phase) => NEAR_RUNWAY.has(phase))) {
      const at = { step: '', field: 'envelope.wind' };
      const data = { mine: -wind.from, limit: -lowest };
      report({ at, message: 'envelope', data, witness: absent('envelope.wind'), read: [wind.from, lowest] });
    }
  },
});
