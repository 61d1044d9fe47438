import type { StepState } from '../../procedure/walk.ts';
import { formatNumber } from '../../units/format.ts';
import type { FlownOne } from '../flown.ts';
import {
  conditionsWords,
  flightWitness,
  momentAt,
  sayUnflown,
  seconds,
  sharesWords,
  worstFlight,
} from '../flown-worst.ts';
import { defineRule } from '../rule.ts';

const gateOf = ({ trace }: FlownOne, { step }: StepState): number | null => {
  const found = trace.steps.find((one) => one.step === step.id);
  return found === undefined || found.left !== '' ? null : found.gate;
};
/** Whether the cue itself waits until the flap is where the step before put it. */
const waitsForFlap = ({ ways }: StepState): boolean =>
  ways.length > 0 && ways.every((way) => way.some((part) => part.kind === 'flaps' && part.how === 'indicated'));

export const fasterThanTheFlapMoves = defineRule({
  id: 'faster-than-the-flap-moves',
  number: 42,
  severity: 'ANSWER',
  kind: 'S',
  stage: 'submission',
  phases: 'all',
  title: 'Faster than the flap moves',
  says: 'Two flap selections, one behind the other, fall due further apart than the flap takes to move, or the second waits for the indication.',
  why: 'At a light weight a fixed acceleration altitude makes two retractions due within a second, while the flap needs many.',
  source: { text: 'take-off study of the reference', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'verb', 'object', 'value'],
  messages: {
    fast: '{second} falls due {apart} after {first} at {weight}; the flap takes {transit} to get there.',
  },
  examples: {
    bad: '{phases: [take-off], entry: {flaps: [F12], gear: down}, exit: {flaps: [F0]}, envelope: {weight: {from: 50000, to: 51000}, detents: [F12]}, steps: [{cue: height >= acceleration altitude and speed >= VMM F6, who: PM, verb: select, object: flap lever, value: F6}, {cue: height >= acceleration altitude and speed >= VMM F0, who: PM, verb: select, object: flap lever, value: F0}]}',
    good: '{phases: [take-off], entry: {flaps: [F12], gear: down}, exit: {flaps: [F0]}, envelope: {weight: {from: 50000, to: 51000}, detents: [F12]}, steps: [{cue: height >= acceleration altitude and speed >= VMM F6, who: PM, verb: select, object: flap lever, value: F6}, {cue: height >= acceleration altitude and speed >= VMM F0 and flaps F6 indicated, who: PM, verb: select, object: flap lever, value: F0}]}',
  },
  run({ states, flown, sheet, unasked }, report) {
    if (sayUnflown({ flown, unasked })) return;
    const levers = states.filter(({ selection }) => selection !== null);
    const order = sheet.detents.map(({ name }) => name);
    for (const [index, second] of levers.entries()) {
      const first = levers[index - 1];
      if (first === undefined || first.branch !== second.branch || waitsForFlap(second)) continue;
      // How long the first movement takes: every stop between, whichever way it goes.
      const moves = first.moves.map(({ from, to }) => {
        const [low, high] = [order.indexOf(from), order.indexOf(to)].sort((a, b) => a - b) as [number, number];
        return sheet.detents.slice(low, high).reduce((sum, detent) => sum + (detent.transitToNext?.value ?? 0), 0);
      });
      const transit = Math.max(0, ...moves);
      const found = worstFlight(flown, (one) => {
        const [a, b] = [gateOf(one, first), gateOf(one, second)];
        return a === null || b === null || b - a >= transit ? null : transit - (b - a);
      });
      if (found === null) continue;
      const { trace } = found.one;
      const [a, b] = [gateOf(found.one, first)!, gateOf(found.one, second)!];
      const name = ({ step }: StepState): string => `${step.object} ${step.value}`.trim();
      report({
        at: { step: second.step.id, field: 'cue' },
        message: 'fast',
        data: {
          ...{
            first: name(first),
            second: name(second),
            apart: `${formatNumber(Math.max(0, b - a), 1)} s`,
            transit: seconds(transit),
          },
          weight: conditionsWords(trace.conditions),
        },
        witness: flightWitness(
          trace,
          [momentAt(trace, a, `${name(first)} falls due`), momentAt(trace, b, `${name(second)} falls due`)],
          `so in ${sharesWords(found)}`,
        ),
        read: [transit, Math.round((b - a) * 10)],
      });
    }
  },
});
