import { formatNumber } from '../../units/format.ts';
import { cardsOf } from '../cards.ts';
import { type Height, noiseOf } from '../noise.ts';
import { defineRule } from '../rule.ts';
import { inOrder, wordsOf } from '../witness.ts';

export const reduceAndAccelerateOrder = defineRule({
  id: 'reduce-and-accelerate-order',
  number: 62,
  severity: 'STOP',
  kind: 'N',
  stage: 'writing',
  phases: ['take-off', 'initial climb'],
  title: 'Order of thrust reduction and acceleration',
  says: "Thrust is reduced and speed is gained in the order of the noise class on the card: close-in, thrust first and the acceleration higher; distant, the acceleration not above the thrust. Neither lies below the policy's lowest height nor above its latest.",
  why: 'Accelerating first at a close-in aerodrome flies flat and loud over the houses.',
  source: { text: 'ICAO Doc 8168, noise abatement departure examples 1 and 2', seen: false },
  needs: ['policy', 'library'],
  reads: ['cue', 'verb', 'object', 'value', 'expect'],
  messages: {
    order:
      '{code} is {class}: {first} ft AAL for {early} comes before {second} ft AAL for {late}, the wrong way round.',
    low: '{what} at {height} ft AAL lies below {limit} ft AAL, the lowest for a noise procedure.',
    late: '{what} at {height} ft AAL lies above {limit} ft AAL, where the noise procedure has to be over.',
  },
  examples: {
    bad: '{phases: [take-off], title: Departure at QHLM, entry: {flaps: [F12], vertical: [DEPART]}, steps: [{cue: then, who: PM, verb: set, object: acceleration height, value: 1 000 ft AAL}, {cue: then, who: PM, verb: set, object: thrust reduction height, value: 1 500 ft AAL}]}',
    good: '{phases: [take-off], title: Departure at QHLM, entry: {flaps: [F12], vertical: [DEPART]}, steps: [{cue: then, who: PM, verb: set, object: thrust reduction height, value: 1 500 ft AAL}, {cue: then, who: PM, verb: set, object: acceleration height, value: 3 000 ft AAL}]}',
  },
  run({ procedure, states, library, policy }, report) {
    if (procedure.class === 'engine-out' || /\bengine[- ]out\b/i.test(procedure.title)) return;
    const { lowest, latest } = policy.gates.noise;
    const cards = cardsOf(library, procedure);
    const said = new Set<string>();
    for (const card of cards.length === 0 ? [null] : cards) {
      const { reduce, accelerate } = noiseOf(states, card);
      for (const [what, heights] of [
        ['thrust reduction', reduce],
        ['acceleration', accelerate],
      ] as const) {
        for (const { feet, at, text } of heights) {
          const message = feet < lowest ? 'low' : feet > latest ? 'late' : null;
          const key = `${what} ${at.step} ${at.field}`;
          if (message === null || said.has(key)) continue;
          said.add(key);
          const limit = formatNumber(message === 'low' ? lowest : latest);
          const data = { what, height: formatNumber(feet), limit };
          report({ at, message, data, witness: wordsOf(at.field, text), read: [lowest, latest] });
        }
      }
      if (card === null || card.noiseClass === 'none') continue;
      const close = card.noiseClass === 'close-in';
      const [early, late] = close
        ? (['acceleration', 'thrust reduction'] as const)
        : (['thrust reduction', 'acceleration'] as const);
      const wrong = worstPair(close ? accelerate : reduce, close ? reduce : accelerate, close);
      if (wrong === null) continue;
      const [first, second] = wrong;
      const figures = { first: formatNumber(first.feet), second: formatNumber(second.feet) };
      const says = `${early} ${figures.first} ft AAL, ${late} ${figures.second} ft AAL`;
      const data = { code: card.code, class: card.noiseClass, early, late, ...figures };
      const witness = inOrder(first.at.step, second.at.step, says);
      report({ at: first.at, message: 'order', data, witness, read: [card.noiseClass] });
    }
  },
});

/** The pair that stands the wrong way round; at a close-in aerodrome the same height for both is wrong too. */
function worstPair(early: readonly Height[], late: readonly Height[], same: boolean): readonly [Height, Height] | null {
  for (const one of early) {
    const other = late.find(({ feet }) => one.feet < feet || (same && one.feet === feet));
    if (other !== undefined) return [one, other];
  }
  return null;
}
