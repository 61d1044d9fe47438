// The figures of a sheet as lines to read: walked from its data, so that a figure that is added has its line at once. Pure.
import { formatNumber, typeset } from '../../../lib/units/format.ts';

export type Figure = {
  /** Place in the sheet, such as `limits.gear.vle`. */
  readonly path: string;
  readonly label: string;
  /** With its unit, as printed. */
  readonly says: string;
  readonly source: string;
  readonly note: string;
};

const WORDS: Readonly<Record<string, string>> = {
  vmo: 'VMO',
  mmo: 'MMO',
  vmcg: 'VMCG',
  vmca: 'VMCA',
  v1Floor: 'Lowest V1',
  vloExtend: 'VLO, extending',
  vloRetract: 'VLO, retracting',
  vle: 'VLE',
  mle: 'MLE',
  extend: 'Extending takes',
  retract: 'Retracting takes',
  flapAltitude: 'Flap not used above',
  elevation: 'Aerodrome elevation',
  temperature: 'Temperature from standard',
  wind: 'Wind along, head wind positive',
  maximumTakeOff: 'Maximum take-off',
  maximumLanding: 'Maximum landing',
  maximumZeroFuel: 'Maximum zero fuel',
  minimumFlight: 'Lowest in flight',
  empty: 'Empty',
  cd0: 'Drag without lift',
  static: 'Static thrust',
  mach: 'Factor by Mach',
  wave: 'Wave drag',
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A name of the data as words: `maximumAltitude` is Maximum altitude. */
export const wordOf = (key: string): string =>
  WORDS[key] ?? capital(key.replace(/(?<=[a-z0-9])[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`));

/** No place is cut off: what is typed in the sheet is what stands on the page. */
export function sayNumber(value: number): string {
  const places = String(value).split('.')[1]?.length ?? 0;
  return typeset(formatNumber(value, places));
}

/** A unit `1` is a ratio and is not written; Mach goes before the figure. */
export function withUnit(said: string, unit: string): string {
  if (unit === '1' || unit === '') return said;
  if (unit === 'M') return `M\u00a0${said}`;
  return unit === '°' ? `${said}°` : `${said}\u00a0${unit}`;
}

type Data = Readonly<Record<string, unknown>>;

/** Every figure under a part of a sheet that has a source of its own. */
export function figuresUnder(part: unknown, path: string, above = ''): readonly Figure[] {
  if (part === null || typeof part !== 'object' || Array.isArray(part)) return [];
  const data = part as Data;
  const key = path.split('.').at(-1)!;
  if (typeof data.source === 'string') {
    const label = above === '' ? wordOf(key) : `${above}: ${wordOf(key).replace(/^[A-Z](?=[a-z])/, lower)}`;
    const note = typeof data.note === 'string' ? data.note : '';
    return [{ path, label, says: sayFigure(data), source: data.source, note }];
  }
  const name = path.includes('.') ? wordOf(key) : '';
  return Object.entries(data).flatMap(([inner, value]) => figuresUnder(value, `${path}.${inner}`, name));
}

const lower = (letter: string): string => letter.toLowerCase();

function sayFigure(data: Data): string {
  const unit = typeof data.unit === 'string' ? data.unit : '';
  if (typeof data.value === 'number') return withUnit(sayNumber(data.value), unit);
  if (typeof data.from === 'number' && typeof data.to === 'number')
    return `${sayNumber(data.from)} to ${withUnit(sayNumber(data.to), unit)}`;
  if (Array.isArray(data.polynomial)) return sayPolynomial(data.polynomial as number[]);
  if (Array.isArray(data.at) && Array.isArray(data.gives)) return sayTable(data.at, data.gives, unit);
  return Object.entries(data)
    .filter((entry): entry is [string, number] => typeof entry[1] === 'number')
    .map(([name, value]) => `${wordOf(name).toLowerCase()} ${sayNumber(value)}`)
    .join(', ');
}

const sayTable = (at: readonly number[], gives: readonly number[], unit: string): string =>
  at.map((point, i) => `${sayNumber(gives[i] ?? Number.NaN)} at ${withUnit(sayNumber(point), unit)}`).join(', ');

const POWERS = ['', ' M', ' M²', ' M³', ' M⁴', ' M⁵'];

/** `1 − 0.95 M + 0.45 M²` */
export function sayPolynomial(factors: readonly number[]): string {
  return factors
    .map((factor, i) => {
      const size = `${sayNumber(Math.abs(factor))}${POWERS[i] ?? ''}`;
      if (i === 0) return factor < 0 ? `−${size}` : size;
      return factor < 0 ? `− ${size}` : `+ ${size}`;
    })
    .join(' ');
}
