/** The words of the notation: what each names, in the spelling that is printed, with the spellings also understood. */
import type { Axis, GateUnit, Measure, NamedAltitude, SpeedName } from './syntax.ts';

export type Meaning =
  | { readonly is: 'measure'; readonly name: Measure }
  | { readonly is: 'speed'; readonly name: SpeedName }
  | { readonly is: 'altitude'; readonly name: NamedAltitude }
  | { readonly is: 'target'; readonly name: 'target' | 'go-around target' | 'take-off target' };

/** Measures, as printed. */
export const MEASURE_WORDS: Readonly<Record<Measure, string>> = {
  speed: 'speed',
  'target-speed': 'target speed',
  mach: 'mach',
  'ground-speed': 'ground speed',
  height: 'height',
  'radio-height': 'radio height',
  altitude: 'altitude',
  'flight-level': 'flight level',
  'vertical-speed': 'vertical speed',
  thrust: 'thrust',
  weight: 'weight',
  temperature: 'temperature',
  wind: 'wind',
  distance: 'distance',
  deviation: 'deviation',
  bank: 'bank',
};

export const SPEED_WORDS: Readonly<Record<SpeedName, string>> = {
  V1: 'V1',
  VR: 'VR',
  V2: 'V2',
  VREF: 'VREF',
  VAPP: 'VAPP',
  VMM: 'VMM',
  VFE: 'VFE',
  VSR: 'VSR',
  'VLO-extend': 'VLO-extend',
  'VLO-retract': 'VLO-retract',
  VLE: 'VLE',
  VMO: 'VMO',
  MMO: 'MMO',
  MLE: 'MLE',
  VMCA: 'VMCA',
  VMCG: 'VMCG',
  'clean-speed': 'clean speed',
};
/** These mean nothing without a detent. */
export const DETENT_NEEDED: ReadonlySet<SpeedName> = new Set(['VMM', 'VFE', 'VSR']);
/** These may name one: the detent of the take-off or landing that is meant. */
export const DETENT_ALLOWED: ReadonlySet<SpeedName> = new Set([...DETENT_NEEDED, 'V1', 'VR', 'V2', 'VREF', 'VAPP']);

export const ALTITUDE_WORDS: Readonly<Record<NamedAltitude, string>> = {
  'acceleration-altitude': 'acceleration altitude',
  'climb-thrust-altitude': 'climb-thrust altitude',
  'transition-altitude': 'transition altitude',
  'transition-level': 'transition level',
  minima: 'minima',
  'selected-altitude': 'selected altitude',
  'missed-approach-altitude': 'missed approach altitude',
  'engine-out-acceleration-altitude': 'engine-out acceleration altitude',
};

export const TARGET_WORDS = ['target', 'go-around target', 'take-off target'] as const;

/** Spellings that mean the same and are printed in the form above. */
const ALSO: readonly (readonly [string, Meaning])[] = [
  ['outside air temperature', { is: 'measure', name: 'temperature' }],
  ['groundspeed', { is: 'measure', name: 'ground-speed' }],
  ['VLO retract', { is: 'speed', name: 'VLO-retract' }],
  ['VLO extend', { is: 'speed', name: 'VLO-extend' }],
  ['MDA', { is: 'altitude', name: 'minima' }],
  ['DA', { is: 'altitude', name: 'minima' }],
  ['thrust reduction altitude', { is: 'altitude', name: 'climb-thrust-altitude' }],
  ['missed-approach altitude', { is: 'altitude', name: 'missed-approach-altitude' }],
  ['takeoff target', { is: 'target', name: 'take-off target' }],
];

const keys = <K extends string>(record: Readonly<Record<K, string>>): readonly K[] => Object.keys(record) as K[];

/** Every printed spelling of something that stands in a comparison. */
export const PRINTED: readonly (readonly [string, Meaning])[] = [
  ...keys(MEASURE_WORDS).map((name) => [MEASURE_WORDS[name], { is: 'measure', name }] as const),
  ...keys(SPEED_WORDS).map((name) => [SPEED_WORDS[name], { is: 'speed', name }] as const),
  ...keys(ALTITUDE_WORDS).map((name) => [ALTITUDE_WORDS[name], { is: 'altitude', name }] as const),
  ...TARGET_WORDS.map((name) => [name, { is: 'target', name }] as const),
];

