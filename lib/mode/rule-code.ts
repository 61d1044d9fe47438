// One case of one rule, made into integers: a guard of masks, and effects that give every outcome of a packed state.
import type { ModeSet, ModeThen, ModeWhen } from '../aircraft/mode-set.ts';
import { AXES, bitsOf, type Field, type Layout, read, type StateAxis, write } from './layout.ts';

export type Guard = {
  /** For each axis the words that are allowed, one bit a word. */
  readonly allowed: Readonly<Record<StateAxis, number>>;
  readonly hasVertical: number;
  readonly lacksVertical: number;
  readonly hasLateral: number;
  readonly lacksLateral: number;
  /** Its predicates exclude each other: it is never true. Other predicates are free, and may be so at any moment. */
  readonly excluded: boolean;
};

/** Proves that predicates can't be as asked at one moment: all of the first and none of the second. Texts in gate notation. */
export type Excludes = (holds: readonly string[], fails: readonly string[]) => boolean;
/** Without a prover only a predicate and its own opposite exclude each other. */
export const sameText: Excludes = (holds, fails) => holds.some((text) => fails.includes(text));

export type RuleCase = {
  readonly guard: Guard;
  /** Appends each outcome of a state in which the guard holds; an outcome that is there already is not added. */
  readonly outcomes: (state: number, into: number[]) => void;
};

const every = (field: Field): number => bitsOf(field, field.words);

export function guardOf(modes: ModeSet, layout: Layout, when: ModeWhen, excludes: Excludes): Guard {
  const allowed = (axis: StateAxis): number => {
    const asked = when[axis];
    const field = layout[axis];
    if (asked === undefined) return every(field);
    return 'in' in asked ? bitsOf(field, asked.in) : every(field) & ~bitsOf(field, asked.not);
  };
  const armed = (asked: ModeWhen['armed_vertical'], field: Field): readonly [number, number] => {
    if (asked === undefined) return [0, 0];
    return 'has' in asked ? [bitsOf(field, asked.has), 0] : [0, bitsOf(field, asked.lacks)];
  };
  const [hasVertical, lacksVertical] = armed(when.armed_vertical, layout.armedVertical);
  const [hasLateral, lacksLateral] = armed(when.armed_lateral, layout.armedLateral);
  return {
    allowed: Object.fromEntries(AXES.map((axis) => [axis, allowed(axis)])) as Record<StateAxis, number>,
    hasVertical,
    lacksVertical,
    hasLateral,
    lacksLateral,
    excluded: excludes(texts(modes, when.holds), texts(modes, when.fails)),
  };
}

const texts = (modes: ModeSet, names: readonly string[] | undefined): readonly string[] =>
  (names ?? []).flatMap((name) => modes.predicates?.[name] ?? []);

export function holds(guard: Guard, layout: Layout, state: number): boolean {
  if (guard.excluded) return false;
  for (const axis of AXES) {
    if (((guard.allowed[axis] >>> read(layout[axis], state)) & 1) === 0) return false;
  }
  const vertical = read(layout.armedVertical, state);
  const lateral = read(layout.armedLateral, state);
  return (
    (vertical & guard.hasVertical) === guard.hasVertical &&
    (vertical & guard.lacksVertical) === 0 &&
    (lateral & guard.hasLateral) === guard.hasLateral &&
    (lateral & guard.lacksLateral) === 0
  );
}

/** What arms the selected altitude by itself: the armed word, and where the altitude has to lie for each vertical word. */
export type AltitudeArming = { readonly bit: number; readonly armed: (vertical: number, rel: number) => boolean };

/** The two words of `rel` on which the altitude is armed. */
const ABOVE = 'above';
const BELOW = 'below';
/** The armed word that `alt` speaks of. */
export const ALTITUDE = 'ALT';

export function altitudeArming(modes: ModeSet, layout: Layout): AltitudeArming {
  const climbing = bitsOf(layout.vertical, modes.climbing);
  const descending = bitsOf(layout.vertical, modes.descending);
  const always = bitsOf(layout.vertical, modes.armsAlways);
  const above = modes.rel.indexOf(ABOVE);
  const below = modes.rel.indexOf(BELOW);
  const armed = (vertical: number, rel: number): boolean =>
    (((rel === above ? climbing : rel === below ? descending : 0) | always) & (1 << vertical)) !== 0;
  return { bit: bitsOf(layout.armedVertical, [ALTITUDE]), armed };
}

