import { speedExpression } from '../../aircraft/schedule.ts';
import { mul, number } from '../../base/expression.ts';
import type { SpeedName } from '../../gate/syntax.ts';
import { defineRule } from '../rule.ts';
import { compareOver, envelopeOf, type Speed } from '../speed-question.ts';

/** Least factors for a two-engine jet without credit for powered lift: 14 CFR and CS 25.107. */
const V2_OVER_VSR = 1.13;
const V2_OVER_VMCA = 1.1;
/** kt: a schedule that takes exactly the least factor meets it, whatever its last decimals. */
const EXACT = 0.01;

export const vSpeedsOrder = defineRule({
  id: 'v-speeds-order',
  number: 49,
  severity: 'STOP',
  kind: 'N',
  stage: 'writing',
  phases: ['take-off'],
  title: 'Order of the V speeds',
  says: 'For every take-off detent and weight of the envelope: V1 not below its floor, V1 at most VR, VR at most V2, V2 at least 1.13 VSR and 1.10 VMCA.',
  why: 'A V1 above VR, or below the speed at which the aircraft can be held straight, decides a take-off that can not be flown.',
  source: { text: '14 CFR 25.107, CS 25.107', seen: true },
  needs: ['sheet'],
  reads: [],
  messages: {
    order: 'With {detent}, {left} is {side} {right} {where}.',
  },
  examples: {
    bad: '{phases: [take-off], envelope: {detents: [F6]}, sheet: {limits: {v1Floor: {value: 120}}}}',
    good: '{phases: [take-off], entry: {flaps: [F6]}, envelope: {detents: [F6, F12, F18]}}',
  },
  run({ procedure, sheet, unasked }, report) {
    const at = { step: '', field: 'envelope.detents' };
    const domain = envelopeOf(procedure, sheet);
    const { vmca, v1Floor } = sheet.limits;
    const named = procedure.envelope.detents.length > 0 ? procedure.envelope.detents : procedure.entry.flaps;
    if (named.length === 0) unasked('no take-off detent is named', at);
    for (const detent of named) {
      const speed = (name: SpeedName, wet = false): Speed | null => {
        const expression = speedExpression(sheet, { name, detent, icing: false, wet });
        if (expression === null) unasked(`the sheet gives no ${name} for ${detent}`, at);
        return expression && { name: wet ? `${name} wet` : name, expression };
      };
      const [v1, wet, vr, v2, vsr] = [speed('V1'), speed('V1', true), speed('VR'), speed('V2'), speed('VSR')];
      const floor: Speed = { name: `the V1 floor ${v1Floor.value} kt`, expression: number(v1Floor.value) };
      const control: Speed = { name: '1.10 VMCA', expression: number(V2_OVER_VMCA * vmca.value - EXACT) };
      const stall = vsr && { name: '1.13 VSR', expression: mul(number(V2_OVER_VSR), vsr.expression) };
      const pairs = [
        [v1, '>=', floor],
        [wet, '>=', floor],
        [v1, '<=', vr],
        [vr, '<=', v2],
        [v2, '>=', stall],
        [v2, '>=', control],
      ] as const;
      for (const [left, op, right] of pairs) {
        if (left === null || right === null) continue;
        const verdict = compareOver(left, op, right, domain);
        if (verdict.kind === 'undecided')
          unasked(`${left.name} against ${right.name} with ${detent}: ${verdict.because}`, at);
        if (verdict.kind !== 'fails') continue;
        const data = {
          detent,
          left: left.name,
          side: op === '>=' ? 'below' : 'above',
          right: right.name,
          where: verdict.where,
        };
        report({
          at,
          message: 'order',
          data,
          witness: verdict.witness,
          read: [detent, JSON.stringify(left), JSON.stringify(right), JSON.stringify(domain)],
        });
      }
    }
  },
});
