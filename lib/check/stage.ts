// Which checks run by themselves at which moment in the life of a text: from its first stage on, a check runs at each later one.
import type { Rule, Stage } from './rule.ts';
import { rules } from './rules/index.ts';

const STAGES: readonly Stage[] = ['writing', 'submission', 'publication', 'in force'];

/** The checks whose first stage is this one or an earlier one. */
export function rulesUpTo(stage: Stage): readonly Rule[] {
  const last = STAGES.indexOf(stage);
  return rules.filter((rule) => STAGES.indexOf(rule.stage) <= last);
}
