// Right figures moved by a twentieth: the smallest defect that is asked for. Each adds to the plants of its check.
import { speedAt } from '../../../lib/aircraft/schedule.ts';
import type { StepParts } from '../../../lib/procedure/build.ts';
import type { Procedure } from '../../../lib/procedure/procedure.ts';
import { formatNumber } from '../../../lib/units/format.ts';
import { atSteps, type Base, first, has, isFlap, isSpeed, type Mutant, one, type Plants } from './plant.ts';

const UP = 1.05;
const DOWN = 0.95;
const DETENT_OF = /^(?:VMM|VREF) ([A-Z]+\d*)\b/;
const tens = (value: number, factor: number): string => formatNumber(Math.round((value * factor) / 10) * 10);

const vfeOf = ({ facts }: Base, detent: string): number =>
  facts.sheet!.detents.find(({ name }) => name === detent)?.vfe?.value ?? 0;
/** VMM at the top of the weights for which the base is meant, kt. */
function vmmOf({ facts, procedure }: Base, detent: string): number {
  const weight = procedure.envelope.weight?.to ?? facts.sheet!.weights.maximumTakeOff.value;
  return speedAt(facts.sheet!, { name: 'VMM', detent, icing: false }, { weight }) ?? 0;
}
const isExtending = (base: Base) =>
  base.procedure.phases.includes('approach') && !base.procedure.phases.includes('go-around');
const setSpeed = (cue: string, value: string): StepParts => ({
  cue,
  who: 'PF',
  verb: 'set',
  object: 'speed selector',
  value,
});
const isAt = ({ procedure }: Base, code: string): boolean => procedure.title.endsWith(code);
const renamed = (base: Base, more: Partial<Procedure>): Procedure => ({ ...base.procedure, ...more });

/** The gate as it is written, with one figure moved. */
const gateWith = (base: Base, from: string, to: string): readonly Mutant[] =>
  atSteps(
    base,
    ({ object, value }) => /\bstable gate\b/.test(object) && value.includes(from),
    ({ value }) => ({ value: value.replace(from, to) }),
    `says ${to} for ${from}`,
  );