/** The thrust word by the thrust and the vertical word before. */
function thrustTable(modes: ModeSet, then: ModeThen): (thrust: number, vertical: number) => number {
  const index = (word: string): number => modes.thrust.indexOf(word);
  const manual = index(modes.manual);
  if (then.thrust !== undefined) {
    const fixed = index(then.thrust);
    return () => fixed;
  }
  const by = then.thrust_by_vertical;
  if (by !== undefined) {
    const to = modes.vertical.map((word) => by[word] ?? by.else).map((word) => (word === undefined ? -1 : index(word)));
    return (thrust, vertical) => (to[vertical]! < 0 ? thrust : to[vertical]!);
  }
  if (then.thrust_unless_manual !== undefined) {
    const wanted = index(then.thrust_unless_manual);
    return (thrust) => (thrust === manual ? thrust : wanted);
  }
  return (thrust) => thrust;
}

function verticalTable(modes: ModeSet, then: ModeThen): readonly (readonly number[])[] {
  const index = (word: string): number => modes.vertical.indexOf(word);
  const by = then.vertical_by_vertical;
  return modes.vertical.map((word, before) => {
    if (then.vertical_each !== undefined) return then.vertical_each.map(index);
    const to = then.vertical ?? by?.[word] ?? by?.else;
    return [to === undefined ? before : index(to)];
  });
}

export function caseOf(
  modes: ModeSet,
  layout: Layout,
  standard: string,
  parts: { readonly when: ModeWhen; readonly then: ModeThen },
  excludes: Excludes,
): RuleCase {
  const { then } = parts;
  const thrust = thrustTable(modes, then);
  const verticals = verticalTable(modes, then);
  const rels = (then.rel_each ?? (then.rel === undefined ? [] : [then.rel])).map((word) => modes.rel.indexOf(word));
  const lateral = then.lateral === undefined ? -1 : modes.lateral.indexOf(then.lateral);
  const phase = then.phase === undefined ? -1 : modes.phase.indexOf(then.phase);
  const dropVertical = then.clear_vertical ? -1 : bitsOf(layout.armedVertical, then.disarm_vertical ?? []);
  const dropLateral = then.clear_lateral ? -1 : bitsOf(layout.armedLateral, then.disarm_lateral ?? []);
  const armVertical = bitsOf(layout.armedVertical, then.arm_vertical ?? []);
  const armLateral = bitsOf(layout.armedLateral, then.arm_lateral ?? []);
  const unlessActive = then.arm_lateral_unless_active ?? [];
  const byLateral = modes.lateral.map((word) =>
    bitsOf(
      layout.armedLateral,
      unlessActive.filter((armed) => armed !== word),
    ),
  );
  const alt = typeof then.alt === 'object' ? then.alt[standard] : then.alt;
  const arming = altitudeArming(modes, layout);

  const outcomes = (state: number, into: number[]): void => {
    const before = read(layout.vertical, state);
    const relBefore = read(layout.rel, state);
    const lateralNow = lateral < 0 ? read(layout.lateral, state) : lateral;
    let base = write(layout.thrust, state, thrust(read(layout.thrust, state), before));
    base = write(layout.lateral, base, lateralNow);
    if (phase >= 0) base = write(layout.phase, base, phase);
    const laterally = (read(layout.armedLateral, state) & ~dropLateral) | armLateral | byLateral[lateralNow]!;
    base = write(layout.armedLateral, base, laterally);
    const kept = (read(layout.armedVertical, state) & ~dropVertical) | armVertical;
    for (const vertical of verticals[before]!) {
      for (const rel of rels.length === 0 ? [relBefore] : rels) {
        if (then.only_if_rel_changes && rel === relBefore) continue;
        let armed = kept;
        if (alt !== undefined) armed &= ~arming.bit;
        if (alt === 're-evaluate' && arming.armed(vertical, rel)) armed |= arming.bit;
        const turned = write(layout.rel, write(layout.vertical, base, vertical), rel);
        const next = write(layout.armedVertical, turned, armed);
        if (!into.includes(next)) into.push(next);
      }
    }
  };
  return { guard: guardOf(modes, layout, parts.when, excludes), outcomes };
}
