// One cause, one entry on the screen: a lowered limit that stops five steps is one thing to know and five to mend.
import { type Finding, SEVERITIES } from './finding.ts';

type Caused = Pick<Finding, 'cause' | 'severity'>;
export type Group<F extends Caused = Finding> = { readonly cause: string; readonly findings: readonly F[] };

/** Groups in the order in which their first finding stands; graver groups first. */
export function byCause<F extends Caused>(findings: readonly F[]): readonly Group<F>[] {
  const causes = new Map<string, F[]>();
  for (const finding of findings) causes.set(finding.cause, [...(causes.get(finding.cause) ?? []), finding]);
  const groups = [...causes].map(([cause, all]) => ({ cause, findings: all }));
  const gravest = (group: Group<F>): number =>
    Math.min(...group.findings.map((each) => SEVERITIES.indexOf(each.severity)));
  return groups
    .map((group, index) => ({ group, index }))
    .sort((a, b) => gravest(a.group) - gravest(b.group) || a.index - b.index)
    .map(({ group }) => group);
}

/** What a change healed and what it broke: findings are the same when check, place and cause are. */
export function healedAndBroken(
  before: readonly Finding[],
  after: readonly Finding[],
): { readonly healed: readonly Finding[]; readonly broken: readonly Finding[] } {
  const key = (finding: Finding): string => `${finding.check} ${finding.at.step} ${finding.at.field} ${finding.cause}`;
  const had = new Set(before.map(key));
  const has = new Set(after.map(key));
  return {
    healed: before.filter((finding) => !has.has(key(finding))),
    broken: after.filter((finding) => !had.has(key(finding))),
  };
}
