// Defects of configuration, speed and performance.
import type { Sheet } from '../../../lib/aircraft/sheet.ts';
import type { Policy } from '../../../lib/policy/policy.ts';
import type { StepParts } from '../../../lib/procedure/build.ts';
import type { Procedure } from '../../../lib/procedure/procedure.ts';
import { atSteps, type Base, first, has, isFlap, isSpeed, last, type Mutant, one, type Plants } from './plant.ts';

const detents = ({ facts }: Base): readonly string[] => facts.sheet!.detents.map(({ name }) => name);
const setSpeed = (cue: string, value: string): StepParts => ({
  cue,
  who: 'PF',
  verb: 'set',
  object: 'speed selector',
  value,
});
const setAltitude = (value: string, cue = 'then'): StepParts => ({
  cue,
  who: 'PF',
  verb: 'set',
  object: 'altitude selector',
  value,
});
const ice = (value: string): StepParts => ({
  cue: 'event "visible moisture"',
  who: 'PM',
  verb: 'set',
  object: 'wing ice protection',
  value,
});

const lowered = (sheet: Sheet, by: number): Sheet => ({
  ...sheet,
  detents: sheet.detents.map((one) =>
    one.vfe === null ? one : { ...one, vfe: { ...one.vfe, value: one.vfe.value - by } },
  ),
});
const withSpeeds = (policy: Policy, speeds: Partial<Policy['speeds']>): Policy => ({
  ...policy,
  speeds: { ...policy.speeds, ...speeds },
});
const titled = (procedure: Procedure, more: string): Procedure => ({
  ...procedure,
  title: `${procedure.title}${more}`,
});
const also = (procedure: Procedure, more: string): Procedure => ({
  ...procedure,
  entry: { ...procedure.entry, also: `${procedure.entry.also} ${more}` },
});
const overweight = ({ procedure, facts }: Base, detent: string): Procedure => ({
  ...procedure,
  envelope: {
    ...procedure.envelope,
    detents: [detent],
    weight: { from: facts.sheet!.weights.minimumFlight.value, to: facts.sheet!.weights.maximumTakeOff.value },
  },
});

/** The lever goes one detent further than its order. */
function skipped(base: Base): readonly Mutant[] {
  const names = detents(base);
  const further = (value: string, retracts: boolean): string =>
    names[names.indexOf(value) + (retracts ? -1 : 1)] ?? value;
  return atSteps(
    base,
    (step) => isFlap(step) && names.includes(step.value) && step.label !== 'GA-05',
    ({ value, family }) => {
      const to = further(
        value,
        family.endsWith('-in') ||
          base.procedure.phases.includes('take-off') ||
          base.procedure.phases.includes('go-around'),
      );
      return { value: to, checkSees: `flaps ${to} indicated` };
    },
    'skips a detent',
  );
}

