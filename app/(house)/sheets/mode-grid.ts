// The mode table read one axis at a time: which event takes which word to which, and what arms and disarms. Pure.
import type { ModeSet, ModeThen, ModeTransition, ModeWhen } from '../../../lib/aircraft/mode-set.ts';

export const AXES = ['thrust', 'lateral', 'vertical'] as const;
export type Axis = (typeof AXES)[number];

/** `event`: id of the transition. A word that stays is no move. */
export type Move = { readonly from: string; readonly to: string; readonly event: string };

type Case = { readonly when: ModeWhen; readonly then: ModeThen };
const casesOf = (transition: ModeTransition): readonly Case[] => ('any' in transition ? transition.any : [transition]);

function allowed(words: readonly string[], guard: ModeWhen[Axis]): readonly string[] {
  if (guard === undefined) return words;
  return 'in' in guard
    ? words.filter((word) => guard.in.includes(word))
    : words.filter((word) => !guard.not.includes(word));
}

export function movesOf(modes: ModeSet, axis: Axis): readonly Move[] {
  const found = modes.rules.flatMap((transition) =>
    casesOf(transition).flatMap(({ when, then }) =>
      allowed(modes[axis], when[axis]).flatMap((from) =>
        goesTo(modes, axis, from, { when, then })
          .filter((to) => to !== from)
          .map((to) => ({ from, to, event: transition.id })),
      ),
    ),
  );
  const seen = new Set<string>();
  return found.filter(({ from, to, event }) => {
    const key = `${from} ${to} ${event}`;
    return !seen.has(key) && seen.add(key);
  });
}

function goesTo(modes: ModeSet, axis: Axis, from: string, { when, then }: Case): readonly string[] {
  switch (axis) {
    case 'lateral':
      return then.lateral === undefined ? [] : [then.lateral];
    case 'vertical': {
      const by = then.vertical_by_vertical;
      const one = then.vertical ?? (by && (by[from] ?? by.else));
      return [...(one === undefined ? [] : [one]), ...(then.vertical_each ?? [])];
    }
    case 'thrust': {
      const unless = from === modes.manual ? undefined : then.thrust_unless_manual;
      const by = then.thrust_by_vertical;
      const byVertical = by ? allowed(modes.vertical, when.vertical).map((word) => by[word] ?? by.else) : [];
      return [...new Set([then.thrust, unless, ...byVertical])].filter((word) => word !== undefined);
    }
  }
}

/** `anew`: armed or not, decided by where the selected altitude lies. */
export type Arming = {
  readonly word: string;
  readonly arms: readonly string[];
  readonly disarms: readonly string[];
  readonly anew: readonly string[];
};

export function armingOf(modes: ModeSet): readonly Arming[] {
  const vertical = modes.armedVertical.map((word) => armingOfWord(modes, word, 'vertical'));
  return [...vertical, ...modes.armedLateral.map((word) => armingOfWord(modes, word, 'lateral'))];
}

/** The armed word that follows the selected altitude; `alt` in the published table. */
const FOLLOWS_ALTITUDE = 'ALT';

function armingOfWord(modes: ModeSet, word: string, axis: 'lateral' | 'vertical'): Arming {
  const events = (does: (then: ModeThen) => boolean): readonly string[] =>
    modes.rules.filter((one) => casesOf(one).some((a) => does(a.then))).map((one) => one.id);
  const has = (words: readonly string[] | undefined) => words?.includes(word) ?? false;
  const follows = axis === 'vertical' && word === FOLLOWS_ALTITUDE;
  const altDoes = (then: ModeThen, deed: string) =>
    follows &&
    (typeof then.alt === 'string' ? then.alt === deed : Object.values(then.alt ?? {}).includes(deed as never));
  return {
    word,
    arms: events((then) =>
      axis === 'vertical' ? has(then.arm_vertical) : has(then.arm_lateral) || has(then.arm_lateral_unless_active),
    ),
    disarms: events((then) =>
      axis === 'vertical'
        ? has(then.disarm_vertical) || then.clear_vertical === true || altDoes(then, 'disarm')
        : has(then.disarm_lateral) || then.clear_lateral === true,
    ),
    anew: events((then) => altDoes(then, 're-evaluate')),
  };
}

const NAMES: Readonly<Record<string, string>> = {
  rel: 'selected altitude',
  armed_vertical: 'armed vertically',
  armed_lateral: 'armed laterally',
};

/** A guard in words: `air · vertical not FLARE · ALT armed`. */
export function sayGuard(when: ModeWhen): string {
  return Object.entries(when)
    .map(([name, guard]) => {
      if (Array.isArray(guard)) return `${name === 'fails' ? 'not ' : ''}${guard.join(', ')}`;
      if ('has' in guard) return `${guard.has.join(', ')} armed`;
      if ('lacks' in guard) return `${guard.lacks.join(', ')} not armed`;
      const words = 'in' in guard ? guard.in.join(' or ') : `not ${guard.not.join(', ')}`;
      return name === 'phase' ? words : `${NAMES[name] ?? name} ${words}`;
    })
    .join(' · ');
}

export const guardsOf = (transition: ModeTransition): readonly string[] =>
  casesOf(transition).map(({ when }) => sayGuard(when) || 'always');
