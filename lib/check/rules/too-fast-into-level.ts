import { formatNumber } from '../../units/format.ts';
import type { Moment } from '../finding.ts';
import type { FlownOne } from '../flown.ts';
import { passingAltitude } from '../flown-moments.ts';
import {
  conditionsWords,
  firstMode,
  flightWitness,
  momentAt,
  sayUnflown,
  sharesWords,
  worstFlight,
} from '../flown-worst.ts';
import { defineRule } from '../rule.ts';

/** Passing the last feet before the selected altitude on the way to a level-off. */
function lastFeet({ trace }: FlownOne, within: number): Moment | null {
  if (firstMode(trace, 'CAPTURE', 'LEVEL') === null) return null;
  const time = passingAltitude(trace, trace.conditions.selectedAltitude - within);
  return time === null ? null : momentAt(trace, time, `${formatNumber(within)} ft to go`);
}

export const tooFastIntoLevel = defineRule({
  id: 'too-fast-into-level',
  number: 68,
  severity: 'ADVICE',
  kind: 'S',
  stage: 'submission',
  phases: ['take-off', 'climb', 'go-around'],
  title: 'Too fast into level',
  says: 'In the last 1 000 ft before a level-off the rate is at most that of the policy where another aircraft may be adjacent, or the procedure names the rate there.',
  why: 'Level-off geometry makes most of the avoidance manoeuvres that turn out not to have been needed.',
  source: { text: 'PANS-OPS provision of 2008, as quoted by EUROCONTROL', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'value', 'checkSees', 'note'],
  messages: {
    fast: 'With {within} ft to the level-off the rate is {rate} at {weight}; {limit} is the house figure where another aircraft may be adjacent, and no step names it.',
  },
  examples: {
    bad: '{phases: [take-off, climb], entry: {flaps: [F12], gear: down, selectedAltitude: 7 000 ft MSL}, exit: {flaps: [F0]}, envelope: {weight: {from: 58000, to: 59000}, detents: [F12]}, steps: [{cue: altitude >= selected altitude - 1 000 ft, who: PM, verb: call, object: altitude, say: one thousand to go}]}',
    good: '{phases: [take-off, climb], entry: {flaps: [F12], gear: down, selectedAltitude: 7 000 ft MSL}, exit: {flaps: [F0]}, envelope: {weight: {from: 58000, to: 59000}, detents: [F12]}, steps: [{cue: altitude >= selected altitude - 1 000 ft, who: PM, verb: call, object: altitude, say: one thousand to go, checkSees: rate at most 1 500 ft/min where another aircraft is adjacent}]}',
  },
  run({ procedure, steps, flown, policy, unasked }, report) {
    if (sayUnflown({ flown, unasked })) return;
    const { rate, within } = policy.gates.levelOff;
    const near = steps.find(({ cue }) => /\bselected altitude - /.test(cue));
    if (near !== undefined && /ft\/min/.test(`${near.value} ${near.checkSees} ${near.note}`)) return;
    const found = worstFlight(flown, (one) => {
      const moment = lastFeet(one, within);
      return moment !== null && moment.verticalSpeed > rate ? moment.verticalSpeed : null;
    });
    if (found === null) return;
    const { trace } = found.one;
    const perMinute = (value: number): string => `${formatNumber(Math.round(value / 10) * 10)} ft/min`;
    report({
      at: { step: near?.id ?? procedure.steps.at(-1)?.id ?? '', field: 'checkSees' },
      message: 'fast',
      data: {
        within: formatNumber(within),
        rate: perMinute(found.value),
        limit: perMinute(rate),
        weight: conditionsWords(trace.conditions),
      },
      witness: flightWitness(trace, [lastFeet(found.one, within)!], `so in ${sharesWords(found)}`),
      read: [rate, within, Math.round(found.value / 100)],
    });
  },
});
