// Ranges of the envelope as text: `46 t to 78.6 t`. Decimal points are moved in the text, so a number read back is the
// number written, to the last bit.
import type { Range } from '../procedure/procedure.ts';

export type RangeKind = 'weight' | 'elevation' | 'temperature' | 'wind' | 'level';

/** What one end of a range looks like, said to the writer of a file. */
export const RANGE_LOOKS: Readonly<Record<RangeKind, string>> = {
  weight: '46 t to 78.6 t',
  elevation: '0 ft to 5430 ft',
  temperature: 'ISA-40 °C to ISA+35 °C',
  wind: '-10 kt to 40 kt',
  level: 'FL 60 to FL 390',
};

const NUMBER = String.raw`[-+]?\d[\d ]*(?:\.\d+)?(?:e[-+]?\d+)?`;

/** Kilograms, feet, °C from standard, knots, feet of pressure altitude; null where the text is no range of that kind. */
export function readRange(kind: RangeKind, text: string): Range | null {
  const ends = text.replaceAll('−', '-').split(/\s+to\s+/);
  if (ends.length !== 2) return null;
  const from = readEnd(kind, ends[0]!.trim());
  const to = readEnd(kind, ends[1]!.trim());
  return from === null || to === null || from > to ? null : { from, to };
}

export function writeRange(kind: RangeKind, range: Range): string {
  return `${writeEnd(kind, range.from)} to ${writeEnd(kind, range.to)}`;
}

function readEnd(kind: RangeKind, text: string): number | null {
  const number = (pattern: string, exponent = 0): number | null => {
    const digits = new RegExp(`^${pattern}$`).exec(text)?.[1]?.replaceAll(' ', '');
    return digits === undefined ? null : shift(digits, exponent);
  };
  if (kind === 'weight') return number(`(${NUMBER}) ?t`, 3) ?? number(`(${NUMBER}) ?kg`);
  if (kind === 'temperature') return text === 'ISA' ? 0 : number(`ISA ?(${NUMBER})(?: ?°C)?`);
  if (kind === 'wind') return number(`(${NUMBER}) ?kt`);
  if (kind === 'elevation') return number(`(${NUMBER}) ?ft`);
  return number(`FL ?(${NUMBER})`, 2) ?? number(`(${NUMBER}) ?ft`);
}

function writeEnd(kind: RangeKind, value: number): string {
  const moved = (places: number): string | null => {
    const text = String(shift(String(value), -places));
    return shift(text, places) === value ? text : null;
  };
  if (kind === 'weight') return moved(3) === null ? `${value} kg` : `${moved(3)} t`;
  if (kind === 'temperature') return `ISA${value < 0 ? '' : '+'}${value} °C`;
  if (kind === 'wind') return `${value} kt`;
  if (kind === 'elevation') return `${value} ft`;
  return value < 0 || moved(2) === null || !/^\d+$/.test(moved(2)!) ? `${value} ft` : `FL ${moved(2)}`;
}

/** The number of a text with its decimal point moved, without the rounding of a multiplication. */
function shift(digits: string, places: number): number {
  const [figures, exponent = '0'] = digits.split('e');
  return Number(`${figures}e${Number(exponent) + places}`);
}
