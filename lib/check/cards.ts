// Which aerodrome cards a procedure or a step is bound to, and what their texts say in figures: read here and nowhere else.
import type { Aerodrome, Library } from '../library/library.ts';
import type { Procedure, Step } from '../procedure/procedure.ts';
import { figuresIn } from './figures.ts';
import { kept } from './kept.ts';

const words = kept((text: string): ReadonlySet<string> => new Set(text.match(/[\p{L}\d]+/gu) ?? []));

function named(card: Aerodrome, text: string): boolean {
  if (text === '') return false;
  return words(text).has(card.code) || (card.name !== '' && text.includes(card.name));
}

/** Cards that the procedure is for: named in its title or in its effectivity. None: it is for no aerodrome in particular. */
export function cardsOf(library: Library, procedure: Procedure): readonly Aerodrome[] {
  const text = `${procedure.title} ${procedure.effectivity.note}`;
  return library.aerodromes.filter((card) => named(card, text));
}

/** Cards that a step is for: those that its condition names, else those of the procedure. */
export function cardsAt(library: Library, procedure: Procedure, step: Step): readonly Aerodrome[] {
  const own = step.only === '' ? [] : library.aerodromes.filter((card) => named(card, step.only));
  return own.length > 0 ? own : cardsOf(library, procedure);
}

/** In per cent; null where the text does not mark such a figure. */
export type Obstacle = { readonly net: number | null; readonly gross: number | null };

const MARKED = /\b(net|gross) (\d+(?:\.\d+)?) ?%/gi;

/** The climb that the obstacle of a card asks for; null where the card names none. */
export const obstacleOf = kept((text: string): Obstacle | null => {
  const found = new Map([...text.matchAll(MARKED)].map((match) => [match[1]!.toLowerCase(), Number(match[2])]));
  return found.size === 0 ? null : { net: found.get('net') ?? null, gross: found.get('gross') ?? null };
});

export type MissedGradient = { readonly percent: number; readonly only: string };

/** `2.5 %; 3.0 % for DA 5 630 ft MSL`: charted missed-approach gradients, with what each is for. Gross by house policy. */
export const missedGradients = kept((text: string): readonly MissedGradient[] =>
  text.split(';').flatMap((part) => {
    const match = /(\d+(?:\.\d+)?) ?%(?: for (.+))?/.exec(part);
    return match === null ? [] : [{ percent: Number(match[1]), only: match[2]?.trim() ?? '' }];
  }),
);

/** The card whose figure is the highest; null of none. */
export const highestBy = (cards: readonly Aerodrome[], of: (card: Aerodrome) => number): Aerodrome | null =>
  cards.reduce<Aerodrome | null>((most, card) => (most !== null && of(most) >= of(card) ? most : card), null);

/** ft MSL; null where the text names no altitude that is known. */
export function altitudeOf(text: string, card: Aerodrome | null): number | null {
  const figure = figuresIn(text).find(({ unit, behind }) => unit === 'ft' && /^MSL\b/i.test(behind));
  if (figure !== undefined) return figure.value;
  if (card === null || /\bmissed[- ]approach\b/i.test(text)) return null;
  return /\bfinal approach fix\b/i.test(text) ? card.finalApproachFix : null;
}
