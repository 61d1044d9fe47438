// Which checks run by themselves at which moment in the life of a text: from its first stage on, a check runs at each later one.
import type { Rule, Stage } from './rule.ts';
import { rules } from './rules/index.ts';

const STAGES: readonly Stage[] = ['writing', 'submission', 'publication', 'in force'];

const flies = (rule: Rule): boolean => rule.kind.includes('S');

/** The checks whose first stage is this one or an earlier one, without those that fly the procedure: these take seconds and
 *  are asked where it is flown. */
export function rulesUpTo(stage: Stage): readonly Rule[] {
  const last = STAGES.indexOf(stage);
  return rules.filter((rule) => !flies(rule) && STAGES.indexOf(rule.stage) <= last);
}

/** The checks that need time: a flight, two pilots and one voice. */
export function rulesThatFly(): readonly Rule[] {
  return rules.filter(flies);
}

/** The checks up to submission in two parts: those on text and numbers of the procedure alone, which answer while a person
 *  types; and those that explore, fly or read other procedures, which answer when the typing rests. */
export function byPace(): { readonly atOnce: readonly Rule[]; readonly atRest: readonly Rule[] } {
  const all = rulesUpTo('submission');
  const quick = (rule: Rule): boolean => /^[TN/]+$/.test(rule.kind) && !rule.needs.includes('others');
  return { atOnce: all.filter(quick), atRest: all.filter((rule) => !quick(rule)) };
}
