// Figures in written text, with the unit that stands beside them. Names that contain digits are not figures: detents, labels,
// runway designators, flight levels, V1, ISA+15; nor is anything in quotes, which is spoken.
import { kept } from './kept.ts';

export type Figure = {
  readonly from: number;
  /** End of the digits, and end of digits and unit together. */
  readonly digitsTo: number;
  readonly to: number;
  readonly value: number;
  readonly unit: string | null;
  /** The word before and the words behind, in lower case, for the sense of the figure. */
  readonly before: string;
  readonly behind: string;
  /** Counts and names of things need no unit: `2 attempts`, `heading 060`, `item 4`. */
  readonly needsUnit: boolean;
};

const UNITS =
  'kt|kts|knots?|ft/min|fpm|ft|feet|metres?|m|NM|nm|miles?|km/h|km|mph|%|seconds?|sec|s|minutes?|min|hours?|h|tonnes?|t|kg|lbs?|°C|°|degrees?|MHz|kHz|hPa|inHg|mb|g';
const UNIT_BEHIND = new RegExp(`^[ \\u00a0\\u202f]?(${UNITS})(?![\\w/])`);
const NUMBER = /[+±-]?\d{1,3}(?:[ \u00a0\u202f]\d{3})+(?!\d)(?:\.\d+)?|[+±-]?\d+(?:\.\d+)?/g;
const SECOND_END = /^\s*(?:to|and|or|–|-|\/|…)\s*[+±-]?\d+(?:[ \u00a0\u202f]\d{3})*(?:\.\d+)?/;
const NAMES =
  /\b(?:FL|flight level|M|mach|heading|track|course|radial|bearing|runway|rwy|code|standard|step|steps|item|items|list|number|no|page|section|table|channel|squawk|engine|generator|pump|system|flap|flaps|detent|issue|revision|direction|QNH|T|stage|phase|level)\.? ?$/i;
const JOINING = new Set([
  'then',
  'or',
  'and',
  'by',
  'at',
  'until',
  'before',
  'when',
  'in',
  'with',
  'for',
  'to',
  'if',
  'while',
  'as',
  'from',
  'on',
  'per',
  'after',
  'within',
  'than',
  'but',
  'both',
  'indicated',
  'aal',
  'msl',
  'minus',
  'plus',
  'passing',
  'once',
  ...[
    'of',
    'down',
    'up',
    'left',
    'right',
    'off',
    'each',
    'beyond',
    'behind',
    'ahead',
    'below',
    'above',
    'less',
    'more',
  ],
]);
/** Above this a bare whole number is no count of things. */
const LARGEST_COUNT = 20;

/** The text with quoted words blanked out, so that offsets stay. */
export function withoutSpoken(text: string): string {
  if (!text.includes('"') && !text.includes('“')) return text;
  return text.replace(/"[^"]*"|“[^”]*”/g, (spoken) => ' '.repeat(spoken.length));
}

const NONE: readonly Figure[] = [];
const figuresOf = kept(read);

export const figuresIn = (text: string): readonly Figure[] => (/\d/.test(text) ? figuresOf(text) : NONE);

function read(text: string): readonly Figure[] {
  const plain = withoutSpoken(text);
  const found: Figure[] = [];
  for (const match of plain.matchAll(NUMBER)) {
    const sign = /^[+±-]/.test(match[0]);
    const from = match.index;
    const left = plain.slice(0, from);
    const glued = /[\w.]$/.test(left) || (sign && /[\w)]$/.test(left));
    const digitsTo = from + match[0].length;
    const rest = plain.slice(digitsTo);
    if (glued || /^[A-Za-z_]/.test(rest.replace(UNIT_BEHIND, ' ')) || /^:\d\d/.test(rest)) continue;
    const unit = UNIT_BEHIND.exec(rest);
    const shared = unit === null ? SECOND_END.exec(rest) : null;
    const sharedUnit = shared === null ? null : UNIT_BEHIND.exec(rest.slice(shared[0].length));
    const previous = found.at(-1);
    const goesOn = previous !== undefined && /^\s*(?:to|–|-|\/|and|or)\s*$/.test(plain.slice(previous.to, from));
    const named = NAMES.test(left) || (goesOn && !previous.needsUnit && previous.unit === null);
    const behind = rest.replace(UNIT_BEHIND, '').trim().toLowerCase();
    const next = /^\s(\p{Ll}[\p{L}'-]*)/u.exec(rest)?.[1] ?? '';
    const value = Number(match[0].replace(/[^\d.-]/g, ''));
    const counted =
      Number.isInteger(value) &&
      Math.abs(value) <= LARGEST_COUNT &&
      !sign &&
      !/(?:[+-]|\bwithin|\bby|\bplus|\bminus)\s*$/.test(left) &&
      next !== '' &&
      !JOINING.has(next);
    found.push({
      from,
      digitsTo,
      to: digitsTo + (unit?.[0].length ?? 0),
      value,
      unit: unit?.[1] ?? sharedUnit?.[1] ?? null,
      before: /([\p{L}]+)[^\p{L}]*$/u.exec(left)?.[1]?.toLowerCase() ?? '',
      behind,
      needsUnit: !named && !counted,
    });
  }
  return found;
}
