import type { Aerodrome } from '../../library/library.ts';
import type { StepState } from '../../procedure/walk.ts';
import { formatNumber } from '../../units/format.ts';
import { altitudeOf, cardsAt } from '../cards.ts';
import { kept } from '../kept.ts';
import { defineRule } from '../rule.ts';
import { textsOf } from '../texts.ts';
import { wordsOf } from '../witness.ts';

const SELECTOR = /\b(altitude selector|selected altitude)\b/i;
const ESTABLISHED = /\b(established|final approach fix passed|FAF passed|on (the )?(course|glide|final))\b/i;
const MSA =
  /\b(?:MSA|sector minimum(?: altitude)?|minimum sector altitude)\b[^\d;.]{0,20}(\d{1,2}[ \u00a0\u202f]?\d{3}|\d{3,5}) ?ft\b/i;
const statedMsa = kept((text: string): number | null => {
  const match = MSA.exec(text);
  return match === null ? null : Number(match[1]!.replaceAll(/\D/g, ''));
});

export const terrainFloor = defineRule({
  id: 'terrain-floor',
  number: 75,
  severity: 'STOP',
  kind: 'N',
  stage: 'writing',
  phases: ['descent', 'approach', 'holding'],
  title: 'Floor of the terrain',
  says: 'Before the aircraft is established on the approach no selected altitude lies below the sector minimum of the card, or below the one that the procedure states.',
  why: 'An altitude of the final approach set too early is flown over ground that it does not clear.',
  source: { text: 'chart of the aerodrome, sector minimum', seen: false },
  needs: ['library'],
  reads: ['cue', 'only', 'verb', 'object', 'value'],
  messages: {
    low: '{value} is set before the aircraft is established; the sector minimum{place} is {minimum} ft MSL: the descent is not clear of the ground.',
  },
  examples: {
    bad: '{phases: [approach], title: Approach at QHLM, entry: {lateral: [HEADING]}, steps: [{cue: event "cleared approach", who: PF, verb: set, object: altitude selector, value: 2 000 ft MSL}]}',
    good: '{phases: [approach], title: Approach at QHLM, entry: {lateral: [HEADING]}, steps: [{cue: event "cleared approach", who: PF, verb: set, object: altitude selector, value: 2 500 ft MSL}]}',
  },
  run({ states, steps, procedure, library, unasked }, report) {
    const stated =
      textsOf(procedure, steps)
        .map(({ text }) => statedMsa(text))
        .find((each) => each !== null) ?? null;
    for (const here of states) {
      const { step } = here;
      if (step.verb !== 'set' && step.verb !== 'select') continue;
      if (!SELECTOR.test(step.object) || isEstablished(here)) continue;
      const at = { step: step.id as string, field: 'value' };
      for (const card of placesOf(cardsAt(library, procedure, step))) {
        const minimum = stated ?? card?.sectorMinimum ?? null;
        const found = altitudeOf(step.value, card);
        if (found === null) continue;
        if (minimum === null) {
          if (card !== null) unasked(`the card of ${card.code} gives no sector minimum`, at);
          continue;
        }
        if (found >= minimum) continue;
        const place = card === null ? '' : ` of ${card.code}`;
        const value = /\d/.test(step.value) ? step.value : `${step.value}, ${formatNumber(found)} ft MSL,`;
        const data = { value, place, minimum: formatNumber(minimum) };
        report({
          at,
          message: 'low',
          data,
          witness: wordsOf('value', step.value),
          cause: `terrain-floor${place}`,
          read: [minimum],
        });
      }
    }
  },
});

const placesOf = (cards: readonly Aerodrome[]): readonly (Aerodrome | null)[] => (cards.length === 0 ? [null] : cards);

/** On the course or the glide, past the fix, or in the missed approach, whose altitude is protected from its own point on. */
function isEstablished({ step, before, ways }: StepState): boolean {
  if (ESTABLISHED.test(`${step.cue} ${step.only}`) || before.goingAround) return true;
  const { lateral, vertical } = before.modes;
  const on = (words: readonly string[], word: string): boolean =>
    words.length > 0 && words.every((each) => each === word);
  if (on(lateral, 'COURSE') || on(vertical, 'GLIDE')) return true;
  return ways.every((way) =>
    way.some((part) => part.kind === 'mode' && ['COURSE', 'GLIDE'].some((word) => part.words.includes(word))),
  );
}
