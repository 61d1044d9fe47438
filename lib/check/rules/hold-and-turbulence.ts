import { number } from '../../base/expression.ts';
import { floorOf } from '../../envelope/floor.ts';
import { formatHeight } from '../../units/format.ts';
import type { Feet } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';
import { compareOver, envelopeOf, speedOf } from '../speed-question.ts';
import { altitudeBounds } from '../speed-text.ts';

const ROUGH = /\bturbulen|\brough[- ]air\b/i;

export const holdAndTurbulence = defineRule({
  id: 'hold-and-turbulence',
  number: 52,
  severity: 'ANSWER',
  kind: 'N',
  stage: 'writing',
  phases: 'all',
  title: 'Hold and turbulence speed',
  says: "A speed for a hold or for turbulence is at least VMM of the detent held at every weight, and in a hold at most the policy's limit for the lowest level at which it may be flown.",
  why: 'A hold too slow turns without margin, a hold too fast leaves its protected area.',
  source: { text: 'ICAO Doc 8168, holding speeds', seen: false },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'only', 'verb', 'object', 'value'],
  messages: {
    slow: '{speed} is below {limit} {where}: the turn has no margin left.',
    fast: '{speed} is above {limit} kt, the hold limit up to {altitude}, {where}: the hold leaves its area.',
  },
  examples: {
    bad: '{phases: [holding], envelope: {level: {from: 6000, to: 14000}}, steps: [{cue: then, who: PF, verb: set, object: speed selector, value: 200 kt}]}',
    good: '{phases: [holding], envelope: {level: {from: 6000, to: 14000}}, steps: [{cue: then, who: PF, verb: set, object: speed selector, value: 215 kt}]}',
  },
  run({ states, procedure, sheet, policy, unasked }, report) {
    const domain = envelopeOf(procedure, sheet);
    const holding = procedure.phases.includes('holding');
    const { low, middle, high } = policy.speeds.hold;
    for (const { step, ways, done } of states) {
      const { target } = done;
      const rough = ROUGH.test(`${step.cue} ${step.only} ${step.value}`);
      if (target.kind !== 'expression' || target.setBy !== step.id || (!holding && !rough)) continue;
      const at = { step: step.id as string, field: 'value' };
      for (const detent of done.selected) {
        const speed = speedOf(target.term, detent, sheet, policy);
        const floor = floorOf(sheet, policy.floors, 'elsewhere', detent, detent);
        if (!speed.ok || floor === null) {
          unasked(speed.ok ? `the sheet gives no lowest speed for ${detent}` : speed.error, at);
          continue;
        }
        const under = compareOver(speed.value, '>=', floor, domain);
        if (under.kind === 'fails') {
          const data = { speed: speed.value.name, limit: floor.name, where: under.where };
          const read = [JSON.stringify(floor.expression), JSON.stringify(domain)];
          report({ at, message: 'slow', data, witness: under.witness, cause: `hold slow ${floor.name}`, read });
        }
        if (!holding || rough) continue;
        const bottoms = ways.map((way) => Math.max(0, ...altitudeBounds(way).map((b) => (b.atLeast ? b.feet : 0))));
        const least = Math.max(Math.min(...bottoms), procedure.envelope.level?.from ?? 0);
        const limit = [low, middle, high].find(({ upTo }) => least < upTo);
        if (limit === undefined) continue;
        const name = `${limit.speed} kt`;
        const over = compareOver(speed.value, '<=', { name, expression: number(limit.speed) }, domain);
        if (over.kind !== 'fails') continue;
        const altitude = `${formatHeight(limit.upTo as Feet)} MSL`;
        const data = { speed: speed.value.name, limit: limit.speed, altitude, where: over.where };
        const read = [limit.speed, limit.upTo, JSON.stringify(domain)];
        report({ at, message: 'fast', data, witness: over.witness, cause: `hold fast ${limit.speed}`, read });
      }
    }
  },
});
