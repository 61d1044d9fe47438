// Findings as they are read: down the page, and at one step by the number of the check. Parts of the checks that were asked
// apart (those that answer at once, those that explore) become one answer here, the same as if they had been asked together.
import { allSteps, type Procedure } from '../procedure/procedure.ts';
import type { Checked } from './check.ts';
import type { Finding } from './finding.ts';

export function inReadingOrder(procedure: Procedure, findings: readonly Finding[]): readonly Finding[] {
  const rank = new Map(allSteps(procedure).map((step, index) => [step.id as string, index]));
  return [...findings].sort((a, b) => compareFindings(a, b, rank));
}

/** Of the same procedure and facts, each by other rules. */
export function joinChecked(procedure: Procedure, first: Checked, second: Checked): Checked {
  return {
    findings: inReadingOrder(procedure, [...first.findings, ...second.findings]),
    notChecked: [...first.notChecked, ...second.notChecked].sort((a, b) => a.number - b.number),
    crashed: [...first.crashed, ...second.crashed].sort((a, b) => a.number - b.number),
    checked: { ...first.checked, rules: [...first.checked.rules, ...second.checked.rules] },
  };
}

function compareFindings(a: Finding, b: Finding, rank: ReadonlyMap<string, number>): number {
  const place = (rank.get(a.at.step) ?? -1) - (rank.get(b.at.step) ?? -1);
  if (place !== 0) return place;
  if (a.number !== b.number) return a.number - b.number;
  const [left, right] = [`${a.at.field} ${a.message}`, `${b.at.field} ${b.message}`];
  return left < right ? -1 : left > right ? 1 : 0;
}
