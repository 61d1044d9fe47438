import type { Trace } from '../../flight/trace.ts';
import { speedBounds } from '../../procedure/cue.ts';
import { formatNumber } from '../../units/format.ts';
import { conditionsWords, flightWitness, knots, sayUnflown, sharesWords, worstFlight } from '../flown-worst.ts';
import { EXTEND, overOf, RETRACT } from '../gear-over.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

const MOVES = new Set(['move', 'select', 'set']);

export const gearLimits = defineRule({
  id: 'gear-limits',
  number: 44,
  severity: 'STOP',
  kind: 'N/S',
  stage: 'submission',
  phases: 'all',
  title: 'Gear limits',
  says: 'The gear is extended at or below VLO for extension, retracted at or below VLO for retraction, which is lower, and flown at or below VLE while it is not up.',
  why: 'A gear that was retracted late in a go-around was oversped together with the flap.',
  source: { text: 'ATSB AO-2018-034', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'verb', 'object', 'value'],
  messages: {
    cue: 'The cue lets the gear lever move from {from} on: {limit}.',
    over: 'The gear is at {speed} at {weight}, {by} above {limit}.',
  },
  examples: {
    bad: '{phases: [take-off], entry: {flaps: [F12], gear: down}, exit: {flaps: [F0]}, envelope: {weight: {from: 50000, to: 51000}, detents: [F12]}, steps: [{cue: speed >= 235 kt, who: PM, verb: move, object: gear lever, value: UP}]}',
    good: '{phases: [take-off], entry: {flaps: [F12], gear: down}, exit: {flaps: [F0]}, envelope: {weight: {from: 50000, to: 51000}, detents: [F12]}, steps: [{cue: altitude increasing, who: PM, verb: move, object: gear lever, value: UP}]}',
  },
  run({ procedure, states, flown, sheet, unasked }, report) {
    const { vloExtend, vloRetract, vle } = sheet.limits.gear;
    const read = [vloExtend.value, vloRetract.value, vle.value];
    for (const { step, ways } of states) {
      if (!MOVES.has(step.verb) || !/\bgear\b/i.test(step.object)) continue;
      const up = /\bup\b/i.test(step.value);
      const limit = up ? vloRetract : vloExtend;
      const from = ways.flatMap(speedBounds).find(({ op, term }) => op.startsWith('>') && term.kind === 'amount');
      if (from?.term.kind !== 'amount' || from.term.value <= limit.value) continue;
      const data = { from: knots(from.term.value), limit: `${up ? RETRACT : EXTEND}, ${knots(limit.value)}` };
      report({ at: { step: step.id, field: 'cue' }, message: 'cue', data, witness: wordsOf('cue', step.cue), read });
    }
    if (sayUnflown({ flown, unasked })) return;
    const ask = (trace: Trace) => overOf(trace, vloExtend.value, vloRetract.value, vle.value);
    const found = worstFlight(flown, ({ trace }) => ask(trace)?.by ?? null);
    if (found === null) return;
    const { trace } = found.one;
    const { by, moment, limit, step } = ask(trace)!;
    const weight = conditionsWords(trace.conditions);
    report({
      at: { step: step || (procedure.steps[0]?.id ?? ''), field: 'cue' },
      message: 'over',
      data: { speed: knots(moment.speed), by: `${formatNumber(by, 1)} kt`, limit, weight },
      witness: flightWitness(trace, [moment], `so in ${sharesWords(found)}`),
      read: [...read, Math.round(by)],
    });
  },
});
