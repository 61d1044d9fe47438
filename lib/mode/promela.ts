// The same table as a Promela model, for a model checker that shares no line with this folder. Written from the table itself,
// not from the compiled machine, so that a fault of the compiler shows as a difference.
import type { ModeSet, ModeThen, ModeWhen } from '../aircraft/mode-set.ts';
import { ALTITUDE } from './rule-code.ts';

const VARIABLES = {
  thrust: 'th',
  lateral: 'la',
  vertical: 've',
  rel: 'rel',
  phase: 'ph',
  armed_vertical: 'av',
  armed_lateral: 'al',
} as const;
type Key = keyof typeof VARIABLES;
const LISTS = { armed_vertical: 'armedVertical', armed_lateral: 'armedLateral' } as const;

const isArmed = (key: Key): key is keyof typeof LISTS => key === 'armed_vertical' || key === 'armed_lateral';
const listOf = (modes: ModeSet, key: Key): readonly string[] => (isArmed(key) ? modes[LISTS[key]] : modes[key]);
const number = (modes: ModeSet, key: Key, word: string): number => listOf(modes, key).indexOf(word);
const bits = (modes: ModeSet, key: keyof typeof LISTS, words: readonly string[]): number =>
  words.reduce((sum, word) => sum | (1 << number(modes, key, word)), 0);

const any = (terms: readonly string[], none: string): string => (terms.length === 0 ? none : `(${terms.join(' || ')})`);

/** Predicates are free in the model: nothing is said of them. */
export function guardText(modes: ModeSet, when: ModeWhen): string {
  const parts = (Object.keys(VARIABLES) as Key[]).flatMap((key): string[] => {
    const asked = when[key];
    const variable = VARIABLES[key];
    if (asked === undefined) return [];
    const equals = (words: readonly string[]): readonly string[] =>
      words.map((word) => `${variable} == ${number(modes, key, word)}`);
    if ('in' in asked) return [any(equals(asked.in), 'false')];
    if ('not' in asked) return [`!${any(equals(asked.not), 'false')}`];
    const mask = bits(modes, key as keyof typeof LISTS, 'has' in asked ? asked.has : asked.lacks);
    return ['has' in asked ? `(${variable} & ${mask}) == ${mask}` : `(${variable} & ${mask}) == 0`];
  });
  return parts.length === 0 ? 'true' : parts.join(' && ');
}

/** A choice by the vertical word as a conditional expression. */
function byVertical(modes: ModeSet, map: Readonly<Record<string, string>>, key: 'thrust' | 'vertical'): string {
  const other = map.else === undefined ? VARIABLES[key] : String(number(modes, key, map.else));
  const named = Object.entries(map).filter(([word]) => word !== 'else');
  return named.reduceRight(
    (rest, [word, to]) => `(ve == ${number(modes, 'vertical', word)} -> ${number(modes, key, to)} : ${rest})`,
    other,
  );
}

function thrustText(modes: ModeSet, then: ModeThen): readonly string[] {
  if (then.thrust !== undefined) return [`th = ${number(modes, 'thrust', then.thrust)}`];
  if (then.thrust_by_vertical !== undefined) return [`th = ${byVertical(modes, then.thrust_by_vertical, 'thrust')}`];
  if (then.thrust_unless_manual === undefined) return [];
  const manual = number(modes, 'thrust', modes.manual);
  return [`th = (th == ${manual} -> th : ${number(modes, 'thrust', then.thrust_unless_manual)})`];
}

/** When the selected altitude is armed by itself, as an expression of `ve` and `rel`. */
function armingText(modes: ModeSet): string {
  const among = (words: readonly string[]): string =>
    any(
      words.map((word) => `ve == ${number(modes, 'vertical', word)}`),
      'false',
    );
  const side = (word: string): string => (modes.rel.includes(word) ? `rel == ${number(modes, 'rel', word)}` : 'false');
  return `(${among(modes.armsAlways)} || (${side('above')} && ${among(modes.climbing)}) || (${side('below')} && ${among(modes.descending)}))`;
}

