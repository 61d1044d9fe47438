// The gate at which an approach is judged stable: which steps are one, and what each of them looks at.

import { conjuncts } from '../procedure/cue.ts';
import { parsedCue } from '../procedure/parsed-cue.ts';
import type { Procedure, Step } from '../procedure/procedure.ts';
import { kept } from './kept.ts';

export type GateTold = {
  readonly step: string;
  /** Its label, else the title of its procedure. */
  readonly called: string;
  /** ft, from the cue; null where it says none. */
  readonly height: number | null;
  readonly elements: readonly string[];
  /** Such as `-5 +10`; '' where no window about VAPP is stated. */
  readonly window: string;
  /** ft/min; null where none is stated. */
  readonly sink: number | null;
};

/** What a gate looks at, in the order of the house; the words by which each is known. */
const ELEMENTS: readonly (readonly [string, RegExp])[] = [
  ['path', /\b(course|glide|path|track|localiser|deviations?|centre-?line|lateral and vertical)\b/i],
  ['speed', /\b(VAPP|VREF|speed)\b/i],
  ['detent', /\b(detent|flaps?|configuration|F\d{1,2})\b/i],
  ['gear', /\bgear\b/i],
  ['sink', /\b(sink|rate of descent|descent rate|vertical speed|ft\/min)\b/i],
  ['thrust', /\b(thrust|spooled|idle)\b/i],
  ['checklist', /\b(checklist|list) (is )?(complete|done)|\bchecklist\b/i],
];
export const ELEMENT_NAMES = ELEMENTS.map(([name]) => name);
const GATE = /\b(stable|stabilised|stabilized)\b.{0,20}\bgate\b|\bgate\b.{0,20}\b(stable|stabilised|stabilized)\b/i;
const JUDGES = new Set(['check', 'decide', 'call', 'read']);

export const isStableGate = (step: Step): boolean => JUDGES.has(step.verb) && GATE.test(step.object);

const figure = (text: string): number => Number(text.replaceAll(/[\s\u00a0\u202f]/g, '').replace(/[–−]/, '-'));
const AMOUNT = String.raw`([+–−-]?\s?\d{1,3}(?:[ \u00a0\u202f]\d{3})*)`;
const TWO = new RegExp(`VAPP\\s*${AMOUNT}(?: ?kt)?\\s*(?:to|and|/|,)\\s*(?:VAPP\\s*)?${AMOUNT} ?kt`, 'i');
const SINK = new RegExp(`(?:sink|descent|vertical speed)[^.;\\d]{0,30}${AMOUNT} ?ft/min`, 'i');

/** `VAPP - 5 kt to VAPP + 10 kt` as [below, above]; null where no window about VAPP is stated. kt. */
export const windowIn = kept((text: string): readonly [number, number] | null => {
  const match = TWO.exec(text);
  return match === null ? null : [figure(match[1]!), figure(match[2]!)];
});
export const sinkIn = kept((text: string): number | null => {
  const match = SINK.exec(text);
  return match === null ? null : Math.abs(figure(match[1]!));
});

/** The words in which a gate says what it looks at. */
export const gateText = (step: Step): string =>
  [step.value, step.checkSees, step.note, ...step.before.map(({ text }) => text)].join('; ');

function heightOf(step: Step): number | null {
  for (const part of conjuncts(parsedCue(step.cue).gate)) {
    if (part.kind !== 'compare' || part.left.kind !== 'measure' || part.right.kind !== 'amount') continue;
    if (part.left.measure === 'height' || part.left.measure === 'radio-height') return part.right.value;
  }
  return null;
}

export function gatesOf(procedure: Procedure, steps: readonly Step[]): readonly GateTold[] {
  return steps.filter(isStableGate).map((step) => {
    const text = gateText(step);
    return {
      step: step.id,
      called: step.label || procedure.title,
      height: heightOf(step),
      elements: ELEMENTS.filter(([, words]) => words.test(text)).map(([name]) => name),
      window:
        windowIn(text)
          ?.map((by) => (by > 0 ? `+${by}` : `${by}`))
          .join(' ') ?? '',
      sink: sinkIn(text),
    };
  });
}

/** The figures by which gates of one fleet are compared. */
export const gateFigures = ({ height, window, sink }: GateTold): string =>
  [height === null ? 'no height' : `${height} ft`, `VAPP ${window}`, sink === null ? 'no sink' : `${sink} ft/min`].join(
    ', ',
  );
