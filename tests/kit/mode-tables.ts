// Small mode tables made from a seed: the same number, the same table, on every machine.
import type { ModeSet, ModeThen, ModeWhen } from '../../lib/aircraft/mode-set.ts';

export type Dice = {
  readonly below: (n: number) => number;
  readonly pick: <T>(list: readonly T[]) => T;
  readonly chance: (share: number) => boolean;
};

/** A linear congruential run; its high bits are good enough to shuffle words. */
export function dice(seed: number): Dice {
  let state = (seed * 2_654_435_761 + 12_345) >>> 0;
  const next = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  next();
  const below = (n: number): number => Math.floor(next() * n);
  return { below, pick: (list) => list[below(list.length)]!, chance: (share) => next() < share };
}

const WORDS = {
  thrust: ['HAND', 'PUSH', 'KEEP', 'REST'],
  lateral: ['WINGS', 'TRACK', 'BEAM'],
  vertical: ['NOSE', 'RISE', 'SINK', 'FLAT', 'DROP'],
  rel: ['above', 'below', 'near'],
  phase: ['ground', 'air'],
  armedVertical: ['ALT', 'DROP'],
  armedLateral: ['TRACK', 'BEAM'],
} as const;

function some<T>(roll: Dice, list: readonly T[]): T[] {
  const kept = list.filter(() => roll.chance(0.4));
  return kept.length > 0 ? kept : [roll.pick(list)];
}

function randomWhen(roll: Dice): ModeWhen {
  const one = (words: readonly string[], share: number) =>
    roll.chance(share) ? (roll.chance(0.5) ? { in: some(roll, words) } : { not: some(roll, words) }) : undefined;
  const armed = (words: readonly string[]) =>
    roll.chance(0.2) ? (roll.chance(0.5) ? { has: some(roll, words) } : { lacks: some(roll, words) }) : undefined;
  return without({
    thrust: one(WORDS.thrust, 0.3),
    lateral: one(WORDS.lateral, 0.3),
    vertical: one(WORDS.vertical, 0.6),
    rel: one(WORDS.rel, 0.2),
    phase: one(WORDS.phase, 0.2),
    armed_vertical: armed(WORDS.armedVertical),
    armed_lateral: armed(WORDS.armedLateral),
  });
}

function randomThen(roll: Dice): ModeThen {
  const maybe = <T>(share: number, make: () => T): T | undefined => (roll.chance(share) ? make() : undefined);
  const map = (keys: readonly string[], to: readonly string[]): Record<string, string> => ({
    [roll.pick(keys)]: roll.pick(to),
    ...(roll.chance(0.5) ? { else: roll.pick(to) } : {}),
  });
  const { thrust, vertical, rel } = WORDS;
  const thrustDeed = roll.below(5);
  const verticalDeed = roll.below(5);
  const relDeed = roll.below(6);
  const alt = roll.chance(0.3) ? (roll.chance(0.5) ? ('re-evaluate' as const) : ('disarm' as const)) : undefined;
  // Both would decide ALT: such a table is refused.
  const armable = alt === undefined ? WORDS.armedVertical : WORDS.armedVertical.slice(1);
  return without({
    thrust: thrustDeed === 0 ? roll.pick(thrust) : undefined,
    thrust_unless_manual: thrustDeed === 1 ? roll.pick(thrust) : undefined,
    thrust_by_vertical: thrustDeed === 2 ? map(vertical, thrust) : undefined,
    vertical: verticalDeed < 2 ? roll.pick(vertical) : undefined,
    vertical_by_vertical: verticalDeed === 2 ? map(vertical, vertical) : undefined,
    vertical_each: verticalDeed === 3 ? some(roll, vertical) : undefined,
    rel: relDeed === 0 ? roll.pick(rel) : undefined,
    rel_each: relDeed === 1 ? some(roll, rel) : undefined,
    only_if_rel_changes: relDeed < 2 && roll.chance(0.5) ? true : undefined,
    lateral: maybe(0.3, () => roll.pick(WORDS.lateral)),
    phase: maybe(0.1, () => roll.pick(WORDS.phase)),
    clear_vertical: maybe(0.1, () => true),
    clear_lateral: maybe(0.1, () => true),
    arm_vertical: maybe(0.2, () => some(roll, armable)),
    arm_lateral: maybe(0.2, () => some(roll, WORDS.armedLateral)),
    arm_lateral_unless_active: maybe(0.1, () => some(roll, WORDS.armedLateral)),
    disarm_vertical: maybe(0.2, () => some(roll, WORDS.armedVertical)),
    disarm_lateral: maybe(0.2, () => some(roll, WORDS.armedLateral)),
    alt,
  });
}

const without = <T extends object>(parts: T): T =>
  Object.fromEntries(Object.entries(parts).filter(([, value]) => value !== undefined)) as T;

/** The guard and the effects of a rule, under the names of the sheet. */
export function ruling(when: ModeWhen, deeds: ModeThen): { when: ModeWhen; then: ModeThen } {
  return Object.fromEntries([
    ['when', when],
    ['then', deeds],
  ]) as { when: ModeWhen; then: ModeThen };
}

/** A small table whose words are all right; 4 to 10 rules. */
export function randomTable(seed: number): ModeSet {
  const roll = dice(seed);
  const rules = Array.from({ length: 4 + roll.below(7) }, (_, index): ModeSet['rules'][number] => {
    const heading = {
      id: `R${index + 1}`,
      who: roll.pick(['crew', 'auto', 'environment'] as const),
      event: `event ${index + 1}`,
      effect: 'random',
    };
    const part = () => ruling(randomWhen(roll), randomThen(roll));
    return roll.chance(0.15) ? { ...heading, any: [part(), part()] } : { ...heading, ...part() };
  });
  const start = (rel: string) => ({
    thrust: 'HAND',
    lateral: 'WINGS',
    vertical: 'NOSE',
    armed_vertical: [],
    armed_lateral: [],
    rel,
    phase: 'ground',
  });
  return {
    source: 'made up',
    thrust: [...WORDS.thrust],
    lateral: [...WORDS.lateral],
    vertical: [...WORDS.vertical],
    armedVertical: [...WORDS.armedVertical],
    armedLateral: [...WORDS.armedLateral],
    rel: [...WORDS.rel],
    phase: [...WORDS.phase],
    climbing: ['RISE'],
    descending: ['SINK'],
    armsAlways: ['DROP'],
    manual: 'HAND',
    standards: { ONE: 'the only one' },
    spoken: {},
    initial: [start('above'), start('below')],
    rules,
    targets: {},
  };
}
