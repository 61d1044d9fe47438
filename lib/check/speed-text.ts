// Speeds in written text: named ones with where they stand, and what is added to them.
import type { Gate, Term } from '../gate/syntax.ts';
import { kept } from './kept.ts';

export type NamedSpeed = {
  readonly name: 'VREF' | 'VMM' | 'VAPP' | 'VSR' | 'V2' | 'V1';
  readonly detent: string | null;
  readonly icing: boolean;
  /** What stands right behind, kt: `V2 + 15 kt`; 0 where nothing does. */
  readonly plus: number;
  readonly from: number;
  /** Behind name, detent and `icing`. */
  readonly to: number;
};

const NAMED =
  /\b(VREF|VMM|VAPP|VSR|V2|V1)(?: (?!icing\b)([A-Z]{1,2}\d{1,2}|[A-Z]{2,}))?( icing)?(?: ?([+-]) ?(\d+) ?kt)?/g;

/** Named speeds in a text, quoted words left out. */
export const namedSpeeds = kept((text: string): readonly NamedSpeed[] => {
  if (!text.includes('V')) return [];
  const plain = text.replaceAll(/"[^"]*"/g, (quoted) => ' '.repeat(quoted.length));
  return [...plain.matchAll(NAMED)].map((match) => {
    const [, name, detent, icing, sign, figure] = match;
    const end = match[1]!.length + (detent === undefined ? 0 : detent.length + 1) + (icing?.length ?? 0);
    const plus = figure === undefined ? 0 : Number(`${sign}${figure}`);
    const at = { from: match.index, to: match.index + end };
    return { name: name as NamedSpeed['name'], detent: detent ?? null, icing: icing !== undefined, plus, ...at };
  });
});

/** A speed written as `M 0.78`, `M.78`, `Mach 0.78`: the number; null where the text is none. */
export const machIn = kept((text: string): number | null => {
  const match = /\bM(?:ach)? ?(0?\.\d+)\b/i.exec(text);
  return match === null ? null : Number(match[1]);
});

/** An indicated speed in figures: `290 kt`; null for one with a name. */
export function knotsOf(term: Term): number | null {
  return term.kind === 'amount' && term.unit === 'kt' ? term.value : null;
}

/** What parts of a cue, all of which hold, say of the altitude: ft MSL or flight level in ft. */
export function altitudeBounds(
  parts: readonly Gate[],
): readonly { readonly atLeast: boolean; readonly feet: number }[] {
  return parts.flatMap((part) => {
    if (part.kind !== 'compare' || part.left.kind !== 'measure' || part.right.kind !== 'amount') return [];
    const { measure } = part.left;
    if (measure !== 'altitude' && measure !== 'flight-level') return [];
    const { value, reference } = part.right;
    const level = reference === 'FL' || measure === 'flight-level';
    const feet = level && value < 1_000 ? value * 100 : value;
    return [{ atLeast: part.op !== '<' && part.op !== '<=', feet }];
  });
}

/** A level in words: `FL 370`, `FL370`, `37 000 ft MSL`, in ft; null where the text has none. */
export const levelIn = kept((text: string): number | null => {
  const level = /\bFL ?(\d{2,3})\b/.exec(text);
  if (level !== null) return Number(level[1]) * 100;
  const feet = /(\d{1,2}[ \u00a0\u202f]?\d{3}|\d{3,5}) ?ft MSL\b/.exec(text);
  return feet === null ? null : Number(feet[1]!.replaceAll(/\D/g, ''));
});
