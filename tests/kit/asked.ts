// A procedure asked by all checks of text, figures and modes as on the day it is submitted, with the whole demo world beside it.
import { checkProcedure } from '../../lib/check/check.ts';
import type { Facts } from '../../lib/check/facts.ts';
import type { Finding } from '../../lib/check/finding.ts';
import { rulesUpTo } from '../../lib/check/stage.ts';
import { toldBy } from '../../lib/check/told.ts';
import type { Procedure } from '../../lib/procedure/procedure.ts';
import { procedureNames, seedProcedure } from './seed.ts';
import { houseFacts } from './world.ts';

/** Those that fly are asked by tests of their own. */
const RULES = rulesUpTo('submission').filter(({ kind }) => !kind.includes('S'));
const SEEDED: readonly Procedure[] = procedureNames().map(seedProcedure);

/** `more`: procedures of the operator beside those of the seed. */
export function askedOf(procedure: Procedure, more: readonly Procedure[] = [], given: Partial<Facts> = {}) {
  const all = [...SEEDED.filter(({ id }) => id !== procedure.id), ...more];
  const checked = checkProcedure(procedure, { ...houseFacts, others: all.map(toldBy), ...given }, RULES);
  if (checked.crashed.length > 0) throw new Error(JSON.stringify(checked.crashed));
  return checked;
}

export const ofCheck = (findings: readonly Finding[], check: string): readonly Finding[] =>
  findings.filter((finding) => finding.check === check);

/** The checks that stop it, each once, by name. */
export const stopsOf = (findings: readonly Finding[]): readonly string[] =>
  [...new Set(findings.filter(({ severity }) => severity === 'STOP').map(({ check }) => check))].sort();
