// Whether a figure in feet is a height or an altitude, and whether it says from where it is measured.

import type { Gate, GateProblem } from '../gate/syntax.ts';
import { conjuncts } from '../procedure/cue.ts';
import type { Figure } from './figures.ts';

const STATED = /^(AAL|MSL|AGL|RA|radio|above (the )?(aerodrome|ground|sea))\b/i;
const STATED_BEFORE = /\b(radio height|radio altimeter|radio)\b[^\d]*$/i;
const DIFFERENCE_BEFORE = new Set([
  ...['within', 'each', 'every', 'per', 'than', 'last', 'next', 'by', 'plus', 'minus', 'steps', 'loses', 'gains'],
  ...['additional', 'error'],
]);
const DIFFERENCE_BEHIND =
  /^(before|below|of|after|up(?! to)|down(?! to)|to go|to lose|higher|lower|per|apart|from|long|wide|range|or more (above|below)|above (the )?(selected|cleared|minima|obstacle|terrain))\b/i;
const ALTITUDE_OBJECT = /\b(altitude|height|level|minima|bug|gate|DA|MDA)\b/i;
const MEASURES = new Set(['height', 'altitude', 'radio-height']);
const FEET = new Set(['ft', 'feet']);
const METRES = new Set(['m', 'metres', 'metre']);

/** A bare figure that the cue compares with a height or an altitude. */
export function isBareAltitude(gate: Gate | null, problem: GateProblem): boolean {
  if (problem.code !== 'unit-missing') return false;
  return conjuncts(gate).some((part) => {
    if (part.kind !== 'compare' || part.left.kind !== 'measure' || !MEASURES.has(part.left.measure)) return false;
    const { span } = part.right;
    return span.from < problem.span.to && problem.span.from < span.to && part.right.kind === 'amount';
  });
}

/** A difference of heights, or a dimension, has no reference: `within 80 ft`, `1 000 ft before selected altitude`. */
const isDifference = (text: string, figure: Figure): boolean =>
  /^[+±-]/.test(text.slice(figure.from)) ||
  /[+-]\s*$/.test(text.slice(0, figure.from)) ||
  DIFFERENCE_BEFORE.has(figure.before) ||
  DIFFERENCE_BEHIND.test(figure.behind) ||
  /\b(up|down)\b(?! to\b)/i.test(text);

/** `feet`: a height without its reference. `bare`: a height without even its unit. null: neither. */
export function unreferenced(text: string, figure: Figure, about: string): 'feet' | 'bare' | null {
  const unit = figure.unit ?? '';
  const high = ALTITUDE_OBJECT.test(about);
  const feet = FEET.has(unit) || (METRES.has(unit) && high);
  const bare = figure.unit === null && figure.needsUnit && high;
  if (!feet && !bare) return null;
  if (STATED.test(figure.behind) || STATED_BEFORE.test(text.slice(0, figure.from))) return null;
  return isDifference(text, figure) ? null : bare ? 'bare' : 'feet';
}
