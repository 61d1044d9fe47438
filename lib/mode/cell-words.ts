// A rule of the table as the texts of its cells: what cell-text.ts reads.
import type { ModeThen, ModeTransition, ModeWhen } from '../aircraft/mode-set.ts';
import { ALTITUDE } from './rule-code.ts';

/** Columns of a rule: the axes and what is armed on them; guards have predicates beside. */
export const COLUMNS = ['thrust', 'lateral', 'vertical', 'armed_vertical', 'armed_lateral', 'rel', 'phase'] as const;
export const CASE_CELLS = [
  ...COLUMNS.map((column) => `when.${column}` as const),
  'when.is',
  ...COLUMNS.map((column) => `then.${column}` as const),
] as const;
export type CaseCell = (typeof CASE_CELLS)[number];
export type CaseCells = Readonly<Record<CaseCell, string>>;

const none = (words: readonly string[] | undefined): readonly string[] => (words ?? []).map((word) => `not ${word}`);
const joined = (parts: readonly (string | undefined | false)[]): string => parts.filter(Boolean).join(', ');

function guardWords(asked: ModeWhen['thrust']): string {
  if (asked === undefined) return '';
  return 'in' in asked ? asked.in.join(', ') : `not ${asked.not.join(', ')}`;
}

function armedWords(asked: ModeWhen['armed_vertical']): string {
  if (asked === undefined) return '';
  return 'has' in asked ? asked.has.join(', ') : joined(none(asked.lacks));
}

/** `RATE-DN in DESCENT or CONTOUR, else RATE-UP`. */
function byWords(by: Readonly<Record<string, string>> | undefined): string {
  if (by === undefined) return '';
  const from = new Map<string, string[]>();
  for (const [word, to] of Object.entries(by)) {
    if (word !== 'else') from.set(to, [...(from.get(to) ?? []), word]);
  }
  const parts = [...from].map(([to, words]) => `${to} in ${words.join(' or ')}`);
  return joined([...parts, by.else === undefined ? undefined : `else ${by.else}`]);
}

const deedWords = (deed: 're-evaluate' | 'disarm'): string => `${ALTITUDE} ${deed === 'disarm' ? 'off' : 'anew'}`;

function altWords(alt: ModeThen['alt']): string {
  if (alt === undefined) return '';
  if (typeof alt === 'string') return deedWords(alt);
  return joined(Object.entries(alt).map(([standard, deed]) => `${standard}: ${deedWords(deed)}`));
}

function caseWords({ when, then }: { readonly when: ModeWhen; readonly then: ModeThen }): CaseCells {
  const either = (words: readonly string[] | undefined): string => (words ?? []).join(' or ');
  const unless = (then.arm_lateral_unless_active ?? []).map((word) => `${word} unless active`);
  return {
    'when.thrust': guardWords(when.thrust),
    'when.lateral': guardWords(when.lateral),
    'when.vertical': guardWords(when.vertical),
    'when.armed_vertical': armedWords(when.armed_vertical),
    'when.armed_lateral': armedWords(when.armed_lateral),
    'when.rel': guardWords(when.rel),
    'when.phase': guardWords(when.phase),
    'when.is': joined([...(when.holds ?? []), ...none(when.fails)]),
    'then.thrust': joined([then.thrust, byWords(then.thrust_by_vertical)]),
    'then.lateral': then.lateral ?? '',
    'then.vertical': joined([then.vertical, either(then.vertical_each), byWords(then.vertical_by_vertical)]),
    'then.armed_vertical': joined([
      then.clear_vertical && 'none',
      ...(then.arm_vertical ?? []),
      ...none(then.disarm_vertical),
      altWords(then.alt),
    ]),
    'then.armed_lateral': joined([
      then.clear_lateral && 'none',
      ...(then.arm_lateral ?? []),
      ...unless,
      ...none(then.disarm_lateral),
    ]),
    'then.rel': joined([then.rel, either(then.rel_each), then.only_if_rel_changes && 'if it changes']),
    'then.phase': then.phase ?? '',
  };
}

/** `manual`: the word of thrust that the guidance leaves alone. */
export function casesOf(rule: ModeTransition, manual: string): readonly CaseCells[] {
  return ('any' in rule ? rule.any : [rule]).map((one) => {
    const cells = caseWords(one);
    const { thrust_unless_manual: unless } = one.then;
    if (unless === undefined) return cells;
    return { ...cells, 'then.thrust': joined([cells['then.thrust'], `${unless} unless ${manual}`]) };
  });
}
