// Gradients in written text that say neither gross nor net.
import type { Procedure, Step } from '../procedure/procedure.ts';
import { kept } from './kept.ts';
import { type Text, textsOf } from './texts.ts';

const GRADIENT = /\b(gradient|segment|climb limit)s?\b/i;
const FIGURE = /\d+(?:\.\d+)? ?%/g;
const MARK = /\b(gross|net)\b/i;

/** In a sentence about gradients each figure has its mark before or behind it, up to the next figure. */
const unmarked = kept((text: string): readonly { readonly from: number; readonly to: number }[] => {
  if (!text.includes('%') || !GRADIENT.test(text)) return [];
  const figures = [...text.matchAll(FIGURE)];
  return figures.flatMap((match, index) => {
    const sentence = text.slice(text.lastIndexOf('. ', match.index) + 1).split(/\.\s/)[0] ?? '';
    if (!GRADIENT.test(sentence)) return [];
    const before = text.slice(figures[index - 1]?.index ?? 0, match.index);
    const behind = text.slice(match.index, figures[index + 1]?.index ?? text.length);
    return MARK.test(before) || MARK.test(behind) ? [] : [{ from: match.index, to: match.index + match[0].length }];
  });
});

export function unmarkedGradients(
  procedure: Procedure,
  steps: readonly Step[],
): readonly (Text & { readonly from: number; readonly to: number })[] {
  return textsOf(procedure, steps).flatMap(({ at, text }) => unmarked(text).map((found) => ({ at, text, ...found })));
}