export type Phrase = { readonly words: readonly string[]; readonly spelt: string; readonly meaning: Meaning };

const phrase = ([spelt, meaning]: readonly [string, Meaning]): Phrase => ({
  words: spelt.toLowerCase().split(' '),
  spelt,
  meaning,
});
function byFirstWord(phrases: readonly Phrase[]): ReadonlyMap<string, readonly Phrase[]> {
  const groups = new Map<string, Phrase[]>();
  for (const each of phrases) {
    const first = each.words[0] ?? '';
    groups.set(
      first,
      [...(groups.get(first) ?? []), each].sort((a, b) => b.words.length - a.words.length),
    );
  }
  return groups;
}
/** By first word, the longest first: `target speed` is tried before `target`. */
export const PHRASES = byFirstWord(
  [...PRINTED, ...ALSO, ...keys(MEASURE_WORDS).map((name) => [name, { is: 'measure', name }] as const)].map(phrase),
);

export const AXES: readonly Axis[] = ['thrust', 'lateral', 'vertical'];

/** What may begin a condition, besides what may be measured. */
export const OPENERS = [
  'then',
  'after',
  'every',
  'heard',
  'event',
  'judged',
  'when',
  'flaps',
  'gear',
  'lateral',
  'vertical',
  'armed',
  'autopilot',
  'not',
  'no',
  'any',
  'all',
] as const;

/** Words that are never the name of a detent, a mode or a step unless quoted. */
export const RESERVED: ReadonlySet<string> = new Set([
  ...OPENERS,
  ...PRINTED.flatMap(([spelt]) => spelt.toLowerCase().split(' ')),
  'and',
  'or',
  'within',
  'of',
  'from',
  'to',
  'between',
  'max',
  'min',
  'increasing',
  'decreasing',
  'indicated',
  'selected',
  'up',
  'down',
  'on',
  'off',
  'icing',
  'flap',
  'cleared',
  'fl',
  'aal',
  'msl',
  'm',
]);

/** Units, with the spellings a pilot types. `M` and FL stand before the number. */
export const UNIT_WORDS: ReadonlyMap<string, GateUnit> = new Map<string, GateUnit>([
  ['kt', 'kt'],
  ['kts', 'kt'],
  ['knots', 'kt'],
  ['ft', 'ft'],
  ['feet', 'ft'],
  ['m', 'm'],
  ['metres', 'm'],
  ['nm', 'NM'],
  ['miles', 'NM'],
  ['km', 'km'],
  ['ft/min', 'ft/min'],
  ['fpm', 'ft/min'],
  ['%', '%'],
  ['s', 's'],
  ['sec', 's'],
  ['seconds', 's'],
  ['min', 'min'],
  ['minutes', 'min'],
  ['°c', '°C'],
  ['°', '°'],
  ['t', 't'],
  ['kg', 'kg'],
  ['lb', 'lb'],
]);

/** What an error says for each slot that the reader may ask for. */
export const SLOTS: ReadonlyMap<string, readonly string[]> = new Map<string, readonly string[]>([
  ['*measure', Object.values(MEASURE_WORDS)],
  ['*speed', Object.values(SPEED_WORDS)],
  ['*altitude', Object.values(ALTITUDE_WORDS)],
  ['*target', TARGET_WORDS],
  ['*unit', ['kt', 'ft', 'm', 'NM', 'km', 'ft/min', '%', 's', 'min', '°C', '°', 't', 'kg', 'lb']],
  ['*number', ['a number']],
  ['*detent', ['a detent']],
  ['*point', ['a point']],
  ['*step', ['a step']],
  ['*words', ['words in quotes']],
  ['*armed', ['an armed word']],
  ['*thrust', ['a thrust mode']],
  ['*lateral', ['a lateral mode']],
  ['*vertical', ['a vertical mode']],
]);
