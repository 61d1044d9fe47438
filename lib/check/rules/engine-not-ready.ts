import { formatNumber } from '../../units/format.ts';
import type { FlownOne } from '../flown.ts';
import { passingHeight } from '../flown-moments.ts';
import {
  conditionsWords,
  feet,
  flightWitness,
  momentAt,
  sayUnflown,
  seconds,
  sharesWords,
  worstFlight,
} from '../flown-worst.ts';
import { defineRule } from '../rule.ts';

type Late = { readonly leaves: number; readonly minima: number };

/** When thrust leaves idle for the last time before the minima, and when these are passed; null: idle was left long before. */
function leavesIdle({ trace }: FlownOne, idle: number): Late | null {
  const { samples, conditions } = trace;
  const minima = passingHeight(trace, conditions.minima - conditions.elevation);
  if (minima === null) return null;
  let last: number | null = null;
  for (let row = 0; row < samples.time.length && samples.time[row]! <= minima; row += 1) {
    if (samples.thrust[row]! <= idle) last = samples.time[row]!;
  }
  return last === null ? null : { leaves: last, minima };
}

export const engineNotReady = defineRule({
  id: 'engine-not-ready',
  number: 96,
  severity: 'ANSWER',
  kind: 'S',
  stage: 'submission',
  phases: ['approach', 'landing'],
  title: 'Engine not ready',
  says: 'Thrust has left idle so long before the minima that go-around thrust is there when it is wanted.',
  why: 'Eight seconds from idle are what certification counts with; a go-around from idle begins without thrust.',
  source: { text: '14 CFR 25.119', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'verb', 'object', 'value'],
  messages: {
    idle: 'The engines are at idle until {left} before the minima ({height} AAL) at {weight}; from idle they need {spool} to go-around thrust.',
  },
  examples: {
    bad: '{phases: [approach], entry: {flaps: [F6], gear: up, speed: 220 kt, thrust: [IDLE], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F35], gear: down}, envelope: {weight: {from: 60000, to: 61000}}, steps: [{cue: height <= 300 ft AAL, who: PM, verb: move, object: gear lever, value: DOWN}]}',
    good: '{phases: [approach], entry: {flaps: [F6], gear: up, speed: 180 kt, thrust: [IDLE], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F35], gear: down}, envelope: {weight: {from: 60000, to: 61000}}, steps: [{cue: height <= 2 900 ft AAL, who: PM, verb: move, object: gear lever, value: DOWN}, {cue: height <= 2 700 ft AAL and speed <= VFE F12 - 5 kt, who: PM, verb: select, object: flap lever, value: F12}, {cue: height <= 2 500 ft AAL and speed <= VFE F18 - 5 kt, who: PM, verb: select, object: flap lever, value: F18}, {cue: height <= 2 200 ft AAL and speed <= VFE F26 - 5 kt, who: PM, verb: select, object: flap lever, value: F26}, {cue: height <= 1 900 ft AAL and speed <= VFE F35 - 5 kt, who: PM, verb: select, object: flap lever, value: F35}]}',
  },
  run({ procedure, flown, sheet, unasked }, report) {
    if (procedure.phases.includes('go-around')) return;
    if (sayUnflown({ flown, unasked })) return;
    const spool = sheet.thrust.spool.idleToGoAround.value;
    const idle = sheet.thrust.idle.fraction * 100;
    const found = worstFlight(flown, (one) => {
      const late = leavesIdle(one, idle);
      return late !== null && late.minima - late.leaves < spool ? late.leaves - late.minima : null;
    });
    if (found === null) return;
    const { trace } = found.one;
    const { leaves, minima } = leavesIdle(found.one, idle)!;
    const steps = procedure.steps.filter(({ object }) => /\b(flap|gear) lever\b/i.test(object));
    report({
      at: { step: (steps.at(-1) ?? procedure.steps[0])?.id ?? '', field: 'cue' },
      message: 'idle',
      data: {
        ...{ left: seconds(minima - leaves), height: feet(trace.conditions.minima - trace.conditions.elevation) },
        ...{ weight: conditionsWords(trace.conditions), spool: seconds(spool) },
      },
      witness: flightWitness(
        trace,
        [momentAt(trace, leaves, 'last at idle'), momentAt(trace, minima, 'minima')],
        `so in ${sharesWords(found)}`,
      ),
      read: [spool, formatNumber(minima - leaves)],
    });
  },
});
