// The largest addition to VREF that a text allows: "additive up to 20 kt", "VAPP is VREF + 5 to 15 kt".
import type { Procedure, Step } from '../procedure/procedure.ts';
import { kept } from './kept.ts';
import { textsOf } from './texts.ts';

const ADDITIVE =
  /\b(?:additives?|additions?|increments? (?:to|on|over) VREF)\b[^.;\d]{0,30}?(?:\d+ (?:kt )?to )?(\d{1,2})(?: ?kt)?\b/gi;

const largest = kept((text: string): number | null => {
  if (!/addit|increment/i.test(text)) return null;
  const found = [...text.matchAll(ADDITIVE)].map((match) => Number(match[1]));
  return found.length === 0 ? null : Math.max(...found);
});

/** kt; null where nothing is stated. */
export function statedAdditive(procedure: Procedure, steps: readonly Step[]): number | null {
  const found = textsOf(procedure, steps)
    .map(({ text }) => largest(text))
    .filter((each) => each !== null);
  const named = steps
    .filter(({ object }) => /\badditive\b/i.test(object))
    .map(({ value }) => /(\d{1,2}) ?kt/.exec(value));
  const all = [...found, ...named.flatMap((match) => (match === null ? [] : [Number(match[1])]))];
  return all.length === 0 ? null : Math.max(...all);
}