export const FIVE_PER_CENT: Plants = {
  'flap-above-limit': (base) =>
    isExtending(base)
      ? atSteps(
          base,
          (step) => isFlap(step) && vfeOf(base, step.value) > 0,
          ({ value }) => ({ cue: `speed <= ${Math.round(vfeOf(base, value) * UP)} kt`, say: '' }),
          'is selected 5 % above VFE',
        )
      : [],
  'flap-too-slow': (base) =>
    isExtending(base)
      ? []
      : atSteps(
          base,
          (step) => isFlap(step) && /-in$/.test(step.family),
          ({ value }) => ({ cue: `speed >= ${Math.floor(vmmOf(base, value) * DOWN)} kt` }),
          'is selected 5 % below VMM',
        ),
  'target-outside-band': (base) =>
    // On the way to a wider flap a target below VMM of the narrow one is where the wide one has its own.
    isExtending(base)
      ? []
      : atSteps(
          base,
          (step) => isSpeed(step) && DETENT_OF.test(step.value),
          ({ value }) => ({ value: `${Math.floor(vmmOf(base, DETENT_OF.exec(value)![1]!) * DOWN)} kt` }),
          'is 5 % below VMM of the detent held',
        ),
  'climb-gradient-short': (base) => {
    const envelope = { ...base.procedure.envelope, temperature: { from: 25, to: 25 } };
    if (base.other || !has(base, 'take-off') || !isAt(base, 'QSTR')) return [];
    // 63.3 t, 67.3 t and 71.4 t are right there.
    return one('limits 5 % too heavy', renamed(base, { envelope, weightLimit: 'F18 66.5 t, F12 70.7 t, F6 75.0 t' }));
  },
  'cold-altitudes': (base) => {
    if (!has(base, 'landing') || !isAt(base, 'QVDS')) return [];
    const title = base.procedure.title.replace(/ at (\w+)$/, ' in −28 °C at $1');
    const fix = (feet: string): StepParts => ({
      cue: 'then',
      who: 'PM',
      verb: 'check',
      object: 'altitude',
      value: `final approach fix ${feet} ft MSL`,
    });
    return one(
      '5 % below what is to be set',
      first(renamed(base, { class: 'cold-weather', title }), fix(tens(1_800, DOWN))),
    );
  },
  'area-speed-limit': ({ procedure }) =>
    one('5 % above the limit', first(procedure, setSpeed('altitude >= 8 000 ft MSL', `${Math.floor(250 * UP)} kt`))),
  'initial-climb-speed': (base) => {
    // V2 is about 120 kt to 150 kt: a twentieth of it is 7 kt.
    if (!has(base, 'take-off') || base.procedure.class === 'engine-out') return [];
    return one('5 % below V2 + 15 kt', renamed(base, { entry: { ...base.procedure.entry, speed: 'V2 + 8 kt' } }));
  },
  'cross-over-point': (base) =>
    atSteps(
      base,
      ({ cue, value }) => /^mach/.test(cue) && /^M /.test(value),
      () => ({ cue: `altitude >= ${tens(29_600, DOWN)} ft MSL` }),
      'changes 5 % too low',
    ),
  'reduce-and-accelerate-order': (base) => {
    const height = (object: string, feet: string): StepParts => ({
      cue: 'then',
      who: 'PM',
      verb: 'set',
      object,
      value: `${feet} ft AAL`,
    });
    if (!has(base, 'take-off') || base.procedure.class === 'engine-out') return [];
    return [
      ...one('5 % below the lowest', first(base.procedure, height('thrust reduction height', tens(800, DOWN)))),
      ...one('5 % above the latest', first(base.procedure, height('acceleration height', tens(3_000, UP)))),
    ];
  },
  'engine-out-path': (base) =>
    has(base, 'take-off') && isAt(base, 'QVDS')
      ? one(
          '5 % below the card',
          first(base.procedure, {
            cue: 'then',
            who: 'PM',
            verb: 'check',
            object: 'card',
            value: `engine-out acceleration altitude ${tens(1_600, DOWN)} ft AAL`,
          }),
        )
      : [],
  'high-aerodrome': (base) =>
    isAt(base, 'QSTR')
      ? one(
          '5 % under the field',
          first(base.procedure, {
            cue: 'then',
            who: 'PM',
            verb: 'set',
            object: 'altitude bug',
            value: `${tens(5_430, DOWN)} ft MSL`,
          }),
        )
      : [],
  'gate-vs-minima': (base) =>
    isAt(base, 'QAMB')
      ? atSteps(
          base,
          ({ object }) => /\bstable gate\b/.test(object),
          () => ({ cue: `height <= ${tens(535, DOWN)} ft AAL` }),
          'lies 5 % below the minima',
        )
      : [],
  'terrain-floor': (base) => {
    if (!has(base, 'landing') || !isAt(base, 'QHLM')) return [];
    const away = renamed(base, { entry: { ...base.procedure.entry, lateral: base.other ? ['WINGS'] : ['HEADING'] } });
    return one(
      '5 % below the sector minimum',
      first(away, {
        cue: 'event "cleared approach"',
        who: 'PF',
        verb: 'set',
        object: 'altitude selector',
        value: `${tens(2_500, DOWN)} ft MSL`,
      }),
    );
  },
  'stable-gate-incomplete': (base) => gateWith(base, '1 000 ft/min', `${tens(1_000, UP)} ft/min`),
  'wind-limits-agree': ({ procedure, facts }) => {
    const shown = -facts.sheet!.limits.wind.from;
    return one(
      '5 % above what was shown',
      first(procedure, {
        cue: 'then',
        who: 'PM',
        verb: 'check',
        object: 'tailwind',
        value: `at most ${Math.ceil(shown * UP)} kt`,
      }),
    );
  },
};
