import type { Trace } from '../../flight/trace.ts';
import { formatNumber } from '../../units/format.ts';
import type { Moment } from '../finding.ts';
import { passingSpeed } from '../flown-moments.ts';
import {
  conditionsWords,
  feet,
  flightWitness,
  momentAt,
  sayUnflown,
  sharesWords,
  worstFlight,
} from '../flown-worst.ts';
import { defineRule } from '../rule.ts';

type Limit = { readonly text: string; readonly below: number; readonly until: number };
const UNTIL = /^(\w+) at or below ([\d ]+?)(?: ft)?(?: MSL)? until (\d+) kt$/;

/** Limits that hold until a speed: those need no place to be asked. */
function limitOf(text: string): Limit | null {
  const said = UNTIL.exec(text.trim());
  return said === null ? null : { text, below: Number(said[2]!.replaceAll(' ', '')), until: Number(said[3]) };
}

/** Where the speed is reached that ends the limit, and the highest before it. */
function highest(trace: Trace, limit: Limit): Moment & { readonly altitude: number } {
  const reached = passingSpeed(trace, limit.until) ?? trace.end.time;
  const moment = momentAt(trace, reached, `${limit.until} kt`);
  return { ...moment, altitude: moment.height + trace.conditions.elevation };
}

export const hardAltitudeMissed = defineRule({
  id: 'hard-altitude-missed',
  number: 65,
  severity: 'STOP',
  kind: 'S',
  stage: 'submission',
  phases: ['take-off', 'initial climb', 'climb', 'descent'],
  title: 'Hard altitude missed',
  says: 'Every altitude limit that the card of the aerodrome gives for the route is met at every weight and wind, with the modes the procedure uses.',
  why: 'Reports of missed crossing restrictions tell of vertical paths that the mode in use did not fly.',
  source: { text: 'ASRS CALLBACK 292, 412, 533 and 545', seen: true },
  needs: ['sheet', 'policy', 'library'],
  reads: ['cue', 'verb', 'object', 'value', 'expect'],
  messages: {
    missed:
      '{limit} is missed in {some}: {speed} kt is reached at {height} AAL, {altitude} MSL, at {weight}. Select {select} first, or accelerate with less climb.',
  },
  examples: {
    bad: '{title: Noise departure at QHLM, phases: [take-off, climb], entry: {flaps: [F12], gear: down}, exit: {flaps: [F0]}, envelope: {weight: {from: 50000, to: 52000}, detents: [F12]}, steps: [{cue: height >= acceleration altitude, who: PM, verb: set, object: speed selector, value: 250 kt}]}',
    good: '{title: Noise departure at QHLM, phases: [take-off, climb], entry: {flaps: [F12], gear: down, selectedAltitude: 4 000 ft MSL}, exit: {flaps: [F0]}, envelope: {weight: {from: 50000, to: 52000}, detents: [F12]}, steps: [{cue: height >= acceleration altitude, who: PM, verb: set, object: speed selector, value: 250 kt}]}',
  },
  run({ procedure, flown, unasked }, report) {
    if (sayUnflown({ flown, unasked })) return;
    const at = { step: procedure.steps[0]?.id ?? '', field: 'cue' };
    if (flown.place === null)
      return unasked('the procedure names no aerodrome whose card has limits on the route', {
        step: '',
        field: 'title',
      });
    for (const text of flown.place.routeLimits) {
      const limit = limitOf(text);
      if (limit === null) {
        unasked(`"${text}" has no distance on the card, so that nobody knows where it has to be met`, at);
        continue;
      }
      const found = worstFlight(flown, ({ trace }) => {
        const over = highest(trace, limit).altitude - limit.below;
        return over > 0 ? over : null;
      });
      if (found === null) continue;
      const { trace } = found.one;
      const moment = highest(trace, limit);
      report({
        at,
        message: 'missed',
        data: {
          ...{ limit: text, some: sharesWords(found), speed: limit.until, select: `${formatNumber(limit.below)} ft` },
          ...{
            height: feet(moment.height),
            altitude: feet(moment.altitude),
            weight: conditionsWords(trace.conditions),
          },
        },
        witness: flightWitness(trace, [moment]),
        read: [text, Math.round(moment.altitude / 10)],
      });
    }
  },
});