export const SPEEDS: Plants = {
  'flap-above-limit': (base) => [
    ...atSteps(base, isFlap, () => ({ cue: 'speed >= 260 kt' }), 'is selected at 260 kt and more'),
    ...atSteps(base, isFlap, () => ({ cue: 'speed <= 247 kt', say: '' }), 'is selected up to 247 kt'),
  ],
  'flap-too-slow': (base) =>
    atSteps(
      base,
      (step) => isFlap(step) && step.label !== 'GA-05',
      () => ({ cue: 'speed >= 70 kt and speed <= 100 kt' }),
      'is selected at 100 kt',
    ),
  'flap-skip': skipped,
  'band-too-thin': ({ procedure, facts }) =>
    procedure.steps.some(isFlap)
      ? [
          ...one('VFE lowered by 40 kt', procedure, { sheet: lowered(facts.sheet!, 40) }),
          ...one('a band of 90 kt is wanted', procedure, { policy: withSpeeds(facts.policy!, { bandMinimum: 90 }) }),
        ]
      : [],
  'flap-too-high': (base) => {
    const detent = detents(base)[1]!;
    const lever = base.facts.sheet!.detents.length === 4 ? 'flap handle' : 'flap lever';
    const out = (cue: string): StepParts => ({ cue, who: 'PM', verb: 'select', object: lever, value: detent });
    if (
      !has(base, 'climb', 'cruise', 'descent', 'holding', 'approach') ||
      !base.procedure.entry.flaps.includes(detents(base)[0]!)
    )
      return [];
    return [
      ...one('flap out above 25 000 ft', first(base.procedure, out('altitude >= 25 000 ft MSL and speed <= 190 kt'))),
      ...one('flap out from FL 280', first(base.procedure, out('flight-level >= FL 280 and speed <= 190 kt'))),
    ];
  },
  'target-outside-band': (base) => [
    ...atSteps(base, isSpeed, () => ({ value: '400 kt', checkSees: '' }), 'is 400 kt'),
    ...atSteps(base, isSpeed, () => ({ value: '90 kt', checkSees: '' }), 'is 90 kt'),
  ],
  'icing-increment': ({ procedure }) => [
    ...one('protection on, speeds without', first(procedure, ice('on'), setSpeed('then', 'VMM indicated + 20 kt'))),
    // Where the entry says that the increment is as the switch stands, either may be meant.
    ...(procedure.entry.also.includes('as the switch')
      ? []
      : one(
          'nobody has it on',
          first(procedure, setSpeed('then', `VMM ${procedure.entry.flaps[0] ?? ''} icing + 20 kt`)),
        )),
  ],
  'additive-busts-flap': (base) => {
    const landing = base.facts.sheet!.detents.at(-1)!.name;
    if (!has(base, 'landing')) return [];
    return [
      ...one('overweight, additive up to 40 kt', also(overweight(base, landing), 'Additive up to 40 kt.')),
      ...one('a margin of 40 kt is wanted', base.procedure, {
        policy: withSpeeds(base.facts.policy!, { additionMargin: 40 }),
      }),
    ];
  },
  'v-speeds-order': ({ procedure, facts, ...base }) => {
    const { limits } = facts.sheet!;
    const limit = (name: 'v1Floor' | 'vmca') => ({
      sheet: { ...facts.sheet!, limits: { ...limits, [name]: { ...limits[name], value: 135 } } },
    });
    if (!has({ procedure, facts, ...base }, 'take-off')) return [];
    return one('the V1 floor is 135 kt', procedure, limit('v1Floor'));
  },
  'initial-climb-speed': (base) => {
    const entry = (speed: string): Procedure => ({ ...base.procedure, entry: { ...base.procedure.entry, speed } });
    if (!has(base, 'take-off')) return [];
    return [...one('V2 - 5 kt', entry('V2 - 5 kt')), ...one('V2 + 30 kt', entry('V2 + 30 kt'))];
  },
  'area-speed-limit': ({ procedure }) => [
    ...one('290 kt at 8 000 ft', first(procedure, setSpeed('altitude >= 8 000 ft MSL', '290 kt'))),
    ...one('kept into 9 000 ft', last(procedure, setSpeed('altitude <= 9 000 ft MSL', '270 kt'))),
  ],
  'hold-and-turbulence': ({ procedure }) => [
    ...one('rough air at 90 kt', first(procedure, setSpeed('event "turbulence"', '90 kt'))),
    ...one('rough air at 70 kt, at the end', last(procedure, setSpeed('event "turbulence"', '70 kt'))),
  ],
  'cross-over-point': ({ procedure }) => [
    ...one(
      'Mach from FL 150',
      last(procedure, setSpeed('flight-level >= FL 120', '280 kt'), setSpeed('flight-level >= FL 150', 'M 0.70')),
    ),
    ...one(
      'knots from FL 380',
      last(procedure, setSpeed('flight-level >= FL 385', 'M 0.70'), setSpeed('flight-level <= FL 380', '280 kt')),
    ),
  ],
  'too-high-to-fly': (base) => {
    const bare = { ...base.procedure, weightLimit: '' };
    if (!has(base, 'climb', 'cruise')) return [];
    return [
      ...one('beyond the ceiling', last(bare, setSpeed('then', 'M 0.70'), setAltitude('FL 450'))),
      ...one('no climb left', last(bare, setSpeed('then', 'M 0.70'), setAltitude('FL 340'))),
    ];
  },
  'climb-gradient-short': (base) => {
    const unmarked = {
      ...base.procedure,
      weightLimit: 'a gradient of 2.4 % from the approved take-off calculation and landing calculation',
    };
    return [
      ...(has(base, 'take-off', 'approach', 'go-around') ? one('a gradient of no kind', unmarked) : []),
      ...(has(base, 'take-off') ? one('no limit on the weight', { ...base.procedure, weightLimit: '' }) : []),
    ];
  },
  'speedbrake-with-flap': ({ procedure }) => {
    const brake: StepParts = { cue: 'then', who: 'PF', verb: 'move', object: 'speedbrake lever', value: 'half' };
    return [
      ...one('out and never in', first(procedure, brake)),
      ...one('out at the end', last(procedure, { ...brake, value: 'full' })),
    ];
  },
  'wet-and-contaminated': (base) => [
    ...(has(base, 'take-off', 'approach', 'landing')
      ? atSteps(
          base,
          ({ only }) => only === '',
          () => ({ only: 'wet runway' }),
          'goes by "wet"',
        )
      : []),
    ...(has(base, 'landing') && !base.procedure.title.endsWith('QAMB')
      ? one('assumptions not stated', titled(base.procedure, ', wet runway'))
      : []),
  ],
  'high-aerodrome': (base) => {
    const bug = (value: string): StepParts => ({
      cue: 'then',
      who: 'PM',
      verb: 'set',
      object: 'altitude bug',
      value,
      only: 'at QSTR',
    });
    if (!has(base, 'take-off', 'approach', 'go-around')) return [];
    return [
      ...one('set above the ground', first(base.procedure, bug('1 000 ft AAL'))),
      ...one('set underground', first(base.procedure, bug('2 000 ft MSL'))),
    ];
  },
};
