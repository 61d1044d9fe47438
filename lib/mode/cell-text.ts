// The cells of a rule as people type them, into a guard and effects and back. A cell that can't be read yet gives a sentence and
// no value: the text itself is kept by whoever holds it.
import type { ModeThen, ModeWhen } from '../aircraft/mode-set.ts';
import { nearest } from '../gate/nearest.ts';
import type { StateAxis } from './layout.ts';
import { ALTITUDE } from './rule-code.ts';

/** The words that a cell may use, by axis. */
export type KnownWords = Readonly<Record<StateAxis | 'armed_vertical' | 'armed_lateral', readonly string[]>> & {
  readonly manual: string;
  readonly standards: readonly string[];
  readonly predicates: readonly string[];
};
export type Say = (says: string) => void;

/** Words of the notation itself: no axis may have a word that is called so. */
export const NOTATION: readonly string[] = ['not', 'or', 'in', 'else', 'unless', 'none', 'anew', 'off', 'if'];
const NONE = 'none';
const UNLESS_ACTIVE = 'unless active';
const IF_CHANGED = 'if it changes';

export const partsOf = (text: string): readonly string[] =>
  text
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '');
const choicesOf = (text: string): readonly string[] => text.split(/\s+or\s+/).map((part) => part.trim());
const negated = (part: string): string | null => /^not\s+(.*)$/s.exec(part)?.[1] ?? null;
const listed = (words: readonly string[]): string => (words.length === 0 ? 'there are none' : words.join(', '));

/** The word, or a sentence and the word as it was typed. */
export function known(word: string, words: readonly string[], axis: string, say: Say): string {
  if (words.includes(word)) return word;
  const near = nearest(word, words);
  const hint = near === null ? `there are: ${listed(words)}` : `was ${near} meant?`;
  say(word === '' ? `a ${axis} word is missing` : `"${word}" is no ${axis} word; ${hint}`);
  return word;
}

const named = (axis: string): string => axis.replace('rel', 'selected altitude').replace('_', ' ');

/** `DEPART, LIFT`: one of these; `not FLARE, GLIDE`: none of these; nothing: any. */
export function readGuard(text: string, axis: StateAxis, words: KnownWords, say: Say): ModeWhen[StateAxis] {
  const parts = partsOf(text).flatMap(choicesOf);
  const [first] = parts;
  if (first === undefined) return undefined;
  const none = negated(first) !== null;
  if (!none && parts.some((part) => negated(part) !== null)) {
    say('one of these words, or "not" and words that it must not be: both in one cell can not be meant');
    return undefined;
  }
  const list = parts.map((part) => known(negated(part) ?? part, words[axis], named(axis), say));
  return none ? { not: list } : { in: list };
}

/** `ALT`: must be armed; `not GLIDE`: must not be. */
export function readArmedGuard(
  text: string,
  axis: 'armed_vertical' | 'armed_lateral',
  words: KnownWords,
  say: Say,
): ModeWhen['armed_vertical'] {
  const parts = partsOf(text);
  const [first] = parts;
  if (first === undefined) return undefined;
  const lacks = negated(first) !== null;
  if (!lacks && parts.some((part) => negated(part) !== null)) {
    say('words that must be armed, or "not" and words that must not be: for both, add a case');
    return undefined;
  }
  const list = parts.map((part) => known(negated(part) ?? part, words[axis], named(axis), say));
  return lacks ? { lacks: list } : { has: list };
}

