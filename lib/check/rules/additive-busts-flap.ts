import { detentNamed } from '../../aircraft/limits.ts';
import { speedExpression } from '../../aircraft/schedule.ts';
import { add, number } from '../../base/expression.ts';
import { pinned } from '../../envelope/domain.ts';
import { extentOf } from '../../envelope/prove.ts';
import { statedAdditive } from '../additive.ts';
import { defineRule } from '../rule.ts';
import { compareOver, envelopeOf } from '../speed-question.ts';

export const additiveBustsFlap = defineRule({
  id: 'additive-busts-flap',
  number: 48,
  severity: 'ANSWER',
  kind: 'N',
  stage: 'writing',
  phases: ['approach', 'landing'],
  title: 'Additive busts the flap',
  says: "VREF of each landing detent and the largest additive stay below VFE by the policy's margin, at every weight of the envelope. The additive is the one that the procedure states, else the policy's.",
  why: 'At 78.6 t VREF F35 and 20 kt are 161 kt, 3 kt below VFE: a gust takes the flap through its limit.',
  source: { text: 'type data of the TN-182, speed schedule', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['only', 'verb', 'object', 'value'],
  messages: {
    busts:
      'With {detent}, VREF and {additive} kt are {speed} kt at {weight} t against VFE {vfe} kt: the margin is under {margin} kt {where}.',
  },
  examples: {
    bad: '{phases: [landing], envelope: {weight: {from: 46000, to: 78600}, detents: [F35]}, entry: {flaps: [F35], gear: down, speed: VAPP}}',
    good: '{phases: [landing], envelope: {weight: {from: 46000, to: 78600}, detents: [F26]}, entry: {flaps: [F26], gear: down, speed: VAPP}}',
  },
  run({ states, steps, procedure, sheet, policy, unasked }, report) {
    const landing = sheet.detents.filter(({ use }) => use.includes('landing')).map(({ name }) => name);
    const chosen = new Map<string, string>();
    for (const name of [...procedure.envelope.detents, ...procedure.entry.flaps]) chosen.set(name, '');
    for (const { step, selection } of states) for (const name of selection ?? []) chosen.set(name, step.id);
    const named = landing.filter((name) => chosen.has(name));
    const planned = procedure.envelope.detents.filter((name) => landing.includes(name));
    const detents = planned.length > 0 ? planned : named.slice(-1);
    const additive = statedAdditive(procedure, steps) ?? policy.speeds.approachAddition.most;
    const margin = policy.speeds.additionMargin;
    const domain = envelopeOf(procedure, sheet);
    for (const detent of detents) {
      const step = chosen.get(detent) ?? '';
      const at = { step, field: step === '' ? 'envelope.detents' : 'value' };
      const vref = speedExpression(sheet, { name: 'VREF', detent, icing: false });
      const vfe = detentNamed(sheet, detent)?.vfe?.value;
      if (vref === null || vfe === undefined) {
        unasked(`the sheet gives no ${vref === null ? 'VREF' : 'VFE'} for ${detent}`, at);
        continue;
      }
      const most = { name: `VREF ${detent} + ${additive} kt`, expression: add(vref, number(additive)) };
      const limit = { name: `VFE ${detent} - ${margin} kt`, expression: number(vfe - margin) };
      const verdict = compareOver(most, '<=', limit, domain);
      if (verdict.kind === 'undecided') unasked(verdict.because, at);
      if (verdict.kind !== 'fails' || verdict.witness.kind !== 'envelope') continue;
      const { weight = 0 } = verdict.witness.at;
      const there = extentOf(most.expression, pinned(domain, 'weight', weight));
      const speed = (there?.greatest.value ?? 0).toFixed(1);
      const data = { detent, additive, speed, weight: (weight / 1000).toFixed(1), vfe, margin, where: verdict.where };
      const read = [vfe, JSON.stringify(vref), additive, margin, JSON.stringify(domain)];
      report({ at, message: 'busts', data, witness: verdict.witness, cause: `additive-busts-flap ${detent}`, read });
    }
  },
});
