import { number } from '../../base/expression.ts';
import { compare } from '../../envelope/condition.ts';
import { where } from '../../envelope/explain.ts';
import { prove } from '../../envelope/prove.ts';
import { speedBounds } from '../../procedure/cue.ts';
import { defineRule } from '../rule.ts';
import { gateDistance, slowing } from '../slowing.ts';
import { compareOver, envelopeOf, speedOf } from '../speed-question.ts';
import { textsOf } from '../texts.ts';
import { worst } from '../worst.ts';

/** "160 kt to 4 NM", "170 kt until 6 NM". */
const UNTIL = /\b(\d{3}) ?kt (?:to|until|till) (\d{1,2}(?:\.\d)?) ?NM\b/gi;

export const speedRestrictionsFight = defineRule({
  id: 'speed-restrictions-fight',
  number: 66,
  severity: 'ANSWER',
  kind: 'N',
  stage: 'writing',
  phases: 'all',
  title: 'Speed restrictions that fight',
  says: 'Limits on the speed that hold at one moment leave a speed to fly at every weight; a speed that is held to a distance leaves way enough to slow down to the window of the stable gate.',
  why: 'Two limits that leave nothing between them, one of them is broken; which one, nobody has decided.',
  source: { text: 'operator policy: stable gate', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'only', 'value', 'note', 'before'],
  messages: {
    empty: 'The cue wants the speed at least {low} and at most {high}: {where} there is no such speed.',
    late: '{speed} kt to {distance} NM leaves {way} NM to the gate, and slowing to its window with {detent} takes {need} NM {where}: the approach is not stable.',
  },
  examples: {
    bad: '{phases: [approach], entry: {flaps: [F26], gear: down}, envelope: {detents: [F35], weight: {from: 46000, to: 66800}, wind: {from: 0, to: 0}, elevation: {from: 0, to: 0}, temperature: {from: 0, to: 0}}, steps: [{cue: then, who: PF, verb: set, object: speed selector, value: 160 kt, note: 160 kt to 4 NM}]}',
    good: '{phases: [approach], entry: {flaps: [F26], gear: down}, envelope: {detents: [F35], weight: {from: 46000, to: 66800}, wind: {from: 0, to: 0}, elevation: {from: 0, to: 0}, temperature: {from: 0, to: 0}}, steps: [{cue: then, who: PF, verb: set, object: speed selector, value: 160 kt, note: 160 kt to 6 NM}]}',
  },
  run({ states, steps, procedure, sheet, policy, unasked }, report) {
    const domain = envelopeOf(procedure, sheet);
    for (const { step, ways, before } of states) {
      const at = { step: step.id as string, field: 'cue' };
      const bad = worst();
      const detent = before.selected[0] ?? '';
      for (const way of ways) {
        const bounds = speedBounds(way);
        const side = (op: '<' | '>') => bounds.filter((bound) => bound.op.startsWith(op));
        for (const { term: low } of side('>')) {
          for (const { term: high } of side('<')) {
            const [left, right] = [speedOf(low, detent, sheet, policy), speedOf(high, detent, sheet, policy)];
            if (!left.ok || !right.ok) continue;
            const verdict = compareOver(left.value, '<=', right.value, domain);
            if (verdict.kind === 'fails') bad.take({ verdict, speed: left.value, other: right.value });
          }
        }
      }
      if (bad.found === null) continue;
      const { speed, other, verdict } = bad.found;
      const data = { low: speed.name, high: other.name, where: verdict.where };
      report({ at, message: 'empty', data, witness: verdict.witness, read: [JSON.stringify(domain)] });
    }
    const landing = sheet.detents.filter(({ use }) => use.includes('landing')).map(({ name }) => name);
    const planned = procedure.envelope.detents.filter((name) => landing.includes(name));
    const detent = planned.at(-1) ?? landing.at(-1);
    if (detent === undefined || !procedure.phases.includes('approach')) return;
    for (const { at, text } of textsOf(procedure, steps)) {
      for (const [, figure, to] of text.matchAll(UNTIL)) {
        const speed = Number(figure);
        const distance = Number(to);
        const way = distance - gateDistance(policy);
        const found = slowing(sheet, policy, detent, speed);
        if (found === null) {
          unasked(`the sheet gives no VREF for ${detent}`, at);
          continue;
        }
        const proof = prove(compare(found.need, '<=', number(way)), domain);
        if (proof.verdict === 'undecided') unasked(proof.because, at);
        if (proof.verdict !== 'fails') continue;
        const need = (way - proof.worst).toFixed(1);
        const place = where(proof.from) || 'at every weight';
        const says = `${speed} kt to ${distance} NM: ${need} NM needed, ${way.toFixed(1)} NM there, ${place}`;
        const data = { speed, distance, way: way.toFixed(1), need, detent, where: place };
        report({ at, message: 'late', data, witness: { kind: 'envelope', at: proof.witness, says }, read: [way] });
      }
    }
  },
});
