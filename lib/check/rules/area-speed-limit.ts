import { speedExpression } from '../../aircraft/schedule.ts';
import { number } from '../../base/expression.ts';
import type { Gate } from '../../gate/syntax.ts';
import { formatHeight } from '../../units/format.ts';
import type { Feet } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';
import { compareOver, envelopeOf, speedOf } from '../speed-question.ts';
import { altitudeBounds } from '../speed-text.ts';

const FROM_BELOW = new Set(['take-off', 'initial climb', 'go-around', 'approach', 'landing']);

/** Where the step is done, seen from the limit: below it or not. null: the cue says neither. */
function sideOf(ways: readonly (readonly Gate[])[], limit: number): 'below' | 'above' | null {
  const sides = ways.map((way) => {
    const bounds = altitudeBounds(way);
    if (bounds.some(({ atLeast, feet }) => atLeast && feet >= limit)) return 'above';
    return bounds.some(({ feet }) => feet < limit || (feet === limit && bounds.length > 0)) ? 'below' : null;
  });
  return sides.length > 0 && sides.every((side) => side === sides[0]) ? sides[0]! : null;
}

export const areaSpeedLimit = defineRule({
  id: 'area-speed-limit',
  number: 51,
  severity: 'STOP',
  kind: 'N',
  stage: 'writing',
  phases: 'all',
  title: 'Speed limit of the area',
  says: "No speed target above the policy's area limit is flown below its altitude, at any weight; VMM of the clean detent is not above the limit either.",
  why: 'A limit that the weight does not allow has to be known before the clearance, not found out in it.',
  source: { text: 'operator policy: 250 kt below 10 000 ft', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'verb', 'object', 'value'],
  messages: {
    fast: 'The target {target} is above {limit} kt below {altitude} {where}: the area limit is broken.',
    floor: 'VMM {clean} is above {limit} kt {where}: below {altitude} the clean aircraft can not keep the area limit.',
  },
  examples: {
    bad: '{phases: [climb], steps: [{cue: altitude >= 8 000 ft MSL, who: PF, verb: set, object: speed selector, value: 290 kt}]}',
    good: '{phases: [climb], steps: [{cue: altitude >= 10 000 ft MSL, who: PF, verb: set, object: speed selector, value: 290 kt}]}',
  },
  run({ states, procedure, sheet, policy, unasked }, report) {
    const { speed: limit, below } = policy.speeds.areaLimit;
    const domain = envelopeOf(procedure, sheet);
    const altitude = `${formatHeight(below as Feet)} MSL`;
    const most = { name: `${limit} kt`, expression: number(limit) };
    const { level } = procedure.envelope;
    const low = level === null ? FROM_BELOW.has(procedure.phases[0] ?? '') : level.to <= below;
    const high = level !== null && level.from >= below;
    const lines = new Map<string, 'below' | 'above' | null>();
    const asked = new Set<string>();
    for (const { step, ways, branch, before, done } of states) {
      const line = branch?.id ?? '';
      const side = sideOf(ways, below) ?? lines.get(line) ?? (low ? 'below' : high ? 'above' : null);
      lines.set(line, side);
      const { target } = done;
      if (target.kind !== 'expression' || asked.has(target.setBy)) continue;
      const mine = target.setBy === step.id;
      if (!mine && (side !== 'below' || before.target !== target)) continue;
      const at = { step: step.id as string, field: mine ? 'value' : 'cue' };
      const speed = speedOf(target.term, done.selected[0] ?? '', sheet, policy);
      if (!speed.ok) continue;
      const verdict = compareOver(speed.value, '<=', most, domain);
      if (verdict.kind !== 'fails' || side === 'above') continue;
      asked.add(target.setBy);
      if (side === null) {
        unasked(`nothing says on which side of ${altitude} ${speed.value.name} is flown`, at);
        continue;
      }
      const data = { target: speed.value.name, limit, altitude, where: verdict.where };
      report({ at, message: 'fast', data, witness: verdict.witness, read: [limit, below, JSON.stringify(domain)] });
    }
    const clean = sheet.detents[0]!.name;
    const vmm = speedExpression(sheet, { name: 'VMM', detent: clean, icing: false });
    if (vmm === null || high) return;
    const verdict = compareOver({ name: `VMM ${clean}`, expression: vmm }, '<=', most, domain);
    if (verdict.kind !== 'fails') return;
    const at = { step: '', field: 'envelope.weight' };
    const data = { clean, limit, altitude, where: verdict.where };
    report({ at, message: 'floor', data, witness: verdict.witness, read: [limit, JSON.stringify(vmm)] });
  },
});
