// A small machine over the sheet's mode table, for asking whether a written mode line can come about at all.
import type { ModeSet, ModeThen, ModeWhen } from '../../lib/aircraft/mode-set.ts';

export type Line = {
  readonly thrust: string;
  readonly lateral: string;
  readonly vertical: string;
  readonly armedVertical: readonly string[];
  readonly armedLateral: readonly string[];
  readonly rel: string;
  readonly phase: string;
};

const key = (line: Line): string => JSON.stringify(line);
export const distinct = (lines: readonly Line[]): readonly Line[] => [
  ...new Map(lines.map((line) => [key(line), line])).values(),
];

const fits = (asked: { in?: string[]; not?: string[] } | undefined, word: string): boolean =>
  asked === undefined || (asked.in === undefined ? !asked.not!.includes(word) : asked.in.includes(word));
const holds = (asked: { has?: string[]; lacks?: string[] } | undefined, armed: readonly string[]): boolean =>
  asked === undefined ||
  (asked.has === undefined
    ? !asked.lacks!.some((word) => armed.includes(word))
    : asked.has.every((word) => armed.includes(word)));

const enabled = (when: ModeWhen, line: Line): boolean =>
  fits(when.phase, line.phase) &&
  fits(when.thrust, line.thrust) &&
  fits(when.lateral, line.lateral) &&
  fits(when.vertical, line.vertical) &&
  fits(when.rel, line.rel) &&
  holds(when.armed_vertical, line.armedVertical) &&
  holds(when.armed_lateral, line.armedLateral);

/** ALT is armed where the mode goes toward the selected altitude. */
export function altArmed(modes: ModeSet, vertical: string, rel: string): boolean {
  if (modes.armsAlways.includes(vertical)) return true;
  return (
    (modes.climbing.includes(vertical) && rel === 'above') || (modes.descending.includes(vertical) && rel === 'below')
  );
}

function effects(modes: ModeSet, then: ModeThen, line: Line, standard: string): readonly Line[] {
  const manual = line.thrust === modes.manual;
  const thrust = then.thrust ?? (manual ? line.thrust : (then.thrust_unless_manual ?? line.thrust));
  const by = (map: Record<string, string> | undefined, word: string) => map?.[word] ?? map?.else;
  const verticals = then.vertical_each ?? [
    then.vertical ?? by(then.vertical_by_vertical, line.vertical) ?? line.vertical,
  ];
  const rels = (then.rel_each ?? [then.rel ?? line.rel]).filter((rel) => !then.only_if_rel_changes || rel !== line.rel);
  const lateral = then.lateral ?? line.lateral;
  return verticals.flatMap((vertical) =>
    rels.map((rel) => {
      const kept = then.clear_vertical ? [] : line.armedVertical.filter((w) => !then.disarm_vertical?.includes(w));
      const deed = typeof then.alt === 'object' ? then.alt[standard] : then.alt;
      const alt = deed === undefined ? kept.includes('ALT') : deed === 're-evaluate' && altArmed(modes, vertical, rel);
      const armedVertical = [...(alt ? ['ALT'] : []), ...kept.filter((w) => w !== 'ALT'), ...(then.arm_vertical ?? [])];
      const stay = then.clear_lateral ? [] : line.armedLateral.filter((w) => !then.disarm_lateral?.includes(w));
      const unlessActive = (then.arm_lateral_unless_active ?? []).filter((w) => w !== lateral);
      const armedLateral = [...stay, ...(then.arm_lateral ?? []), ...unlessActive];
      return {
        thrust: by(then.thrust_by_vertical, line.vertical) ?? thrust,
        lateral,
        vertical,
        armedVertical: [...new Set(armedVertical)].sort(),
        armedLateral: [...new Set(armedLateral)].sort(),
        rel,
        phase: then.phase ?? line.phase,
      };
    }),
  );
}

/** What the rules picked may make of a line; empty where none of them answers. */
export function successors(
  modes: ModeSet,
  line: Line,
  standard: string,
  pick: (rule: ModeSet['rules'][number]) => boolean,
): readonly Line[] {
  const cases = modes.rules.filter(pick).flatMap((rule) => ('any' in rule ? rule.any : [rule]));
  return distinct(
    cases.filter(({ when }) => enabled(when, line)).flatMap(({ then }) => effects(modes, then, line, standard)),
  );
}

/** Everything that may happen by itself from here on, nothing having happened included. */
export function byItself(modes: ModeSet, lines: readonly Line[], standard: string): readonly Line[] {
  const seen = new Map(lines.map((line) => [key(line), line]));
  for (const line of seen.values()) {
    for (const next of successors(modes, line, standard, (rule) => rule.who !== 'crew')) {
      if (!seen.has(key(next))) seen.set(key(next), next);
    }
  }
  return [...seen.values()];
}