/** Each outcome of one case as its own guard and list of statements. */
export function outcomeTexts(
  modes: ModeSet,
  standard: string,
  { when, then }: { readonly when: ModeWhen; readonly then: ModeThen },
): readonly { readonly guard: string; readonly deeds: readonly string[] }[] {
  const guard = guardText(modes, when);
  const verticals =
    then.vertical_each?.map((word) => String(number(modes, 'vertical', word))) ??
    (then.vertical !== undefined
      ? [String(number(modes, 'vertical', then.vertical))]
      : [then.vertical_by_vertical === undefined ? '' : byVertical(modes, then.vertical_by_vertical, 'vertical')]);
  const rels = then.rel_each ?? [then.rel ?? ''];
  const alt = typeof then.alt === 'object' ? then.alt[standard] : then.alt;
  const bit = bits(modes, 'armed_vertical', [ALTITUDE]);
  const unlessActive = then.arm_lateral_unless_active ?? [];
  return verticals.flatMap((vertical) =>
    rels.map((rel) => {
      const changed = then.only_if_rel_changes && rel !== '' ? [`rel != ${number(modes, 'rel', rel)}`] : [];
      const deeds = [
        ...thrustText(modes, then),
        ...(then.lateral === undefined ? [] : [`la = ${number(modes, 'lateral', then.lateral)}`]),
        ...(vertical === '' ? [] : [`ve = ${vertical}`]),
        ...(rel === '' ? [] : [`rel = ${number(modes, 'rel', rel)}`]),
        ...(then.phase === undefined ? [] : [`ph = ${number(modes, 'phase', then.phase)}`]),
        ...(then.clear_vertical ? ['av = 0'] : []),
        ...(then.clear_lateral ? ['al = 0'] : []),
        ...(then.disarm_vertical ? [`av = av & ~${bits(modes, 'armed_vertical', then.disarm_vertical)}`] : []),
        ...(then.disarm_lateral ? [`al = al & ~${bits(modes, 'armed_lateral', then.disarm_lateral)}`] : []),
        ...(then.arm_vertical ? [`av = av | ${bits(modes, 'armed_vertical', then.arm_vertical)}`] : []),
        ...(then.arm_lateral ? [`al = al | ${bits(modes, 'armed_lateral', then.arm_lateral)}`] : []),
        ...unlessActive.map((word) => {
          const here = modes.lateral.indexOf(word);
          return `al = (la == ${here < 0 ? 255 : here} -> al : al | ${bits(modes, 'armed_lateral', [word])})`;
        }),
        ...(alt === undefined ? [] : [`av = av & ~${bit}`]),
        ...(alt === 're-evaluate' ? [`av = (${armingText(modes)} -> av | ${bit} : av)`] : []),
      ];
      return { guard: [guard, ...changed].join(' && '), deeds };
    }),
  );
}

/** The start: one of the initial states, chosen freely. */
export function initialText(modes: ModeSet): string {
  const choices = modes.initial.map((line) => {
    const sets = (Object.keys(VARIABLES) as Key[]).map((key) => {
      const words = line[key];
      const value = isArmed(key) ? bits(modes, key, words as readonly string[]) : number(modes, key, words as string);
      return `${VARIABLES[key]} = ${value}`;
    });
    return `  :: atomic { ${sets.join('; ')} }`;
  });
  return `  if\n${choices.join('\n')}\n  fi;`;
}

/** Declares the seven parts of a state. An armed set takes 16 bits where a byte is too small. */
export function variablesText(modes: ModeSet): string {
  const wide = (list: readonly string[]): string => (list.length > 8 ? 'short' : 'byte');
  return [
    'byte th; byte la; byte ve; byte rel; byte ph;',
    `${wide(modes.armedVertical)} av; ${wide(modes.armedLateral)} al;`,
  ].join('\n');
}

/**
 * The machine of one standard alone: a process that chooses an initial state and then fires any enabled rule, for ever.
 * It has one state more than the exploration, that before the choice. `never`: an expression that must not become true.
 */
export function promela(modes: ModeSet, standard: string, never: string | null = null): string {
  const options = modes.rules.flatMap((rule) =>
    ('any' in rule ? rule.any : [rule]).flatMap((part) =>
      outcomeTexts(modes, standard, part).map(
        ({ guard, deeds }) => `  :: d_step { (${guard}) -> ${[...deeds, 'skip'].join('; ')} } /* ${rule.id} */`,
      ),
    ),
  );
  const watch = never === null ? [] : [`  :: d_step { (${never}) -> assert(false) }`];
  // A state with no enabled rule ends here and not at a deadlock of the model.
  return `${variablesText(modes)}
active proctype guidance() {
${initialText(modes)}
end: do
${[...watch, ...options].join('\n')}
  od
}
`;
}
