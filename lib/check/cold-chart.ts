// The altitudes of a card that cold air takes down, what they have to be set to, and how cold a procedure says it is.
import { coldTerm, roundUp } from '../air/cold.ts';
import { plain } from '../base/arithmetic.ts';
import type { Aerodrome } from '../library/library.ts';
import type { Policy } from '../policy/policy.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { formatNumber } from '../units/format.ts';
import { kept } from './kept.ts';

export type Charted = {
  readonly name: string;
  /** By which a text means it. */
  readonly words: RegExp;
  /** ft MSL: on the chart, in the cold, and as it is set. */
  readonly charted: number;
  readonly corrected: number;
  readonly set: number;
};

const TEMPERATURE = /([−-]\d{1,2}) ?°C/g;
/** The coldest temperature that a text names, °C; null where it names none below nil. */
export const coldestIn = kept((text: string): number | null => {
  const found = [...text.matchAll(TEMPERATURE)].map((match) => Number(match[1]!.replace('−', '-')));
  return found.length === 0 ? null : Math.min(...found);
});

/** °C at the aerodrome: as the procedure says, else, in cold weather, as the card says, else from its envelope. */
export function temperatureAt(card: Aerodrome, procedure: Procedure): number | null {
  const { title, effectivity, entry, envelope } = procedure;
  const said = coldestIn(`${title} ${effectivity.note} ${entry.also}`);
  if (said !== null) return said;
  const cold = procedure.class === 'cold-weather' || /\bcold\b/i.test(title);
  if (cold && coldestIn(card.remark) !== null) return coldestIn(card.remark);
  if (!cold || envelope.temperature === null) return null;
  const standard = 15 - 0.001_981_2 * card.elevation;
  return Math.round(standard + envelope.temperature.from);
}

/** What the State or the chart lists: final approach fix, steps down, minima, missed approach, and nothing else. */
export function chartedIn(card: Aerodrome, temperature: number, policy: Policy): readonly Charted[] {
  const { selector, minima } = policy.gates.cold;
  const one = (name: string, words: RegExp, charted: number, step: number): Charted => {
    const corrected = charted + coldTerm(plain, charted - card.elevation, card.elevation, temperature);
    return { name, words, charted, corrected: Math.round(corrected), set: roundUp(corrected, step) };
  };
  return [
    one('final approach fix', /\bfinal approach fix|\bFAF\b/i, card.finalApproachFix, selector),
    ...card.stepDowns.map((altitude) => one('step-down', /\bsteps?[- ]downs?\b/i, altitude, selector)),
    one(card.minima.kind, /\bminima\b|\bM?DA\b/, card.minima.altitude, minima),
    one('missed-approach altitude', /\bmissed[- ]approach altitude\b/i, card.missedApproachAltitude, selector),
  ];
}

/** The same in the words of a message. */
export const coldWords = (each: Charted, card: Aerodrome, temperature: number) => ({
  name: each.name,
  code: card.code,
  temperature: `${temperature}`.replace('-', '−'),
  charted: formatNumber(each.charted),
  corrected: formatNumber(each.corrected),
  set: formatNumber(each.set),
});
