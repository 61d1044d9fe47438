// Ranges and lists as they are typed into the head of a procedure, and back.
import type { Envelope, Range } from '../../../../lib/procedure/procedure.ts';
import { formatNumber } from '../../../../lib/units/format.ts';
import { HEIGHT, MASS, type Measure, SPEED } from '../../../../lib/units/measure.ts';
import { parseDeviation } from '../../../../lib/units/notation.ts';
import { parseQuantity } from '../../../../lib/units/parse.ts';

export type RangeKind = Exclude<keyof Envelope, 'detents'>;

const MEASURED: Record<
  Exclude<RangeKind, 'temperature'>,
  { measure: Measure; unit: string; least: number; most: number }
> = {
  weight: { measure: MASS, unit: 't', least: 1_000, most: 1_000_000 },
  elevation: { measure: HEIGHT, unit: 'ft', least: -2_000, most: 20_000 },
  wind: { measure: SPEED, unit: 'kt', least: -100, most: 250 },
  level: { measure: HEIGHT, unit: 'ft', least: 0, most: 65_000 },
};

export function writeRange(kind: RangeKind, range: Range | null): string {
  if (!range) return '';
  const say = (n: number) => {
    if (kind === 'weight') return `${formatNumber(n / 1000, 1)} t`;
    if (kind === 'temperature') return `ISA${n < 0 ? '-' : '+'}${formatNumber(Math.abs(n))}`;
    return `${formatNumber(n)} ${kind === 'wind' ? 'kt' : 'ft'}`;
  };
  return `${say(range.from)} to ${say(range.to)}`;
}

/** `46.0 t to 66.8 t`. Empty: not limited. Both ends carry their unit; nothing is guessed. */
export function readRange(kind: RangeKind, typed: string): { value: Range | null } | { sentence: string } {
  if (typed.trim() === '') return { value: null };
  const ends = typed.split(/\s+to\s+|\s*\u2013\s*/);
  if (ends.length !== 2)
    return { sentence: 'Write both ends with “to” between them. What you typed is kept until you do.' };
  const [from, to] = ends.map((end) => readEnd(kind, end!));
  if (typeof from === 'string') return { sentence: from };
  if (typeof to === 'string') return { sentence: to };
  if (from === undefined || to === undefined || from > to) return { sentence: 'The first end must be the lower one.' };
  return { value: { from, to } };
}

function readEnd(kind: RangeKind, text: string): number | string {
  if (kind === 'temperature') {
    const read = parseDeviation(text);
    return read.ok ? read.value : read.error.sentence;
  }
  const { measure, unit, least, most } = MEASURED[kind];
  const read = parseQuantity(measure, text, { unit, least, most });
  return read.ok ? read.value.value : read.error.sentence;
}

export const writeList = (list: readonly string[]): string => list.join(', ');
export const readList = (typed: string): readonly string[] =>
  typed
    .split(/\s*[,;]\s*/)
    .map((word) => word.trim())
    .filter(Boolean);
