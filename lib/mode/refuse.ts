// What a mode table must not contain to be explored: asked before anything is built, so that no answer rests on a guess.
import type { ModeSet, ModeThen, ModeWhen } from '../aircraft/mode-set.ts';
import { parseGate } from '../gate/parse.ts';
import type { Refusal } from './compile.ts';
import { AXES, layoutOf } from './layout.ts';
import { ALTITUDE } from './rule-code.ts';

/** Words of an axis are one bit each in a guard. */
export const MOST_WORDS = 31;
/** Armed words of an axis: every subset is a state of its own. */
export const MOST_ARMED = 10;
/** Bits of a packed state: the sign bit stays free. */
export const MOST_BITS = 30;
/** Rules of a table, and outcomes of one case. */
export const MOST_RULES = 1_000;
export const MOST_OUTCOMES = 256;

const KEYS = {
  thrust: 'thrust',
  lateral: 'lateral',
  vertical: 'vertical',
  rel: 'rel',
  phase: 'phase',
  armed_vertical: 'armedVertical',
  armed_lateral: 'armedLateral',
} as const;

/** Pairs of effects that would both decide the same axis. */
const EITHER_OR: readonly (readonly (keyof ModeThen)[])[] = [
  ['thrust', 'thrust_unless_manual', 'thrust_by_vertical'],
  ['vertical', 'vertical_by_vertical', 'vertical_each'],
  ['rel', 'rel_each'],
];

export function refusals(modes: ModeSet, standard: string): readonly Refusal[] {
  const found: Refusal[] = [];
  const say = (at: string, because: string): void => void found.push({ at, because });
  if (!Object.hasOwn(modes.standards, standard)) say('standards', `the sheet has no guidance standard ${standard}`);
  sizes(modes, say);
  for (const list of ['climbing', 'descending', 'armsAlways'] as const) {
    unknown(modes[list], modes.vertical, `${list}`, 'vertical', say);
  }
  unknown([modes.manual], modes.thrust, 'manual', 'thrust', say);
  for (const [i, line] of modes.initial.entries()) {
    for (const [key, axis] of Object.entries(KEYS)) {
      const words = line[key as keyof typeof line];
      unknown(typeof words === 'string' ? [words] : words, modes[axis], `initial.${i}.${key}`, key, say);
    }
  }
  for (const [name, text] of Object.entries(modes.predicates ?? {})) {
    const [problem] = parseGate(text).problems;
    if (problem !== undefined) say(`predicates.${name}`, `it can't be read as a condition: ${problem.message}`);
  }
  const ids = new Set<string>();
  for (const rule of modes.rules) {
    if (ids.has(rule.id)) say(rule.id, `two rules are called ${rule.id}`);
    ids.add(rule.id);
    for (const part of 'any' in rule ? rule.any : [rule]) {
      whenRefusals(modes, rule.id, part.when, say);
      thenRefusals(modes, rule.id, part.then, standard, say);
    }
  }
  unknown(modes.levels ?? [], modes.vertical, 'levels', 'vertical', say);
  unknown(modes.unprotected ?? [], modes.thrust, 'unprotected', 'thrust', say);
  unknown(modes.reversions ?? [], [...ids], 'reversions', 'the list of rules', say);
  for (const [list, all] of [
    ['controls', modes.controls ?? []],
    ['environment', modes.environment ?? []],
  ] as const) {
    for (const [i, one] of all.entries()) unknown(one.rules, [...ids], `${list}.${i}`, 'the list of rules', say);
  }
  return found;
}

type Say = (at: string, because: string) => void;

function unknown(words: readonly string[], known: readonly string[], at: string, axis: string, say: Say): void {
  for (const word of words) if (!known.includes(word)) say(at, `${word} is no word of ${axis.replace('_', ' ')}`);
}