/** `flaps out, not low speed`: names of predicates that must be so, and that must not. */
export function readPredicates(text: string, words: KnownWords, say: Say): Pick<ModeWhen, 'holds' | 'fails'> {
  const holds: string[] = [];
  const fails: string[] = [];
  for (const part of partsOf(text)) {
    const not = negated(part);
    (not === null ? holds : fails).push(known(not ?? part, words.predicates, 'predicate', say));
  }
  return { ...(holds.length > 0 && { holds }), ...(fails.length > 0 && { fails }) };
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

/** Puts an effect down once; a second one of the same kind gets a sentence. */
function putter(into: Writable<ModeThen>, say: Say) {
  return <K extends keyof ModeThen>(key: K, value: ModeThen[K], what: string): void => {
    if (into[key] !== undefined) say(`${what} is decided twice`);
    into[key] = value;
  };
}

/** `CLIMB`, `GOVERN unless MANUAL`, `CLIMB in ASCENT, IDLE in DESCENT or FLARE, else GOVERN`. */
export function readThrust(text: string, words: KnownWords, say: Say): ModeThen {
  const then: Writable<ModeThen> = {};
  const put = putter(then, say);
  const by: Record<string, string> = {};
  for (const part of partsOf(text)) {
    if (readBy(part, 'thrust', words, by, say)) continue;
    const unless = /^(.*?)\s+unless\s+(.*)$/.exec(part);
    if (unless === null) put('thrust', known(part, words.thrust, 'thrust', say), 'thrust');
    else {
      if (unless[2] !== words.manual)
        say(`after "unless" stands the word that the guidance leaves alone: ${words.manual}`);
      put('thrust_unless_manual', known(unless[1]!, words.thrust, 'thrust', say), 'thrust');
    }
  }
  return Object.keys(by).length > 0 ? { ...then, thrust_by_vertical: by } : then;
}

/** `LEVEL`, `RATE-UP or RATE-DN` (either may come), `RATE-DN in DESCENT, else RATE-UP` (by the vertical word before). */
export function readVertical(text: string, words: KnownWords, say: Say): ModeThen {
  const then: Writable<ModeThen> = {};
  const put = putter(then, say);
  const by: Record<string, string> = {};
  for (const part of partsOf(text)) {
    if (readBy(part, 'vertical', words, by, say)) continue;
    const each = choicesOf(part).map((word) => known(word, words.vertical, 'vertical', say));
    if (each.length > 1) put('vertical_each', each, 'vertical');
    else put('vertical', each[0]!, 'vertical');
  }
  return Object.keys(by).length > 0 ? { ...then, vertical_by_vertical: by } : then;
}

/** A part that goes by the vertical word before; false where it is none. */
function readBy(
  part: string,
  axis: 'thrust' | 'vertical',
  words: KnownWords,
  by: Record<string, string>,
  say: Say,
): boolean {
  const other = /^else\s+(.*)$/.exec(part);
  const where = /^(\S+)\s+in\s+(.*)$/.exec(part);
  if (other === null && where === null) return false;
  const to = known((other ?? where)![1]!, words[axis], axis, say);
  const from =
    other === null ? choicesOf(where![2]!).map((word) => known(word, words.vertical, 'vertical', say)) : ['else'];
  for (const word of from) {
    if (Object.hasOwn(by, word)) say(`what follows on ${word} is said twice`);
    by[word] = to;
  }
  return true;
}

/** `near`, `above or below` (either may come), `above or below, if it changes` (only one that differs). */
export function readRel(text: string, words: KnownWords, say: Say): ModeThen {
  const then: Writable<ModeThen> = {};
  const put = putter(then, say);
  for (const part of partsOf(text)) {
    if (part === IF_CHANGED) {
      put('only_if_rel_changes', true, `"${IF_CHANGED}"`);
      continue;
    }
    const each = choicesOf(part).map((word) => known(word, words.rel, 'selected altitude', say));
    if (each.length > 1) put('rel_each', each, 'the selected altitude');
    else put('rel', each[0]!, 'the selected altitude');
  }
  return then;
}

/** One word, which the axis then has. */
export function readWord(text: string, axis: 'lateral' | 'phase', words: KnownWords, say: Say): ModeThen {
  const word = text.trim();
  return word === '' ? {} : { [axis]: known(word, words[axis], axis, say) };
}

const DEEDS = { anew: 're-evaluate', off: 'disarm' } as const;
type Deed = (typeof DEEDS)[keyof typeof DEEDS];

/** `ALT anew`: the deed on the selected altitude; null where the part says something else. */
function readDeed(part: string, words: KnownWords, say: Say): Deed | null {
  const found = /^(\S+)\s+(anew|off)$/.exec(part);
  if (found === null) return null;
  if (found[1] !== ALTITUDE)
    say(`only ${ALTITUDE} is decided anew or switched off by where the selected altitude lies`);
  else known(ALTITUDE, words.armed_vertical, 'armed vertical', say);
  return DEEDS[found[2] as keyof typeof DEEDS];
}

/** `GLIDE` arms it, `not GLIDE` disarms it, `none` clears all, `ALT anew` arms or drops it by where the altitude lies,
 *  `A: ALT anew, B: ALT off` says what each standard does. */
export function readArmedVertical(text: string, words: KnownWords, say: Say): ModeThen {
  const then: Writable<ModeThen> = {};
  const put = putter(then, say);
  const arm: string[] = [];
  const disarm: string[] = [];
  const each: Record<string, Deed> = {};
  for (const part of partsOf(text)) {
    const on = /^([^:]+?)\s*:\s*(.*)$/.exec(part);
    const deed = readDeed(on === null ? part : on[2]!, words, say);
    const not = negated(part);
    if (on !== null) {
      const standard = known(on[1]!, words.standards, 'standard', say);
      if (deed === null) say(`what standard ${standard} does is "${ALTITUDE} anew" or "${ALTITUDE} off"`);
      else if (Object.hasOwn(each, standard)) say(`standard ${standard} is said twice`);
      else each[standard] = deed;
    } else if (deed !== null) put('alt', deed, ALTITUDE);
    else if (part === NONE) put('clear_vertical', true, `"${NONE}"`);
    else (not === null ? arm : disarm).push(known(not ?? part, words.armed_vertical, 'armed vertical', say));
  }
  if (Object.keys(each).length > 0) {
    put('alt', each, ALTITUDE);
    const silent = words.standards.filter((standard) => !Object.hasOwn(each, standard));
    if (silent.length > 0) say(`what standard ${silent.join(' and ')} does is not said`);
  }
  return {
    ...then,
    ...(arm.length > 0 && { arm_vertical: arm }),
    ...(disarm.length > 0 && { disarm_vertical: disarm }),
  };
}

/** `ROUTE` arms it, `not ROUTE` disarms it, `none` clears all, `COURSE unless active` arms it where lateral is not COURSE. */
export function readArmedLateral(text: string, words: KnownWords, say: Say): ModeThen {
  const then: Writable<ModeThen> = {};
  const put = putter(then, say);
  const arm: string[] = [];
  const disarm: string[] = [];
  const unless: string[] = [];
  for (const part of partsOf(text)) {
    const not = negated(part);
    if (part === NONE) put('clear_lateral', true, `"${NONE}"`);
    else {
      const active = part.endsWith(` ${UNLESS_ACTIVE}`);
      const word = not ?? (active ? part.slice(0, -UNLESS_ACTIVE.length).trim() : part);
      (not !== null ? disarm : active ? unless : arm).push(known(word, words.armed_lateral, 'armed lateral', say));
    }
  }
  return {
    ...then,
    ...(arm.length > 0 && { arm_lateral: arm }),
    ...(unless.length > 0 && { arm_lateral_unless_active: unless }),
    ...(disarm.length > 0 && { disarm_lateral: disarm }),
  };
}