function sizes(modes: ModeSet, say: Say): void {
  for (const axis of [...AXES, 'armedVertical', 'armedLateral'] as const) {
    const words = modes[axis];
    const most = axis.startsWith('armed') ? MOST_ARMED : MOST_WORDS;
    if (words.length > most) say(axis, `${words.length} words; ${most} can be analysed`);
    if (new Set(words).size < words.length) say(axis, 'a word stands twice');
  }
  if (modes.rules.length > MOST_RULES) say('rules', `${modes.rules.length} rules; ${MOST_RULES} can be analysed`);
  if (modes.initial.length === 0) say('initial', 'no initial state is given');
  const { bits } = layoutOf(modes);
  if (bits > MOST_BITS) say('', `a state takes ${bits} bits; ${MOST_BITS} can be analysed`);
}

function whenRefusals(modes: ModeSet, id: string, when: ModeWhen, say: Say): void {
  const names = Object.keys(modes.predicates ?? {});
  unknown([...(when.holds ?? []), ...(when.fails ?? [])], names, `${id}.when`, 'the predicates', say);
  for (const [key, axis] of Object.entries(KEYS)) {
    const asked = when[key as keyof ModeWhen];
    if (asked === undefined) continue;
    unknown(Object.values(asked).flat(), modes[axis], `${id}.when.${key}`, key, say);
  }
}

function thenRefusals(modes: ModeSet, id: string, then: ModeThen, standard: string, say: Say): void {
  const at = `${id}.then`;
  for (const keys of EITHER_OR) {
    const given = keys.filter((key) => then[key] !== undefined);
    if (given.length > 1) say(at, `${given.join(' and ')} both decide one axis`);
  }
  const some = (word: string | undefined): readonly string[] => (word === undefined ? [] : [word]);
  const thrust = [...some(then.thrust), ...some(then.thrust_unless_manual), ...values(then.thrust_by_vertical)];
  unknown(thrust, modes.thrust, at, 'thrust', say);
  unknown(some(then.lateral), modes.lateral, at, 'lateral', say);
  const vertical = [...some(then.vertical), ...values(then.vertical_by_vertical), ...(then.vertical_each ?? [])];
  const asked = [...keys(then.thrust_by_vertical), ...keys(then.vertical_by_vertical)].filter(
    (word) => word !== 'else',
  );
  unknown([...vertical, ...asked], modes.vertical, at, 'vertical', say);
  unknown([...some(then.rel), ...(then.rel_each ?? [])], modes.rel, at, 'rel', say);
  unknown(some(then.phase), modes.phase, at, 'phase', say);
  unknown(
    [...(then.arm_vertical ?? []), ...(then.disarm_vertical ?? [])],
    modes.armedVertical,
    at,
    'armed vertical',
    say,
  );
  const lateral = [
    ...(then.arm_lateral ?? []),
    ...(then.arm_lateral_unless_active ?? []),
    ...(then.disarm_lateral ?? []),
  ];
  unknown(lateral, modes.armedLateral, at, 'armed lateral', say);
  if ((then.vertical_each?.length ?? 1) * (then.rel_each?.length ?? 1) > MOST_OUTCOMES)
    say(at, `more than ${MOST_OUTCOMES} outcomes`);
  if (then.only_if_rel_changes && then.rel === undefined && then.rel_each === undefined)
    say(at, 'only_if_rel_changes, and nothing changes rel: the rule could never act');
  if (then.alt === undefined) return;
  if (!modes.armedVertical.includes(ALTITUDE)) say(at, `alt is used, and ${ALTITUDE} is no armed word`);
  if (then.arm_vertical?.includes(ALTITUDE)) say(at, `alt and arm_vertical both decide ${ALTITUDE}`);
  if (typeof then.alt === 'object' && !Object.hasOwn(then.alt, standard))
    say(at, `alt does not say what happens in standard ${standard}`);
}

const values = (map: Readonly<Record<string, string>> | undefined): readonly string[] => Object.values(map ?? {});
const keys = (map: Readonly<Record<string, string>> | undefined): readonly string[] => Object.keys(map ?? {});
